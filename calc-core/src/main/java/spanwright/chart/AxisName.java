package spanwright.chart;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The name of a quantity as it stands at an axis: words, then the unit in brackets where there is one. */
final class AxisName {
    private static final Pattern UNIT = Pattern.compile("\\(([^()]*)\\)$");

    private AxisName() { }

    /** Another quantity in the same unit: "residual (mA)" for "indicated (mA)". */
    static String sameUnit(String words, String name) {
        final Matcher unit = UNIT.matcher(name);
        return unit.find() ? words + " " + unit.group() : words;
    }

    /** A blank and the unit, as it stands behind a figure; nothing where there is none. */
    static String unitAfter(String name) {
        final Matcher unit = UNIT.matcher(name);
        return unit.find() ? " " + unit.group(1) : "";
    }
}
