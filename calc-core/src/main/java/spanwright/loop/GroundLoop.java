package spanwright.loop;

import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * The error a potential between two grounds makes: it drives a current of its own through the path that joins
 * them,
 * {@code I = V / R}. An isolator removes the path, up to its isolation resistance, and must stand the
 * potential.
 *
 * @param potential between the two grounds
 * @param pathOhms  galvanic path between them, in ohm
 * @param isolator  in the path, if there is one
 */
public record GroundLoop(IsolationRating potential, double pathOhms, Optional<Isolator> isolator) {
    /** Checks the components. */
    public GroundLoop {
        Objects.requireNonNull(potential, "potential");
        Checks.positive("path in ohm", pathOhms);
        Objects.requireNonNull(isolator, "isolator");
    }

    /** Two grounds so far apart, joined by a path, not isolated. */
    public static GroundLoop of(IsolationRating potential, double pathOhms) {
        return new GroundLoop(potential, pathOhms, Optional.empty());
    }

    /** With an isolator in the path. */
    public GroundLoop isolatedBy(Isolator device) {
        return new GroundLoop(potential, pathOhms, Optional.of(device));
    }

    /** Error without isolation, in mA (effective value of an alternating one). */
    public double errorMilliamps() {
        return potential.volts() / pathOhms * 1000;
    }

    /** Error without isolation in percent of the 16 mA span. */
    public double errorPercentOfSpan() {
        return errorMilliamps() / 16 * 100;
    }

    /**
     * Error that is left behind the isolator, in percent of the 16 mA span; empty without one, if its
     * isolation resistance is not stated, or if the potential alternates: that passes through the coupling
     * capacitance, of which the resistance says nothing.
     */
    public OptionalDouble isolatedErrorPercentOfSpan() {
        return isolator.isEmpty() || potential.alternating()
            || isolator.get().traits().isolationOhms().isEmpty()
            ? OptionalDouble.empty()
            : OptionalDouble.of(potential.volts() / (pathOhms + isolator.get().traits().isolationOhms()
                .getAsDouble())
                * 1000 / 16 * 100);
    }

    /** Whether the isolation may stand the potential for good; a test voltage does not say so. */
    public LoopChecks.Item workingVoltage() {
        if (isolator.isEmpty()) {
            return new LoopChecks.Item("isolation", LoopChecks.Outcome.NOT_DETERMINED,
                "there is no isolator in the path");
        }
        final Optional<IsolationRating> rating = isolator.get().traits().rating();
        if (rating.isEmpty()) {
            return new LoopChecks.Item("isolation", LoopChecks.Outcome.NOT_DETERMINED,
                "the working voltage of "
                + isolator.get().name() + " is not stated; a test voltage is none");
        }
        final boolean allowed = rating.get().covers(potential);
        return new LoopChecks.Item("isolation", allowed ? LoopChecks.Outcome.ALLOWED
            : LoopChecks.Outcome.REFUSED,
            potential + " stands across " + isolator.get().name() + ", " + (allowed ? "within" : "above")
                + " its working voltage of " + rating.get());
    }

    /**
     * Error by a common-mode voltage that a receiver rejects by so many decibels, in percent of the 16 mA
     * span.
     *
     * @param volts        common-mode voltage
     * @param decibels     common-mode rejection, at least 0
     * @param receiverOhms resistance across which the receiver reads
     */
    public static double commonModeErrorPercentOfSpan(double volts, double decibels, double receiverOhms) {
        Checks.finite("common-mode voltage in V", volts);
        Checks.notNegative("common-mode rejection in dB", decibels);
        Checks.positive("receiver resistance in ohm", receiverOhms);
        return volts / Math.pow(10, decibels / 20) / receiverOhms * 1000 / 16 * 100;
    }

    @Override
    public String toString() {
        final OptionalDouble left = isolatedErrorPercentOfSpan();
        return potential + " between the grounds across " + NumberText.plain(pathOhms, 5)
            + " \u03a9 is an error of "
            + NumberText.significant(errorMilliamps() * 1000, 3) + " \u00b5A, "
            + NumberText.significant(errorPercentOfSpan(), 3) + " % of span"
            + isolator.map(i -> "; isolated by " + i.name() + ", " + (left.isPresent()
                ? NumberText.significant(left.getAsDouble(), 3) + " % of span"
                : potential.alternating()
                    ? "not determined, the coupling capacitance passes an alternating one"
                    : "not determined, its isolation resistance is not stated") + " (" + workingVoltage()
                        + ")")
                    .orElse("");
    }
}
