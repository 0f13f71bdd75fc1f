package spanwright.error;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeSet;
import spanwright.fit.AnalysisOfVariance;
import spanwright.fit.LackOfFit;
import spanwright.fit.LinearRegression;
import spanwright.fit.NoFitException;
import spanwright.fit.OutlierTest;
import spanwright.fit.Sample;
import spanwright.quantity.Checks;
import spanwright.readings.Direction;

/**
 * Statistics of one run: where its scatter comes from, whether a straight line describes it, which reading
 * stands out. Errors in percent of the output span. Nothing is left out: a suspect is shown, never dropped.
 *
 * @param analysis the run's analysis
 */
public record RunStatistics(ChannelAnalysis analysis) {
    private static final String UNIT = "% of span";

    /** Checks the component. */
    public RunStatistics {
        Objects.requireNonNull(analysis, "analysis");
    }

    /** The statistics of a run. */
    public static RunStatistics of(ChannelAnalysis analysis) {
        return new RunStatistics(analysis);
    }

    /**
     * Whether a straight line describes the errors, against the scatter of readings of one point and side.
     */
    public Finding<LackOfFit> lackOfFit() {
        final List<Double> x = new ArrayList<>();
        final List<Double> y = new ArrayList<>();
        for (PointErrors p : analysis.points()) {
            for (ReadingError e : p.all()) {
                x.add(p.expectedPercent());
                y.add(e.percentOfSpan());
            }
        }
        if (x.size() < 3) {
            return Finding.notDetermined("there are " + x.size() + " readings; three are needed");
        }
        try {
            return Finding.of(LackOfFit.of(array(x), array(y), 1)
                .named("expected output (% of span)", "error (% of span)"));
        } catch (NoFitException e) {
            return Finding.notDetermined(e.getMessage());
        }
    }

    /**
     * Direction within points and cycle within direction: nested analysis of the errors, the point's own
     * error being the outermost source.
     */
    public Finding<AnalysisOfVariance> sources() {
        final List<Double> y = new ArrayList<>();
        final List<String> point = new ArrayList<>();
        final List<String> direction = new ArrayList<>();
        for (PointErrors p : analysis.points()) {
            for (ReadingError e : p.all()) {
                y.add(e.percentOfSpan());
                point.add(Double.toString(p.position()));
                direction.add(e.direction().name());
            }
        }
        final Map<String, List<String>> factors = new LinkedHashMap<>();
        factors.put("point", point);
        factors.put("direction", direction);
        return analysed(y, factors);
    }

    private static Finding<AnalysisOfVariance> analysed(List<Double> y, Map<String, List<String>> factors) {
        try {
            return Finding.of(AnalysisOfVariance.nested(array(y), factors).in(UNIT));
        } catch (IllegalArgumentException e) {
            return Finding.notDetermined("the record has too few readings for an analysis of variance: "
                + e.getMessage());
        }
    }

    /**
     * Whether days differ: direction within day within point, over runs of one channel with nothing adjusted
     * between.
     *
     * @param byDay the analysis of each day, by its name; at least two
     */
    public static Finding<AnalysisOfVariance> acrossDays(Map<String, ChannelAnalysis> byDay) {
        final List<Double> y = new ArrayList<>();
        final Map<String, List<String>> factors = new LinkedHashMap<>();
        List.of("point", "day", "direction").forEach(f -> factors.put(f, new ArrayList<>()));
        byDay.forEach((day, run) -> run.points().forEach(p -> p.all().forEach(e -> {
            y.add(e.percentOfSpan());
            factors.get("point").add(Long.toString(Math.round(p.position())));
            factors.get("day").add(day);
            factors.get("direction").add(e.direction().name());
        })));
        return analysed(y, factors);
    }

