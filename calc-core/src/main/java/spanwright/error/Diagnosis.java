package spanwright.error;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * What the shape of a channel's errors speaks for: hypotheses ranked by likelihood, with the evidence, and
 * "none fits" as an answer.
 *
 * <p>Each hypothesis is fitted to the average error at each point, points outside the range included. Its
 * likelihood is that of normal residuals whose standard deviation is the record's own (repeatability and
 * resolution) together with a twentieth of the largest error, since no device has the pure shape; each fitted
 * figure is paid for as in the Bayesian information criterion. None fits where even the first leaves more
 * than a third of the largest error. These two shares are our choice (no source). Shape alone cannot tell
 * causes of one shape apart; the check of each {@link ErrorPattern} can.
 *
 * @param channel    the channel
 * @param points     the average error at each point, what the shapes were fitted to
 * @param hypotheses ranked, the likeliest first
 * @param noneFits   whether even the first leaves too much
 * @param scatter    standard deviation of a point's average error that the record explains, percent of span
 */
public record Diagnosis(String channel, List<ShapePoint> points, List<Hypothesis> hypotheses,
                        boolean noneFits, double scatter) {
    private static final double LEFT_OVER = 1.0 / 3;
    private static final double IMPURE = 0.05;
    private static final double NEGLIGIBLE_SCATTERS = 3;

    /**
     * An error over the expected output, both in percent of the output span.
     *
     * @param expected expected output
     * @param error    the error there
     */
    public record ShapePoint(double expected, double error) {
        /** Checks the components. */
        public ShapePoint {
            Checks.finite("expected output", expected);
            Checks.finite("error", error);
        }
    }

    /** Checks the components and copies the lists. */
    public Diagnosis {
        Checks.notBlank("channel", channel);
        points = List.copyOf(points);
        Checks.notNegative("scatter", scatter);
        hypotheses = List.copyOf(hypotheses);
        if (hypotheses.isEmpty()) {
            throw new IllegalArgumentException("a diagnosis needs a hypothesis");
        }
    }

    /** The diagnosis of one channel by itself; not determined below three points. */
    public static Finding<Diagnosis> of(ChannelAnalysis analysis) {
        return of(analysis, List.of());
    }

    /**
     * The diagnosis of one channel, with earlier records of the other channels to compare its errors with:
     * swapped or shifted channels carry another's errors.
     *
     * @param others earlier analyses of other channels
     */
    public static Finding<Diagnosis> of(ChannelAnalysis analysis, List<ChannelAnalysis> others) {
        Objects.requireNonNull(others, "others");
        final ErrorShape shape = ErrorShape.of(analysis);
        if (shape.size() < 3) {
            return Finding.notDetermined("the shape of the errors needs three points; there are "
                + shape.size());
        }
        final double largest = shape.largest(shape.errors());
        final double scatter = shape.scatter();
        final List<ErrorShape.Trial> trials = new ArrayList<>(shape.trials());
        for (ChannelAnalysis other : others) {
            shape.likeOther(other).ifPresent(trials::add);
        }
        final double sigma = Math.hypot(scatter, IMPURE * largest);
        final List<Double> scores = trials.stream().map(t -> score(t, sigma, shape.size())).toList();
        final double best = scores.stream().mapToDouble(s -> s).min().orElseThrow();
        final double total = scores.stream().mapToDouble(s -> Math.exp((best - s) / 2)).sum();
        final List<Hypothesis> ranked = new ArrayList<>();
        for (int i = 0; i < trials.size(); i++) {
            final ErrorShape.Trial t = trials.get(i);
            final double left = shape.largest(t.residuals());
            ranked.add(new Hypothesis(t.fault(), Math.exp((best - scores.get(i)) / 2) / total,
                t.parameters(), left, largest == 0 ? 1 : Math.max(0, 1 - left / largest), t.shape(),
                Arrays.stream(t.residuals()).boxed().toList(), t.evidence()));
        }
        // One shape, two causes: an offset that wanders speaks for the stray current, a steady one for the
        // zero.
        final ErrorPattern second = shape.wanders() ? ErrorPattern.ZERO : ErrorPattern.GROUND_LOOP;
        ranked.sort(Comparator.comparingDouble(Hypothesis::weight).reversed()
            .thenComparing(h -> h.fault() == second));
        final double left = ranked.get(0).largestResidual();
        return Finding.of(new Diagnosis(analysis.run().channel(), shape.points(), ranked,
            left > LEFT_OVER * largest && left > NEGLIGIBLE_SCATTERS * scatter, scatter));
    }

    /** Chi squared and the price of the fitted figures: the lower, the likelier. */
    private static double score(ErrorShape.Trial t, double sigma, int points) {
        double chi = 0;
        for (double r : t.residuals()) {
            chi += sigma == 0 ? 0 : r * r / (sigma * sigma);
        }
        return chi + t.parameters() * Math.log(points);
    }

    /** The likeliest hypothesis; look at {@link #noneFits} first. */
    public Hypothesis first() {
        return hypotheses.get(0);
    }

    /** A hypothesis by its fault. */
    public Finding<Hypothesis> about(ErrorPattern fault) {
        return hypotheses.stream().filter(h -> h.fault() == fault).findFirst().map(Finding::of)
            .orElseGet(() -> Finding.notDetermined(fault + " was not among the hypotheses tried"));
    }

    /** The diagnosis in one sentence. */
    public String sentence() {
        if (noneFits) {
            return "None of the known shapes fits: the nearest, " + first().fault() + ", leaves "
                + NumberText.fixed(first().largestResidual(), 3) + " % of span.";
        }
        return "The errors speak for: " + first().fault() + " (" + String.join("; ", first().evidence())
            + "). To tell: " + first().fault().check() + ".";
    }

    @Override
    public String toString() {
        return sentence() + hypotheses.stream().filter(h -> h.weight() >= 0.005).map(h -> "\n" + h)
            .collect(Collectors.joining());
    }
}
