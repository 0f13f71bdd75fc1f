package spanwright.readings;

import java.util.Map;
import java.util.Optional;

/** What a column of a calibration record holds. */
public enum ColumnRole {
    /** Number of the point. */
    POINT("point number"),
    /** The point aimed at, in percent of the input range. */
    NOMINAL("nominal point"),
    /** The input actually applied. */
    APPLIED("applied input"),
    /** The output actually read. */
    INDICATED("indicated output"),
    /** The output expected; computed anew from the applied input, not used. */
    EXPECTED("expected output, computed anew"),
    /** The error; computed anew, not used. */
    ERROR("error, computed anew"),
    /** A verdict; not used. */
    RESULT("verdict, not used"),
    /** Upscale or downscale. */
    DIRECTION("direction"),
    /** Number of the traverse. */
    CYCLE("cycle"),
    /** As found or as left. */
    PHASE("phase"),
    /** Tag of the channel. */
    TAG("tag"),
    /** Number of the channel within its device. */
    CHANNEL("channel number"),
    /** Serial number of the device. */
    SERIAL("serial number"),
    /** Temperature at the device. */
    AMBIENT("ambient temperature"),
    /** When the reading was taken. */
    TIME("time"),
    /** A remark. */
    REMARK("remark");

    private static final Map<String, ColumnRole> WORDS = Map.ofEntries(
        Map.entry("point", POINT), Map.entry("point no", POINT), Map.entry("no", POINT), Map.entry("n",
        POINT),
        Map.entry("#", POINT), Map.entry("point number", POINT), Map.entry("step", POINT),
        Map.entry("nominal", NOMINAL), Map.entry("test point", NOMINAL), Map.entry("nominal point", NOMINAL),
        Map.entry("nominal input", NOMINAL), Map.entry("set point", NOMINAL),
        Map.entry("applied", APPLIED), Map.entry("input", APPLIED), Map.entry("applied input", APPLIED),
        Map.entry("input applied", APPLIED), Map.entry("in", APPLIED), Map.entry("stimulus", APPLIED),
        Map.entry("reference", APPLIED), Map.entry("standard", APPLIED), Map.entry("reference value",
        APPLIED),
        Map.entry("standard reading", APPLIED), Map.entry("true value", APPLIED),
        Map.entry("actual input", APPLIED), Map.entry("input read", APPLIED),
        Map.entry("indicated", INDICATED), Map.entry("output", INDICATED), Map.entry("out", INDICATED),
        Map.entry("reading", INDICATED), Map.entry("measured", INDICATED),
        Map.entry("measured output", INDICATED), Map.entry("indicated output", INDICATED),
        Map.entry("output read", INDICATED), Map.entry("indication", INDICATED),
        Map.entry("actual output", INDICATED), Map.entry("readings", INDICATED),
        Map.entry("output measured", INDICATED), Map.entry("output reading", INDICATED),
        Map.entry("expected", EXPECTED), Map.entry("expected output", EXPECTED), Map.entry("ideal", EXPECTED),
        Map.entry("ideal output", EXPECTED), Map.entry("output expected", EXPECTED),
        Map.entry("desired output", EXPECTED),
        Map.entry("error", ERROR), Map.entry("deviation", ERROR), Map.entry("output error", ERROR),
        Map.entry("pass/fail", RESULT), Map.entry("result", RESULT), Map.entry("verdict", RESULT),
        Map.entry("pass", RESULT), Map.entry("in tolerance", RESULT),
        Map.entry("direction", DIRECTION), Map.entry("dir", DIRECTION), Map.entry("up/down", DIRECTION),
        Map.entry("traverse", DIRECTION), Map.entry("leg", DIRECTION),
        Map.entry("cycle", CYCLE), Map.entry("run", CYCLE), Map.entry("cycle no", CYCLE),
        Map.entry("phase", PHASE), Map.entry("as found/as left", PHASE), Map.entry("state", PHASE),
        Map.entry("tag", TAG), Map.entry("channel tag", TAG), Map.entry("tag no", TAG),
        Map.entry("loop tag", TAG), Map.entry("channel", CHANNEL), Map.entry("ch", CHANNEL),
        Map.entry("channel no", CHANNEL), Map.entry("channel number", CHANNEL),
        Map.entry("serial", SERIAL), Map.entry("serial no", SERIAL), Map.entry("serial number", SERIAL),
        Map.entry("ambient", AMBIENT), Map.entry("ambient temperature", AMBIENT),
        Map.entry("temperature", AMBIENT), Map.entry("chamber", AMBIENT),
        Map.entry("chamber temperature", AMBIENT), Map.entry("air temperature", AMBIENT),
        Map.entry("time", TIME), Map.entry("date", TIME), Map.entry("date time", TIME),
        Map.entry("timestamp", TIME), Map.entry("date/time", TIME),
        Map.entry("remark", REMARK), Map.entry("remarks", REMARK), Map.entry("note", REMARK),
        Map.entry("notes", REMARK), Map.entry("comment", REMARK), Map.entry("comments", REMARK));

    private final String words;

    ColumnRole(String words) {
        this.words = words;
    }

    /** The role that trade words stand for. */
    static Optional<ColumnRole> of(String lowerCaseWords) {
        return Optional.ofNullable(WORDS.get(lowerCaseWords));
    }

    @Override
    public String toString() {
        return words;
    }
}