    /**
     * Whether the cycles differ as a whole, as they do while a device warms up: the cycle's share in what
     * point and direction leave, tested against the rest.
     */
    public Finding<AnalysisOfVariance> cycles() {
        final List<ReadingError> errors = analysis.errorsWithinRange();
        final List<String> cells = errors.stream().map(this::cell).distinct().toList();
        final List<Integer> cycles = List.copyOf(new TreeSet<>(errors.stream().map(ReadingError::cycle)
            .toList()));
        if (cycles.size() < 2) {
            return Finding.notDetermined("the record has one cycle only");
        }
        final double[] y = errors.stream().mapToDouble(ReadingError::percentOfSpan).toArray();
        final int p = cells.size() - 1 + cycles.size() - 1;
        if (y.length < p + 2) {
            return Finding.notDetermined("there are " + y.length + " readings for " + cells.size()
                + " points and sides and " + cycles.size() + " cycles: no scatter is left to test against");
        }
        final double[][] rows = new double[y.length][p];
        final double[][] alone = new double[y.length][cells.size() - 1];
        for (int i = 0; i < y.length; i++) {
            final int cell = cells.indexOf(cell(errors.get(i)));
            final int cycle = cycles.indexOf(errors.get(i).cycle());
            if (cell > 0) {
                rows[i][cell - 1] = 1;
                alone[i][cell - 1] = 1;
            }
            if (cycle > 0) {
                rows[i][cells.size() - 1 + cycle - 1] = 1;
            }
        }
        try {
            final AnalysisOfVariance.Source rest = LinearRegression.fit(rows, y).analysisOfVariance().last();
            final double without = cells.size() == 1 ? Sample.of(y).sd() * Sample.of(y).sd() * (y.length - 1)
                : LinearRegression.fit(alone, y).analysisOfVariance().last().sumOfSquares();
            return Finding.of(new AnalysisOfVariance(List.of(
                new AnalysisOfVariance.Source("cycle", Math.max(0, without - rest.sumOfSquares()),
                    cycles.size() - 1),
                new AnalysisOfVariance.Source("within", rest.sumOfSquares(), rest.degreesOfFreedom())),
                List.of(0, 1), UNIT));
        } catch (NoFitException e) {
            return Finding.notDetermined("cycles and points cannot be told apart: " + e.getMessage());
        }
    }

    /**
     * The reading that stands out most among those of its point and side, by Grubbs' two-sided test.
     *
     * @param significance in the open interval (0, 1), usually 0.05, for each point and side by itself
     */
    public Finding<Suspect> suspectReading(double significance) {
        Checks.inside("significance", significance, 0, 1);
        Suspect worst = null;
        for (PointErrors p : analysis.points()) {
            for (Direction d : Direction.values()) {
                final double[] y = p.in(d).stream().mapToDouble(ReadingError::percentOfSpan).toArray();
                if (y.length >= 3 && Sample.of(y).sd() > 0) {
                    final OutlierTest t = OutlierTest.grubbs(OutlierTest.Kind.GRUBBS_TWO_SIDED, y,
                        significance);
                    final Suspect s = new Suspect(p.position(), d, List.of(p.in(d).get(t.suspect())), t);
                    worst = worst == null || s.excess() > worst.excess() ? s : worst;
                }
            }
        }
        return worst == null ? Finding.notDetermined("no point was read three times from one side with "
            + "any scatter")
            : Finding.of(worst);
    }

    /**
     * The point and side whose scatter stands out most, by Cochran's test.
     *
     * @param significance in the open interval (0, 1), usually 0.05
     */
    public Finding<Suspect> suspectScatter(double significance) {
        Checks.inside("significance", significance, 0, 1);
        final List<Sample> groups = new ArrayList<>();
        final List<Place> where = new ArrayList<>();
        final int readings = analysis.points().stream().mapToInt(p -> Math.max(p.upscale().size(),
            p.downscale().size())).max().orElse(0);
        for (PointErrors p : analysis.points()) {
            for (Direction d : Direction.values()) {
                if (p.in(d).size() == readings && readings >= 2) {
                    groups.add(Sample.of(p.in(d).stream().mapToDouble(ReadingError::percentOfSpan)
                        .toArray()));
                    where.add(new Place(p, d));
                }
            }
        }
        if (groups.size() < 2 || groups.stream().allMatch(g -> g.sd() == 0)) {
            return Finding.notDetermined("fewer than two points and sides have repeated readings with "
                + "any scatter");
        }
        final OutlierTest t = OutlierTest.cochran(groups, significance);
        final Place place = where.get(t.suspect());
        return Finding.of(new Suspect(place.point().position(), place.side(),
            place.point().in(place.side()), t));
    }

    /** A point from one side. */
    private record Place(PointErrors point, Direction side) { }

    private String cell(ReadingError e) {
        for (PointErrors p : analysis.points()) {
            if (p.all().contains(e)) {
                return p.position() + " " + e.direction();
            }
        }
        throw new IllegalStateException("no point has " + e);
    }

    private static double[] array(List<Double> values) {
        return values.stream().mapToDouble(v -> v).toArray();
    }

    @Override
    public String toString() {
        return "lack of fit: " + lackOfFit() + "\nsources:\n" + sources() + "\ncycles:\n" + cycles()
            + "\nreading: " + suspectReading(0.05) + "\nscatter: " + suspectScatter(0.05);
    }
}
