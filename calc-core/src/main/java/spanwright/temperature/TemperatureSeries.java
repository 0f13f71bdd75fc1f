package spanwright.temperature;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.ToDoubleBiFunction;
import spanwright.quantity.Celsius;
import spanwright.quantity.Checks;
import spanwright.uncertainty.DegreesOfFreedom;
import spanwright.uncertainty.Estimate;

/**
 * Errors of zero or of span at the temperatures of a chamber test, in the order of the test.
 *
 * <p>Visits within 2 K of each other count as one temperature and are averaged (a chamber holds about that,
 * in the manner of 43 CFR 3175.133), so that the small difference between two visits makes no coefficient.
 * Their difference at the calibration temperature is the non-return, and a term of its own.
 *
 * @param channel   which channel, for the report
 * @param effect    what was observed: zero or span
 * @param reference temperature at calibration; at least one point within 2 K of it
 * @param points    at least two temperatures, in the order of the test
 */
public record TemperatureSeries(String channel, TemperatureEffect effect, Celsius reference,
                                List<ChamberPoint> points) {
    /** Visits closer than this count as one temperature, kelvin. */
    static final double SAME_TEMPERATURE = 2;

    /** Checks the components and copies the list. */
    public TemperatureSeries {
        Objects.requireNonNull(channel, "channel");
        Objects.requireNonNull(effect, "effect");
        Objects.requireNonNull(reference, "reference");
        points = List.copyOf(points);
        Checks.atLeast("number of temperatures of " + channel,
            TemperatureLevel.of(points, SAME_TEMPERATURE).size(), 2);
        final double at = reference.value();
        if (points.stream().noneMatch(p -> isAt(at, p))) {
            throw new IllegalArgumentException("channel " + channel + " was not tested within "
                + SAME_TEMPERATURE + " K of its calibration temperature " + reference + ", but at "
                + points.stream().map(p -> p.temperature().toString()).toList());
        }
    }

    /**
     * The coefficient by one method.
     *
     * @throws IllegalArgumentException for bow-tie and least squares if only the calibration temperature was
     * tested
     */
    public TemperatureCoefficient coefficient(CoefficientMethod method) {
        final List<TemperatureLevel> levels = TemperatureLevel.of(points, SAME_TEMPERATURE);
        final Estimate figure = switch (Objects.requireNonNull(method, "method")) {
            case BOX -> box(levels);
            case END_POINT -> change(levels.get(0), levels.get(levels.size() - 1));
            case SLOPE -> slope(levels);
            case BOW_TIE -> bowTie(levels);
            case LEAST_SQUARES -> leastSquares(levels);
        };
        return new TemperatureCoefficient(effect, method, figure, reference, coldest(levels), hottest(levels),
            method.isSigned() ? residual(levels, figure.value()) : 0, channel);
    }

    /** The coefficient by every method, side by side. */
    public List<TemperatureCoefficient> coefficients() {
        return Arrays.stream(CoefficientMethod.values()).map(this::coefficient).toList();
    }

    /**
     * The largest difference between visits to the calibration temperature, percent of span; empty where it
     * was visited only once and the test cannot tell.
     */
    public Optional<Estimate> nonReturn() {
        final List<ChamberPoint> visits =
            points.stream().filter(p -> isAt(reference.value(), p)).toList();
        if (visits.size() < 2) {
            return Optional.empty();
        }
        ChamberPoint low = visits.get(0);
        ChamberPoint high = visits.get(0);
        for (ChamberPoint p : visits) {
            low = p.error().value() < low.error().value() ? p : low;
            high = p.error().value() > high.error().value() ? p : high;
        }
        return Optional.of(Estimate.of(high.error().value() - low.error().value(),
            Math.hypot(high.error().u(), low.error().u())));
    }

    /** Mean error at the calibration temperature, percent of span. */
    public double errorAtReference() {
        return atReference(TemperatureLevel.of(points, SAME_TEMPERATURE)).error();
    }

    private Estimate box(List<TemperatureLevel> levels) {
        TemperatureLevel low = levels.get(0);
        TemperatureLevel high = levels.get(0);
        for (TemperatureLevel level : levels) {
            low = level.error() < low.error() ? level : low;
            high = level.error() > high.error() ? level : high;
        }
        final double width = levels.get(levels.size() - 1).degC() - levels.get(0).degC();
        return Estimate.of((high.error() - low.error()) / width, Math.hypot(high.u(), low.u()) / width);
    }

    private Estimate slope(List<TemperatureLevel> levels) {
        final List<Estimate> steps = new ArrayList<>();
        for (int i = 1; i < levels.size(); i++) {
            steps.add(magnitude(change(levels.get(i - 1), levels.get(i))));
        }
        return largest(steps);
    }

    private Estimate bowTie(List<TemperatureLevel> levels) {
        final TemperatureLevel centre = atReference(levels);
        return largest(levels.stream().filter(l -> l != centre)
            .map(l -> magnitude(change(centre, l))).toList());
    }

    /**
     * The line y - y0 = a (T - T0) by least squares. With two or more other temperatures u(a) comes from the
     * residuals; with one it comes from the readings. The uncertainty of y0 is common to all differences and
     * is added.
     */
    private Estimate leastSquares(List<TemperatureLevel> levels) {
        final TemperatureLevel centre = atReference(levels);
        final List<TemperatureLevel> others = levels.stream().filter(l -> l != centre).toList();
        final double sxx = sum(others, centre, (dT, dy) -> dT * dT);
        final double a = sum(others, centre, (dT, dy) -> dT * dy) / sxx;
        final double common = centre.u() * sum(others, centre, (dT, dy) -> dT) / sxx;
        final int dof = others.size() - 1;
        if (dof == 0) {
            return Estimate.of(a, Math.hypot(others.get(0).u() / Math.sqrt(sxx), common));
        }
        final double variance = sum(others, centre, (dT, dy) -> (dy - a * dT) * (dy - a * dT)) / dof / sxx;
        return new Estimate(a, Math.sqrt(variance + common * common), DegreesOfFreedom.of(dof));
    }

    private static double sum(List<TemperatureLevel> others, TemperatureLevel centre,
                              ToDoubleBiFunction<Double, Double> term) {
        return others.stream().mapToDouble(
            l -> term.applyAsDouble(l.degC() - centre.degC(), l.error() - centre.error())).sum();
    }

    private double residual(List<TemperatureLevel> levels, double a) {
        final TemperatureLevel centre = atReference(levels);
        return levels.stream().mapToDouble(
            l -> Math.abs(l.error() - centre.error() - a * (l.degC() - centre.degC()))).max().orElse(0);
    }

    private TemperatureLevel atReference(List<TemperatureLevel> levels) {
        TemperatureLevel nearest = levels.get(0);
        for (TemperatureLevel level : levels) {
            nearest = Math.abs(level.degC() - reference.value())
                < Math.abs(nearest.degC() - reference.value()) ? level : nearest;
        }
        return nearest;
    }

    private static Estimate change(TemperatureLevel from, TemperatureLevel to) {
        final double dT = to.degC() - from.degC();
        return Estimate.of((to.error() - from.error()) / dT, Math.hypot(from.u(), to.u()) / Math.abs(dT));
    }

    private static Estimate magnitude(Estimate e) {
        return new Estimate(Math.abs(e.value()), e.u(), e.dof());
    }

    private static Estimate largest(List<Estimate> estimates) {
        return estimates.stream().reduce((a, b) -> b.value() > a.value() ? b : a).orElseThrow();
    }

    private static boolean isAt(double degC, ChamberPoint p) {
        return Math.abs(p.temperature().value() - degC) <= SAME_TEMPERATURE;
    }

    private static Celsius coldest(List<TemperatureLevel> levels) {
        return new Celsius(levels.get(0).degC());
    }

    private static Celsius hottest(List<TemperatureLevel> levels) {
        return new Celsius(levels.get(levels.size() - 1).degC());
    }
}
