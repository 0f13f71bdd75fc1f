package spanwright.error;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import spanwright.fit.LinearRegression;
import spanwright.quantity.NumberText;

/**
 * The average error over the expected output, both in percent of the output span, and the shapes tried on it.
 */
final class ErrorShape {
    private static final int PIECES = 40;

    /** One hypothesis fitted: what it leaves at each point, and its shape as a line in pieces. */
    record Trial(ErrorPattern fault, int parameters, double[] residuals, List<Diagnosis.ShapePoint> shape,
                 List<String> evidence) { }

    private final ChannelAnalysis analysis;
    private final double[] x;
    private final double[] e;
    /** Where the output itself is 0, in percent of span: -25 for 4-20 mA. */
    private final double zeroOutput;

    private ErrorShape(ChannelAnalysis analysis, double[] x, double[] e) {
        this.analysis = analysis;
        this.x = x;
        this.e = e;
        zeroOutput = analysis.run().output().percentAt(0);
    }

    static ErrorShape of(ChannelAnalysis analysis) {
        final List<PointErrors> points = Stream.concat(analysis.points().stream(), analysis.outsideRange()
            .stream())
            .sorted(Comparator.comparingDouble(PointErrors::expectedPercent)).toList();
        return new ErrorShape(analysis, points.stream().mapToDouble(PointErrors::expectedPercent).toArray(),
            points.stream().mapToDouble(PointErrors::average).toArray());
    }

    int size() {
        return x.length;
    }

    double[] errors() {
        return e.clone();
    }

    List<Diagnosis.ShapePoint> points() {
        return IntStream.range(0, x.length).mapToObj(i -> new Diagnosis.ShapePoint(x[i], e[i])).toList();
    }

    /** A shape as a line in pieces, with corners at the points and at the given place. */
    private List<Diagnosis.ShapePoint> drawn(DoubleUnaryOperator shape, double... corners) {
        final double low = x[0];
        final double high = x[x.length - 1];
        final DoubleStream between = IntStream.rangeClosed(0, PIECES)
            .mapToDouble(k -> low + (high - low) * k / PIECES);
        return Stream.of(between.toArray(), x, corners).flatMapToDouble(DoubleStream::of)
            .filter(v -> v >= low && v <= high).distinct().sorted().mapToObj(v -> new Diagnosis.ShapePoint(v,
                shape.applyAsDouble(v))).toList();
    }

    double largest(double[] errors) {
        double largest = 0;
        for (double v : errors) {
            largest = Math.max(largest, Math.abs(v));
        }
        return largest;
    }

    /** Standard deviation of an average error by the record's own repeatability and resolution. */
    double scatter() {
        final double width = analysis.run().output().width();
        double resolution = 0;
        for (ReadingError r : analysis.errors()) {
            final double in = r.reading().applied().resolution() / analysis.run().input().width();
            final double out = r.reading().indicated().resolution() / width;
            resolution = Math.max(resolution, 100 * Math.hypot(in, out) / Math.sqrt(12));
        }
        final double repeat = analysis.nonRepeatability().map(r -> r.pooledSd()
            / Math.sqrt(2.0 * analysis.run().cycles())).value().orElse(0.0);
        return Math.hypot(resolution, repeat);
    }

    /** Whether the cycles differ as a whole at 1 %: what an offset that wanders does. */
    boolean wanders() {
        return RunStatistics.of(analysis).cycles().value()
            .map(a -> a.probability("cycle").orElse(0) < 0.01).orElse(false);
    }

    List<Trial> trials() {
        final List<Trial> t = new ArrayList<>();
        t.add(new Trial(ErrorPattern.NONE, 0, e.clone(), drawn(v -> 0), List.of("largest error "
            + percent(largest(e)))));
        linear(ErrorPattern.ZERO, v -> 1).ifPresent(t::add);
        linear(ErrorPattern.GROUND_LOOP, v -> 1).ifPresent(t::add);
        linear(ErrorPattern.SPAN, v -> v / 100).ifPresent(t::add);
        linear(ErrorPattern.ZERO_AND_SPAN, v -> 1, v -> v / 100).ifPresent(t::add);
        linear(ErrorPattern.BOW, v -> v * (100 - v) / 2500).ifPresent(t::add);
        linear(ErrorPattern.BOW, v -> v * (100 - v) / 2500, v -> 1, v -> v / 100).ifPresent(t::add);
        if (zeroOutput < 0) {
            linear(ErrorPattern.PERCENT_OF_READING, v -> (v - zeroOutput) / 100).ifPresent(t::add);
            t.add(fixed(ErrorPattern.RESISTOR_249, v -> (249.0 / 250 - 1) * (v - zeroOutput),
                "reading 0.4 % low throughout"));
            t.add(fixed(ErrorPattern.LIVE_ZERO_LEFT_OUT, v -> -zeroOutput / 100 * (v - 100),
                "a quarter of span low at 0 %"));
            t.add(fixed(ErrorPattern.FACTOR_1_25, v -> -zeroOutput / 100 * v, "output 1.25 times too wide"));
        }
        knee(1).ifPresent(t::add);
        knee(-1).ifPresent(t::add);
        stuck().ifPresent(t::add);
        return t;
    }

