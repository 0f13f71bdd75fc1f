package spanwright.loop;

import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * A parameter with its limits.
 *
 * @param nominal what a calculation without tolerances takes
 * @param least   lower limit, at most {@code nominal}
 * @param most    upper limit, at least {@code nominal}
 */
public record Toleranced(double nominal, double least, double most) {
    /** Checks the components. */
    public Toleranced {
        Checks.finite("nominal value", nominal);
        Checks.finite("lower limit", least);
        Checks.finite("upper limit", most);
        if (!(least <= nominal && nominal <= most)) {
            throw new IllegalArgumentException("limits " + least + " to " + most
                + " do not hold the nominal value "
                + nominal);
        }
    }

    /** A value without a tolerance. */
    public static Toleranced exactly(double value) {
        return new Toleranced(value, value, value);
    }

    /** A value plus and minus a tolerance in its own unit, at least 0. */
    public static Toleranced plusMinus(double value, double tolerance) {
        Checks.notNegative("tolerance", tolerance);
        return new Toleranced(value, value - tolerance, value + tolerance);
    }

    /** A value plus and minus so many percent of itself, 0 to 100. */
    public static Toleranced plusMinusPercent(double value, double percent) {
        Checks.within("tolerance in percent of the value", percent, 0, 100);
        return plusMinus(value, Math.abs(value) * percent / 100);
    }

    /** A value between two limits; the nominal value is the middle. */
    public static Toleranced between(double least, double most) {
        return new Toleranced(least + (most - least) / 2, least, most);
    }

    /** This value and its limits times a factor, at least 0. */
    public Toleranced times(double factor) {
        Checks.notNegative("factor", factor);
        return new Toleranced(nominal * factor, least * factor, most * factor);
    }

    /** Whether the limits differ. */
    public boolean isUncertain() {
        return most > least;
    }

    Toleranced requireNotNegative(String name) {
        Checks.notNegative(name, least);
        return this;
    }

    @Override
    public String toString() {
        return NumberText.plain(nominal, 6)
            + (isUncertain() ? " (" + NumberText.plain(least, 6) + " to " + NumberText.plain(most, 6) + ")"
                : "");
    }
}
