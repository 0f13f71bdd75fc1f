package spanwright.loop;

import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * Continuous working voltage across an isolation. A test voltage, held for a minute, is not one.
 *
 * @param alternating whether the figure is an effective value of alternating voltage, else direct voltage
 * @param volts       the figure, in V
 */
public record IsolationRating(boolean alternating, double volts) {
    /** Checks the component. */
    public IsolationRating {
        Checks.positive("working voltage in V", volts);
    }

    /** So many volts of alternating voltage, effective value. */
    public static IsolationRating ac(double effectiveVolts) {
        return new IsolationRating(true, effectiveVolts);
    }

    /** So many volts of direct voltage. */
    public static IsolationRating dc(double volts) {
        return new IsolationRating(false, volts);
    }

    /** The largest momentary voltage: 250 V AC is 354 V peak. */
    public double peakVolts() {
        return alternating ? volts * Math.sqrt(2) : volts;
    }

    /** Whether a voltage of the other kind or the same, by its peak, is within this one. */
    public boolean covers(IsolationRating applied) {
        return applied.peakVolts() <= peakVolts() * (1 + 1e-12);
    }

    @Override
    public String toString() {
        return NumberText.plain(volts, 5) + (alternating ? " V AC (" + NumberText.fixed(peakVolts(), 0)
            + " V peak)"
            : " V DC");
    }
}
