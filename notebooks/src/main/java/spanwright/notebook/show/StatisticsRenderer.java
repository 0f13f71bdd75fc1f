package spanwright.notebook.show;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import spanwright.chart.StatisticsCharts;
import spanwright.error.Extreme;
import spanwright.error.Finding;
import spanwright.error.ReadingError;
import spanwright.error.RunStatistics;
import spanwright.error.Shift;
import spanwright.error.SignedPair;
import spanwright.error.Suspect;
import spanwright.fit.AnalysisOfVariance;
import spanwright.fit.OutlierTest;
import spanwright.kernel.display.MimeBundle;
import spanwright.kernel.display.Renderer;
import spanwright.quantity.NumberText;
import spanwright.readings.CellAddress;

/** Shows where scatter comes from and what stands out. A suspect is marked, never left out. */
public final class StatisticsRenderer implements Renderer {
    private static final double SIGNIFICANCE = 0.05;

    /** For the service loader. */
    public StatisticsRenderer() { }

    @Override
    public Optional<MimeBundle> render(Object value) {
        if (value instanceof AnalysisOfVariance analysis) {
            return Optional.of(analysis(analysis).bundle());
        }
        if (value instanceof OutlierTest test) {
            return Optional.of(outlier(test, "reading").bundle());
        }
        if (value instanceof Suspect suspect) {
            return Optional.of(suspect(suspect).bundle());
        }
        if (value instanceof RunStatistics statistics) {
            return Optional.of(run(statistics).bundle());
        }
        if (value instanceof SignedPair pair) {
            return Optional.of(pair(pair).bundle());
        }
        if (value instanceof Shift shift) {
            return Optional.of(shift(shift).bundle());
        }
        return Optional.empty();
    }

    /** The table of an analysis: each source against the one that follows it. */
    static Grid sources(String caption, AnalysisOfVariance analysis) {
        final String unit = analysis.unit().isEmpty() ? "" : "; sd in " + analysis.unit();
        final Grid.Builder grid = Grid.of(caption + unit, "source", "#sum of squares", "#dof", "#mean square",
            "#ratio", "#probability", "#sd added");
        for (AnalysisOfVariance.Source s : analysis.sources()) {
            final boolean isLast = s.equals(analysis.last());
            final OptionalDouble probability = analysis.probability(s.name());
            grid.row(List.of(s.name(), NumberText.significant(s.sumOfSquares(), 4),
                Integer.toString(s.degreesOfFreedom()), NumberText.significant(s.meanSquare(), 4),
                isLast ? "" : text(analysis.ratio(s.name()), 4), isLast ? "" : text(probability, 2),
                text(analysis.standardDeviation(s.name()), 2)),
                probability.isPresent() && probability.getAsDouble() < SIGNIFICANCE,
                "sum of squares " + Figures.full(s.sumOfSquares()));
        }
        return grid.build();
    }

    private static String text(OptionalDouble value, int digits) {
        return value.isPresent() ? NumberText.significant(value.getAsDouble(), digits) : "not determined";
    }

    private static Sheet analysis(AnalysisOfVariance analysis) {
        final List<String> shown = analysis.sources().stream().map(AnalysisOfVariance.Source::name)
            .filter(name -> isShown(analysis, name)).toList();
        final List<String> notes = new ArrayList<>(List.of(
            "Each source is tested against the one that follows it; marked: probability below 0.05. sd added:"
                + " the standard deviation that the source adds by itself."));
        for (AnalysisOfVariance.Source s : analysis.sources()) {
            final OptionalDouble sd = analysis.standardDeviation(s.name());
            if (sd.isEmpty()) {
                notes.add("What \"" + s.name() + "\" adds by itself is not determined: its cells are not of"
                    + " one size, or it is no random factor.");
            } else if (sd.getAsDouble() == 0 && !s.equals(analysis.last())) {
                notes.add("\"" + s.name() + "\" has no larger mean square than the source within it: it adds"
                    + " nothing that can be seen.");
            }
        }
        return Sheet.saying(shown.isEmpty() ? "No source is shown to add to the scatter of the one within it."
                : "Shown to add to the scatter: " + String.join(", ", shown) + ".")
            .with(sources("Analysis of variance", analysis)).with(StatisticsCharts.sources(analysis))
            .notes("How to read it", notes);
    }

