package spanwright.fit;

import java.util.Objects;
import java.util.Optional;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;
import spanwright.uncertainty.Estimate;

/**
 * The stimulus that belongs to an indication by a calibration line, with the interval that holds it
 * (Fieller). Where the slope is not told from zero there is no bounded interval, and the answer says so.
 *
 * @param line       the calibration line
 * @param indication the indication, with the uncertainty of its mean by the scatter about the line; a
 *                   constant where a crossing of the line itself was asked for
 * @param stimulus the stimulus, empty where the slope is 0
 * @param interval the interval, empty where it has no bounds
 * @param coverage probability that the interval holds the stimulus
 * @param reason   why there is no interval; empty text where there is one
 */
public record InverseInterval(CalibrationLine line, Estimate indication, Optional<Double> stimulus,
                              Optional<Interval> interval, double coverage, String reason) {
    /** Checks the components. */
    public InverseInterval {
        Objects.requireNonNull(line, "line");
        Objects.requireNonNull(indication, "indication");
        Objects.requireNonNull(stimulus, "stimulus");
        Objects.requireNonNull(interval, "interval");
        Checks.inside("coverage", coverage, 0, 1);
        if (interval.isPresent() != reason.isEmpty()) {
            throw new IllegalArgumentException("either an interval or the reason why there is none is "
                + "needed");
        }
    }

    /**
     * The interval of x for the mean of some readings y.
     *
     * <p>The x for which the difference between the line and y is not told from zero: a quadratic inequality
     * in x. Source: E. C. Fieller, J. R. Statist. Soc. B 16 (1954) 175, from memory.
     *
     * @param y        mean of the readings
     * @param readings how many were averaged, at least 1
     */
    static InverseInterval of(CalibrationLine line, double y, int readings, double coverage) {
        Checks.atLeast("number of readings", readings, 1);
        return of(line, new Estimate(y, line.residualSd() / Math.sqrt(readings), line.dof()), coverage);
    }

    /** As the other, for a y of given standard uncertainty. */
    static InverseInterval of(CalibrationLine line, Estimate indication, double coverage) {
        final double b = line.slope().value();
        if (b == 0) {
            return new InverseInterval(line, indication, Optional.empty(), Optional.empty(), coverage,
                "the line is level: every stimulus gives the same indication");
        }
        final double t = StudentT.factor(coverage, line.slope().dof());
        final double rise = indication.value() - line.level().value();
        final double fixed = Math.hypot(indication.u(), line.level().u());
        final double slopeShare = t * line.slope().u();
        final double told = (b - slopeShare) * (b + slopeShare);
        final double stimulus = line.centre() + rise / b;
        if (!(told > 0)) {
            return new InverseInterval(line, indication, Optional.of(stimulus), Optional.empty(), coverage,
                "the slope " + NumberText.significant(b, 3) + " is not told from zero with a coverage of "
                    + NumberText.plain(coverage, 4) + ": its own half width is "
                    + NumberText.significant(slopeShare, 3));
        }
        final double half = t * Math.hypot(fixed * Math.sqrt(told), line.slope().u() * rise) / told;
        final double middle = line.centre() + b * rise / told;
        return new InverseInterval(line, indication, Optional.of(stimulus),
            Optional.of(new Interval(middle - half, middle + half)), coverage, "");
    }

    /**
     * Whether the stimulus lies within the readings of the line; beyond them the line is only hoped to go on.
     * False where there is no stimulus.
     */
    public boolean isWithinTheReadings() {
        return stimulus.filter(x -> x >= line.data().lowestX() && x <= line.data().highestX()).isPresent();
    }

    @Override
    public String toString() {
        final String x = stimulus.map(v -> "x = " + NumberText.significant(v, 6)).orElse("no x");
        return x + interval.map(i -> ", " + NumberText.plain(100 * coverage, 4) + " % interval " + i)
            .orElse(", no bounded interval: " + reason);
    }
}