    /** The errors of another channel, taken as those of this one. */
    Optional<Trial> likeOther(ChannelAnalysis other) {
        final ErrorShape its = of(other);
        final double[] residuals = new double[e.length];
        for (int i = 0; i < e.length; i++) {
            int nearest = 0;
            for (int k = 1; k < its.x.length; k++) {
                nearest = Math.abs(its.x[k] - x[i]) < Math.abs(its.x[nearest] - x[i]) ? k : nearest;
            }
            if (Math.abs(its.x[nearest] - x[i]) > 1) {
                return Optional.empty();
            }
            residuals[i] = e[i] - its.e[nearest];
        }
        return Optional.of(new Trial(ErrorPattern.OTHER_CHANNEL, 0, residuals, its.points(),
            List.of("the errors of " + other.run().channel() + " to within " + percent(largest(residuals)))));
    }

    private Optional<Trial> linear(ErrorPattern fault, DoubleUnaryOperator... shapes) {
        if (x.length < shapes.length + 1) {
            return Optional.empty();
        }
        final double[][] rows = new double[x.length][shapes.length];
        for (int i = 0; i < x.length; i++) {
            for (int j = 0; j < shapes.length; j++) {
                rows[i][j] = shapes[j].applyAsDouble(x[i]);
            }
        }
        final LinearRegression fit = LinearRegression.fitThroughOrigin(rows, e);
        final String figure = percent(fit.coefficient(1).value());
        final List<String> evidence = new ArrayList<>();
        switch (fault) {
            case ZERO -> evidence.add(figure + " at every point");
            case GROUND_LOOP -> {
                evidence.add(figure + " at every point");
                evidence.add(wanders() ? "it wanders from cycle to cycle" : "it is not seen to wander");
            }
            case SPAN -> evidence.add("0 at the lower, " + figure + " at the upper range value");
            case ZERO_AND_SPAN -> evidence.add(figure + " at the lower range value, and "
                + percent(fit.coefficient(2).value()) + " more at the upper");
            case BOW -> evidence.add(figure + " at mid-range against the straight line through the ends");
            default -> evidence.add(NumberText.signed(fit.coefficient(1).value(), 3)
                + " % of reading at every point");
        }
        return Optional
            .of(new Trial(fault, shapes.length, fit.residuals().stream().mapToDouble(v -> v).toArray(),
                drawn(v -> IntStream.range(0, shapes.length)
                    .mapToDouble(j -> fit.coefficient(j + 1).value() * shapes[j].applyAsDouble(v)).sum()),
                evidence));
    }

    private Trial fixed(ErrorPattern fault, DoubleUnaryOperator shape, String evidence) {
        final double[] residuals = new double[x.length];
        for (int i = 0; i < x.length; i++) {
            residuals[i] = e[i] - shape.applyAsDouble(x[i]);
        }
        return new Trial(fault, 0, residuals, drawn(shape), List.of(evidence));
    }

    /** Right up to (side 1) or down to (side -1) a level where the output stays: the best such level. */
    private Optional<Trial> knee(int side) {
        Trial best = null;
        double least = Double.MAX_VALUE;
        for (int flat = 1; flat < x.length - 1; flat++) {
            double level = 0;
            for (int i = 0; i < flat; i++) {
                final int k = side > 0 ? x.length - 1 - i : i;
                level += (x[k] + e[k]) / flat;
            }
            final double at = level;
            final double[] residuals = new double[x.length];
            double squares = 0;
            for (int i = 0; i < x.length; i++) {
                residuals[i] = e[i] - side * Math.min(0, side * (at - x[i]));
                squares += residuals[i] * residuals[i];
            }
            if (squares < least) {
                least = squares;
                best = new Trial(side > 0 ? ErrorPattern.COMPLIANCE_KNEE : ErrorPattern.LOW_CLAMP, 1,
                    residuals, drawn(v -> side * Math.min(0, side * (at - v)), at),
                    flatAt(at, side, flat));
            }
        }
        return Optional.ofNullable(best);
    }

    private List<String> flatAt(double level, int side, int points) {
        final String flat = "flat at " + NumberText.fixed(level, 1) + " % of span ("
            + NumberText.significant(analysis.run().output().valueAt(level), 4) + " "
            + analysis.run().output().symbol() + ") " + (side > 0 ? "and above" : "and below");
        return points > 1 ? List.of(flat, "seen at " + points + " points")
            : List.of(flat, "seen at one point only: a single bad reading looks the same");
    }

    private Optional<Trial> stuck() {
        double level = 0;
        for (int i = 0; i < x.length; i++) {
            level += (x[i] + e[i]) / x.length;
        }
        final double at = level;
        final Trial flat = fixed(ErrorPattern.STUCK, v -> at - v, "");
        return Optional.of(new Trial(ErrorPattern.STUCK, 1, flat.residuals(), flat.shape(),
            List.of("output stays at " + NumberText.significant(analysis.run().output().valueAt(at), 4) + " "
                + analysis.run().output().symbol())));
    }

    private static String percent(double value) {
        return NumberText.signed(value, 3) + " % of span";
    }
}