    private static boolean isShown(AnalysisOfVariance analysis, String name) {
        final OptionalDouble probability = analysis.probability(name);
        return probability.isPresent() && probability.getAsDouble() < SIGNIFICANCE;
    }

    private static Sheet outlier(OutlierTest test, String yName) {
        final boolean isCochran = test.kind() == OutlierTest.Kind.COCHRAN;
        final String suspect = (isCochran ? "group " : "reading ") + (test.suspect() + 1);
        return sheet(test, isCochran ? "standard deviation" : yName, suspect);
    }

    private static Sheet sheet(OutlierTest test, String yName, String suspect) {
        final boolean isCochran = test.kind() == OutlierTest.Kind.COCHRAN;
        final Grid.Builder grid = isCochran
            ? Grid.of("Groups", "#group", "#standard deviation", "#share of all variances", "what it is")
            : Grid.of("Readings", "#number", "#" + yName, "#from the mean, in standard deviations",
                "what it is");
        final double mean = test.values().stream().mapToDouble(v -> v).average().orElseThrow();
        final double largest = test.values().stream().mapToDouble(v -> Math.abs(v - mean)).max()
            .orElseThrow();
        final double one = test.statistic() == 0 ? 1 : Math.abs(test.values().get(test.suspect()) - mean)
            / test.statistic();
        for (int i = 0; i < test.values().size(); i++) {
            final double v = test.values().get(i);
            final boolean is = i == test.suspect();
            grid.row(List.of(Integer.toString(i + 1), isCochran ? NumberText.significant(v, 2)
                    : Figures.value(v, largest / 10), isCochran ? NumberText.fixed(test.shareOfVariance(i), 3)
                    : NumberText.signed((v - mean) / one, 3), !is ? "" : suspect + (test.isSuspected()
                        ? ": suspected, kept" : ": most apart, not suspected")), is, Figures.full(v));
        }
        final var picture = StatisticsCharts.outlier(test, yName, suspect);
        return Sheet.saying(Character.toUpperCase(suspect.charAt(0)) + suspect.substring(1)
                + (test.isSuspected() ? " stands out more than chance explains: suspected, and kept."
                : " stands out most, but no more than chance explains.")).with(picture).with(grid.build())
            .notes("How to read it",
                List.of("The suspect stays in every figure: whether it may be left out is"
                + " for the person who knows what happened.", "Readings are taken as independent and normally"
                + " distributed but for the suspect."));
    }

    private static Sheet suspect(Suspect suspect) {
        final String where = NumberText.plain(suspect.position(), 4) + " % " + suspect.direction() + ", "
            + suspect.errors().stream().map(ReadingError::cell).map(CellAddress::toString).limit(3)
                .collect(Collectors.joining(", "));
        return sheet(suspect.test(), "error (% of span)", where);
    }

    private static Sheet run(RunStatistics statistics) {
        final var repeatability = statistics.analysis().nonRepeatability();
        Sheet sheet = Sheet.saying(statistics.analysis().run().channel() + ": " + repeatability.map(r ->
                "a single reading scatters by " + NumberText.uncertainty(r.pooledSd())
                + " % of span (pooled, " + r.dof() + " degrees of freedom)").value()
                    .orElse("the scatter of a single reading is not determined, " + repeatability.reason())
            + ".");
        if (repeatability.isDetermined()) {
            sheet = sheet.with(StatisticsCharts.repeatability(repeatability.orElseThrow()));
        }
        sheet = sheet.with(questions(statistics));
        final Finding<AnalysisOfVariance> sources = statistics.sources();
        if (sources.isDetermined()) {
            sheet = sheet.with(sources("Direction within point, and readings within direction",
                sources.orElseThrow())).with(StatisticsCharts.sources(sources.orElseThrow()));
        }
        return sheet.notes("How to read it", List.of("Nothing is left out: a suspect stays in every figure.",
            "Each question is judged at a significance of 0.05 by itself: of twenty, one answers yes by"
                + " chance."));
    }

