package spanwright.uncertainty;

import java.util.Locale;
import spanwright.quantity.Checks;

/** Lower and upper limit of a bounded distribution. */
final class Limits {
    private Limits() { }

    static void check(double lower, double upper) {
        Checks.finite("lower limit", lower);
        Checks.finite("upper limit", upper);
        Checks.finite("width between the limits", upper - lower);
        if (lower > upper) {
            throw new IllegalArgumentException(
                String.format(Locale.ROOT, "lower limit %s is above upper limit %s", lower, upper));
        }
    }

    static double centre(double lower, double upper) {
        return lower / 2 + upper / 2;
    }

    static double halfWidth(double lower, double upper) {
        return (upper - lower) / 2;
    }
}
