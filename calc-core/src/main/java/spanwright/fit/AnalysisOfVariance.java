package spanwright.fit;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.apache.commons.statistics.distribution.FDistribution;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * Analysis of variance: where the scatter of readings comes from. Each source is tested against the one that
 * follows it; the last is the scatter within.
 *
 * <p>One factor gives the one-way analysis. Several factors are taken as nested, the outermost first: cycles
 * within directions within days. Random factors are meant, so a factor is tested against the next inner one,
 * not against the residual.
 *
 * <p>Source: JCGM 100:2008 (GUM), H.5.
 *
 * @param sources   the sources, the residual last; at least two
 * @param cellSizes readings in each cell of a factor where all its cells have the same number; 0 where they
 *                  do not, or where it has no meaning
 * @param unit      of the readings, empty where it was not given
 */
public record AnalysisOfVariance(List<Source> sources, List<Integer> cellSizes, String unit) {
    /**
     * One source of scatter.
     *
     * @param name             what varies
     * @param sumOfSquares     sum of squares, in the square of the reading's unit
     * @param degreesOfFreedom at least 1
     */
    public record Source(String name, double sumOfSquares, int degreesOfFreedom) {
        /** Checks the components. */
        public Source {
            Checks.notBlank("name", name);
            Checks.notNegative("sum of squares", sumOfSquares);
            Checks.atLeast("degrees of freedom of " + name, degreesOfFreedom, 1);
        }

        /** Sum of squares by degrees of freedom. */
        public double meanSquare() {
            return sumOfSquares / degreesOfFreedom;
        }
    }

    /** Checks the components and copies the lists. */
    public AnalysisOfVariance {
        sources = List.copyOf(sources);
        cellSizes = List.copyOf(cellSizes);
        Objects.requireNonNull(unit, "unit");
        Checks.atLeast("number of sources", sources.size(), 2);
    }

    /** Of readings whose unit is not given. */
    public AnalysisOfVariance(List<Source> sources, List<Integer> cellSizes) {
        this(sources, cellSizes, "");
    }

    /** The same analysis, of readings in this unit: "mV", "% of span". */
    public AnalysisOfVariance in(String readingsUnit) {
        return new AnalysisOfVariance(sources, cellSizes, Checks.notBlank("unit", readingsUnit));
    }

    static AnalysisOfVariance of(List<Source> sources) {
        return new AnalysisOfVariance(sources, sources.stream().map(s -> 0).toList());
    }

    /**
     * One factor, from the readings of each of its groups.
     *
     * @param factor what differs between the groups: "day"
     * @param groups readings of each group; at least two groups, one of them with two readings; not modified
     * @throws IllegalArgumentException if there are too few, or one is not finite
     */
    public static AnalysisOfVariance oneWay(String factor, double[]... groups) {
        final List<Double> readings = new ArrayList<>();
        final List<String> labels = new ArrayList<>();
        for (int g = 0; g < groups.length; g++) {
            for (double v : Checks.finiteAll("readings of group " + (g + 1), groups[g], 1)) {
                readings.add(v);
                labels.add(Integer.toString(g));
            }
        }
        return nested(readings.stream().mapToDouble(v -> v).toArray(), Map.of(factor, labels));
    }

    /**
     * One factor, from what is known of each group.
     *
     * @param factor what differs between the groups
     * @param groups number, mean and standard deviation of each group; at least two
     * @throws IllegalArgumentException if there are fewer than two groups
     */
    public static AnalysisOfVariance oneWay(String factor, List<Sample> groups) {
        Checks.atLeast("number of groups", groups.size(), 2);
        final double[] means = groups.stream().mapToDouble(Sample::mean).toArray();
        final double[] counts = groups.stream().mapToDouble(Sample::count).toArray();
        final double grand = Sums.mean(means, counts);
        final int readings = groups.stream().mapToInt(Sample::count).sum();
        final double within = groups.stream().mapToDouble(s -> s.sd() * s.sd() * (s.count() - 1)).sum();
        final int size = groups.stream().mapToInt(Sample::count).distinct().count() == 1
            ? groups.get(0).count() : 0;
        return new AnalysisOfVariance(List.of(
            new Source(factor, Sums.ofProducts(counts, means, grand, means, grand), groups.size() - 1),
            new Source("within", within, readings - groups.size())), List.of(size, 1));
    }

