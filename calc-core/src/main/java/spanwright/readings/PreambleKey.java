package spanwright.readings;

import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The lines above a table of readings: a key in the first cell, its value in the cells behind it. */
enum PreambleKey {
    TAG("tag", "loop tag", "instrument tag", "tag no", "channel tag"),
    SERIAL("serial", "serial number", "serial no", "s/n"),
    CHANNEL("channel", "channel number", "channel no", "ch"),
    LOCATION("location", "area"),
    WORK_ORDER("work order", "job", "work order no"),
    PROCEDURE("procedure", "method"),
    DATE("date", "calibration date", "date of calibration", "date time", "date and time"),
    ZONE("zone", "time zone"),
    TECHNICIAN("technician", "calibrated by", "performed by"),
    REVIEWER("reviewer", "checked by", "reviewed by"),
    INPUT_RANGE("input range", "range in", "input span"),
    OUTPUT_RANGE("output range", "range out", "output span"),
    INPUT_SCALE("input scale"),
    OUTPUT_SCALE("output scale"),
    TRANSFER("transfer", "transfer function", "characteristic"),
    TOLERANCE("tolerance", "acceptance tolerance", "as found tolerance"),
    TOLERANCE_BASIS("tolerance basis", "basis of tolerance"),
    SETTING_TOLERANCE("setting tolerance", "as left tolerance"),
    SUPPLY("supply", "supply voltage"),
    LOAD("load", "load resistance", "output load"),
    WARM_UP("warm up", "warm up time"),
    AMBIENT("ambient", "ambient temperature"),
    AMBIENT_LIMITS("ambient limits", "ambient range"),
    HUMIDITY("humidity", "relative humidity"),
    PHASE("phase", "as found/as left"),
    ADJUSTED("adjusted", "adjustment"),
    STANDARD("standard", "standard used", "reference standard"),
    REMARK("remark", "remarks", "note", "notes", "site", "plant");

    private final List<String> words;

    PreambleKey(String... words) {
        this.words = List.of(words);
    }

    /** The key that a cell names, whatever its case and whether a colon follows. */
    static Optional<PreambleKey> of(String cell) {
        final String plain = normal(cell);
        for (PreambleKey key : values()) {
            if (key.words.contains(plain)) {
                return Optional.of(key);
            }
        }
        return Optional.empty();
    }

    /** The first of its spellings, for messages. */
    String word() {
        return words.get(0);
    }

    private static String normal(String cell) {
        return Characters.plain(cell).toLowerCase(Locale.ROOT).replaceAll("[_\\-.\\s]+", " ")
            .replaceAll("\\s*:$", "").strip();
    }
}