    private static Grid questions(RunStatistics statistics) {
        final Grid.Builder grid = Grid.of("What the scatter says", "question", "answer", "by");
        answer(grid, "Does a straight line describe the errors?", statistics.lackOfFit().map(l ->
            (l.isShownAt(SIGNIFICANCE) ? "no" : "nothing against it") + probability(l.analysis(),
                "lack of fit")), "lack of fit against repeated readings");
        answer(grid, "Do the directions differ?", statistics.sources().map(a ->
            (isShown(a, "direction") ? "yes" : "not shown") + probability(a, "direction")),
            "analysis of variance, direction within point");
        answer(grid, "Do the cycles differ as a whole?", statistics.cycles().map(a ->
            (isShown(a, "cycle") ? "yes" : "not shown") + probability(a, "cycle")),
            "analysis of variance, beside point and direction");
        answer(grid, "Does a reading stand out?", statistics.suspectReading(SIGNIFICANCE)
            .map(StatisticsRenderer::standsOut), "Grubbs, two-sided, within a point and side");
        answer(grid, "Does the scatter of a point stand out?", statistics.suspectScatter(SIGNIFICANCE)
            .map(StatisticsRenderer::standsOut), "Cochran");
        return grid.build();
    }

    private static String standsOut(Suspect s) {
        return (s.isSuspected() ? "suspected, kept: " : "no; most apart: ")
            + NumberText.plain(s.position(), 4) + " % " + s.direction() + " ("
            + s.errors().get(0).cell() + (s.errors().size() > 1 ? " and " + (s.errors().size() - 1) + " more"
                : "") + "), " + NumberText.fixed(s.test().statistic(), 3) + " against "
            + NumberText.fixed(s.test().critical(), 3);
    }

    private static String probability(AnalysisOfVariance a, String source) {
        return a.probability(source).isPresent() ? " (probability "
            + NumberText.significant(a.probability(source).getAsDouble(), 2) + ")" : "";
    }

    private static void answer(Grid.Builder grid, String question, Finding<String> answer, String by) {
        grid.row(question, answer.value().orElse("not determined: " + answer.reason()), by);
    }

    private static Sheet pair(SignedPair pair) {
        final Grid.Builder grid = Grid.of("The two extremes", "side", "#deviation (% of span)",
            "#input (%)", "direction", "cells");
        for (boolean high : new boolean[] {true, false}) {
            final Extreme e = high ? pair.highest() : pair.lowest();
            grid.row(List.of(high ? "highest" : "lowest", NumberText.signed(e.deviation().value(), 3),
                NumberText.plain(e.position(), 4), e.direction().toString(), e.cells().stream().limit(3)
                    .map(CellAddress::toString).collect(Collectors.joining(", "))
                    + (e.cells().size() > 3 ? " and " + (e.cells().size() - 3) + " more" : "")), false,
                Figures.full(e.deviation().value()));
        }
        return Sheet.saying(pair + ".").with(grid.build());
    }

    private static Sheet shift(Shift shift) {
        final Grid.Builder grid = Grid.of("By two methods, which differ where the errors are not straight",
            "method", "#% of span", "#u", "why not");
        grid.row("end point", shift.endPoint().value().map(p -> NumberText.signed(p.value(), 3))
            .orElse("not determined"), "", shift.endPoint().reason());
        grid.row("least squares", shift.leastSquares().value().map(e -> NumberText.signed(e.value(), 3))
            .orElse("not determined"), shift.leastSquares().value().map(e -> NumberText.uncertainty(e.u()))
            .orElse(""), shift.leastSquares().reason());
        return Sheet.saying(shift.name() + ": " + shift.endPoint().map(p -> NumberText.signed(p.value(), 3)
            + " % of span by the end points").value().orElse("not determined by the end points, "
                + shift.endPoint().reason()) + ".").with(grid.build());
    }
}