    /**
     * Nested factors.
     *
     * @param readings n readings; not modified
     * @param factors  label of every reading for each factor, n each, the outermost factor first; the order
     *                 of the map counts, so use a LinkedHashMap for more than one
     * @throws IllegalArgumentException if the sizes do not agree, a value is not finite, or a factor has no
     *     degree of freedom: one group only, or nothing varies inside its groups
     */
    public static AnalysisOfVariance nested(double[] readings, Map<String, List<String>> factors) {
        final double[] y = Checks.finiteAll("readings", readings, 2);
        Checks.atLeast("number of factors", Objects.requireNonNull(factors, "factors").size(), 1);
        final List<Source> sources = new ArrayList<>();
        final List<Integer> sizes = new ArrayList<>();
        List<String> outer = new ArrayList<>(Collections.nCopies(y.length, ""));
        int outerCells = 1;
        for (Map.Entry<String, List<String>> factor : factors.entrySet()) {
            if (factor.getValue().size() != y.length) {
                throw new IllegalArgumentException("factor " + factor.getKey() + " has "
                    + factor.getValue().size() + " labels for " + y.length + " readings");
            }
            final List<String> inner = new ArrayList<>();
            for (int i = 0; i < y.length; i++) {
                inner.add(outer.get(i) + "\u0000" + factor.getValue().get(i));
            }
            final double[] between = difference(means(y, inner), means(y, outer));
            final Map<String, Long> cells = inner.stream()
                .collect(Collectors.groupingBy(label -> label, Collectors.counting()));
            sources.add(new Source(factor.getKey(), Sums.ofProducts(between, 0, between, 0),
                cells.size() - outerCells));
            sizes.add(cells.values().stream().distinct().count() == 1
                ? cells.values().iterator().next().intValue() : 0);
            outer = inner;
            outerCells = cells.size();
        }
        final double[] within = difference(y, means(y, outer));
        sources.add(new Source("within", Sums.ofProducts(within, 0, within, 0), y.length - outerCells));
        sizes.add(1);
        return new AnalysisOfVariance(sources, sizes);
    }

    /** The last source: what no factor explains. */
    public Source last() {
        return sources.get(sources.size() - 1);
    }

    /**
     * A source by its name.
     *
     * @throws IllegalArgumentException if there is none of that name
     */
    public Source source(String name) {
        return sources.get(index(name));
    }

    /** Mean square of a source by that of the next, empty where the next has none to divide by. */
    public OptionalDouble ratio(String name) {
        final int i = index(name);
        if (i + 1 == sources.size() || sources.get(i + 1).sumOfSquares() == 0) {
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(sources.get(i).meanSquare() / sources.get(i + 1).meanSquare());
    }

    /** Probability of so large a ratio, or a larger one, where the source adds nothing to the next. */
    public OptionalDouble probability(String name) {
        final int i = index(name);
        final OptionalDouble ratio = ratio(name);
        return ratio.isEmpty() ? ratio : OptionalDouble.of(FDistribution.of(
            sources.get(i).degreesOfFreedom(), sources.get(i + 1).degreesOfFreedom())
            .survivalProbability(ratio.getAsDouble()));
    }

    /**
     * Standard deviation that a source adds by itself, 0 where its mean square is below the next one's; empty
     * unless all cells of this and of the next source have the same number of readings.
     */
    public OptionalDouble standardDeviation(String name) {
        final int i = index(name);
        if (i + 1 == sources.size()) {
            return OptionalDouble.of(Math.sqrt(last().meanSquare()));
        }
        if (cellSizes.get(i) == 0 || cellSizes.get(i + 1) == 0) {
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(Math.sqrt(Math.max(0,
            (sources.get(i).meanSquare() - sources.get(i + 1).meanSquare()) / cellSizes.get(i))));
    }

    private int index(String name) {
        for (int i = 0; i < sources.size(); i++) {
            if (sources.get(i).name().equals(name)) {
                return i;
            }
        }
        throw new IllegalArgumentException("there is no source \"" + name + "\", only "
            + sources.stream().map(Source::name).toList());
    }

    /** For every reading, the mean of the readings with its label. */
    private static double[] means(double[] y, List<String> labels) {
        final Map<String, List<Double>> cells = new LinkedHashMap<>();
        for (int i = 0; i < y.length; i++) {
            cells.computeIfAbsent(labels.get(i), k -> new ArrayList<>()).add(y[i]);
        }
        final Map<String, Double> means = new LinkedHashMap<>();
        cells.forEach((label, values) ->
            means.put(label, Sums.mean(values.stream().mapToDouble(v -> v).toArray())));
        return labels.stream().mapToDouble(means::get).toArray();
    }

    private static double[] difference(double[] a, double[] b) {
        final double[] d = new double[a.length];
        for (int i = 0; i < d.length; i++) {
            d[i] = a[i] - b[i];
        }
        return d;
    }

    @Override
    public String toString() {
        return sources.stream().map(s -> s.name() + ": sum of squares "
            + NumberText.significant(s.sumOfSquares(), 6)
            + ", " + s.degreesOfFreedom() + " degrees of freedom"
            + (ratio(s.name()).isEmpty() ? "" : ", ratio " + NumberText.significant(
                ratio(s.name()).getAsDouble(), 4) + ", probability "
                + NumberText.significant(probability(s.name()).getAsDouble(), 2)))
            .collect(Collectors.joining("\n"));
    }
}
