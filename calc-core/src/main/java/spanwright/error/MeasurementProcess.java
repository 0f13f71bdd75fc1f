package spanwright.error;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import spanwright.quantity.Span;
import spanwright.readings.CalibrationRun;
import spanwright.readings.Direction;
import spanwright.readings.Entry;
import spanwright.uncertainty.Estimate;
import spanwright.uncertainty.InputQuantity;
import spanwright.uncertainty.MeasurementModel;
import spanwright.uncertainty.Normal;
import spanwright.uncertainty.Rectangular;

/**
 * How a calibration was measured: the standard of the applied input and the standard that read the output. It
 * gives each point its measurement uncertainty: standards, their drift since the certificate, the resolution
 * of both readings, and the repeatability that the record itself shows.
 *
 * <p>Limits: the standards are taken as independent of each other; where one instrument served both sides its
 * error partly cancels, and these figures are too large. Each standard's error is the same at every point of
 * a run: the points are correlated, so do not average their uncertainties.
 *
 * @param applied       standard of the input
 * @param indicated     standard of the output
 * @param repeatability standard deviation of a single reading, percent of the output span, where the record
 *                      cannot tell it; empty to leave it to the record
 */
public record MeasurementProcess(CalibrationStandard applied, CalibrationStandard indicated,
                                 Optional<Estimate> repeatability) {
    private static final String INPUT_STANDARD = "input standard ";
    private static final String OUTPUT_STANDARD = "output standard ";

    /** Checks the components. */
    public MeasurementProcess {
        Objects.requireNonNull(applied, "applied");
        Objects.requireNonNull(indicated, "indicated");
        Objects.requireNonNull(repeatability, "repeatability");
    }

    /** A process whose repeatability is left to the record. */
    public static MeasurementProcess of(CalibrationStandard applied, CalibrationStandard indicated) {
        return new MeasurementProcess(applied, indicated, Optional.empty());
    }

    /**
     * This process with a repeatability known from elsewhere, for records of one cycle.
     *
     * @param sd  standard deviation of a single reading, percent of the output span
     * @param dof its degrees of freedom
     */
    public MeasurementProcess withRepeatability(double sd, double dof) {
        return new MeasurementProcess(applied, indicated, Optional.of(Estimate.of(0, sd, dof)));
    }

    /** The uncertainty of the mean error at every point, from each side, in percent of the output span. */
    public List<PointUncertainty> of(ChannelAnalysis analysis) {
        final List<PointUncertainty> all = new ArrayList<>();
        for (PointErrors p : analysis.points()) {
            for (Direction d : Direction.values()) {
                if (!p.in(d).isEmpty()) {
                    all.add(point(analysis, p, d));
                }
            }
        }
        return List.copyOf(all);
    }

    private PointUncertainty point(ChannelAnalysis analysis, PointErrors p, Direction d) {
        final CalibrationRun run = analysis.run();
        final List<ReadingError> errors = p.in(d);
        final double expected = errors.stream().mapToDouble(ReadingError::expectedPercent).average()
            .orElseThrow();
        final double atInput = errors.stream().mapToDouble(e -> e.reading().applied().value()).average()
            .orElseThrow();
        final OptionalDouble slope = PermissibleErrors.slope(run, expected);
        final List<InputQuantity> inputs = new ArrayList<>();
        final List<String> missing = new ArrayList<>();
        final double perOutput = 100 / run.output().width();
        if (slope.isPresent()) {
            final double perInput = perOutput * Math.abs(slope.getAsDouble());
            standard(inputs, INPUT_STANDARD + applied.name(), applied, run.input(), atInput, perInput);
            inputs.add(resolution("resolution of the input", errors.get(0).reading().applied(), perInput));
        } else {
            missing.add("the characteristic has no slope here, so the uncertainty of the input is not "
                + "carried over");
        }
        standard(inputs, OUTPUT_STANDARD + indicated.name(), indicated, run.output(),
            run.output().valueAt(expected), perOutput);
        inputs.add(resolution("resolution of the output", errors.get(0).reading().indicated(), perOutput));
        repeatability(analysis, errors.size(), inputs, missing);
        if (applied.driftPerYear() == 0 || indicated.driftPerYear() == 0) {
            missing.add("the drift of a standard since its certificate was not stated");
        }
        final double[] ones = new double[inputs.size()];
        Arrays.fill(ones, 1);
        return new PointUncertainty(p.position(), d, expected, slope,
            MeasurementModel.linear("error", "% of span", inputs, p.mean(d).orElseThrow(), ones).budget(),
            missing, PointErrors.cells(errors));
    }

    /** Whether a line of a budget has one error in common at all points of a run: a standard or its drift. */
    static boolean isShared(String line) {
        return line.startsWith(INPUT_STANDARD) || line.startsWith(OUTPUT_STANDARD);
    }

    private void repeatability(ChannelAnalysis analysis, int readings, List<InputQuantity> inputs,
                               List<String> missing) {
        final Finding<NonRepeatability> shown = analysis.nonRepeatability();
        final Optional<Estimate> sd = shown.value().map(r -> new Estimate(0, r.pooledSd(), r.dof()))
            .or(() -> repeatability);
        if (sd.isEmpty()) {
            missing.add("repeatability: " + shown.reason());
        } else if (sd.get().u() > 0) {
            inputs.add(InputQuantity.of("repeatability",
                new Estimate(0, sd.get().u() / Math.sqrt(readings), sd.get().dof())));
        }
    }

    private static void standard(List<InputQuantity> inputs, String name, CalibrationStandard s, Span range,
                                 double value, double factor) {
        final double u = factor * s.inUnit(s.expanded() / s.k(), range, value);
        if (u > 0) {
            inputs.add(InputQuantity.of(name, new Normal(0, u)));
        }
        final double drift = factor * s.inUnit(s.driftLimit(), range, value);
        if (drift > 0) {
            inputs.add(InputQuantity.of(name + ", drift", Rectangular.plusMinus(drift)));
        }
    }

    private static InputQuantity resolution(String name, Entry entry, double factor) {
        return InputQuantity.of(name, Rectangular.plusMinus(factor * entry.resolution() / 2));
    }

    @Override
    public String toString() {
        return "input by " + applied + "; output by " + indicated;
    }
}
