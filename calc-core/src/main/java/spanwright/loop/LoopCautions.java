package spanwright.loop;

import java.util.List;

/** What to heed before figures of a loop lead to work on it. */
public final class LoopCautions {
    private static final List<String> ALL = List.of(
        "This is a calculation aid and teaching material, not a safety analysis. A qualified "
            + "person, the site's " + "procedures and the local code prevail.",
        "Hazardous areas: nothing here checks an intrinsically safe circuit. An isolator, a "
            + "resistor, a meter or a " + "cable alters it; a competent person must verify it again.",
        "Live work: below 50 V is not safe by itself; panels mix in mains. Measure only with permit "
            + "and certified " + "test gear.",
        "Opening a loop drives it to 0 mA: trips, valves and alarms follow. Bypass or force only "
            + "with authorisation, " + "a time limit and a check that it is restored.",
        "An isolation test voltage, held for a minute, is not a working voltage.");

    private LoopCautions() { }

    /** The cautions, one sentence or two each. */
    public static List<String> all() {
        return ALL;
    }
}
