package spanwright.notebook.show;

import java.util.Locale;
import spanwright.fit.Interval;
import spanwright.quantity.NumberText;
import spanwright.uncertainty.Estimate;

/** Figures of a table: the uncertainty with two digits, the value to the same place, of any size. */
final class Figures {
    private static final int MOST_DECIMALS = 9;

    private Figures() { }

    /** A value to the place of the second digit of its uncertainty. */
    static String value(double value, double u) {
        if (u == 0) {
            return NumberText.significant(value, 7);
        }
        if (value == 0 || NumberText.decimalsFor(u) <= MOST_DECIMALS && Math.abs(value) < 1e9) {
            return NumberText.fixed(value, NumberText.decimalsFor(u));
        }
        final int digits = (int) (Math.floor(Math.log10(Math.abs(value))) - Math.floor(Math.log10(u))) + 2;
        return NumberText.significant(value, Math.max(1, Math.min(15, digits)));
    }

    static String value(Estimate e) {
        return value(e.value(), e.u());
    }

    /** An interval with its ends to the place of its half width. */
    static String interval(Interval i) {
        return value(i.lower(), i.halfWidth()) + " to " + value(i.upper(), i.halfWidth());
    }

    /** All digits, for the text that appears on hovering. */
    static String full(double value) {
        return String.format(Locale.ROOT, "%.17g", value);
    }
}
