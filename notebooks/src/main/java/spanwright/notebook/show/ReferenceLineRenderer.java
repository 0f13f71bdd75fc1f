package spanwright.notebook.show;

import java.util.List;
import java.util.Optional;
import spanwright.chart.FitCharts;
import spanwright.chart.ReferenceCharts;
import spanwright.fit.InverseInterval;
import spanwright.fit.LackOfFit;
import spanwright.fit.MinimaxAdjustment;
import spanwright.fit.ReferenceLine;
import spanwright.kernel.display.MimeBundle;
import spanwright.kernel.display.Renderer;
import spanwright.quantity.NumberText;

/** Shows reference lines, the best correction, lack of fit and the inverse use of a calibration line. */
public final class ReferenceLineRenderer implements Renderer {
    /** For the service loader. */
    public ReferenceLineRenderer() { }

    @Override
    public Optional<MimeBundle> render(Object value) {
        if (value instanceof ReferenceLine line) {
            return Optional.of(line(line).bundle());
        }
        if (value instanceof MinimaxAdjustment adjustment) {
            return Optional.of(adjustment(adjustment).bundle());
        }
        if (value instanceof LackOfFit test) {
            return Optional.of(lackOfFit(test).bundle());
        }
        if (value instanceof InverseInterval answer) {
            return Optional.of(inverse(answer).bundle());
        }
        return Optional.empty();
    }

    private static Sheet line(ReferenceLine line) {
        final double place = line.largestDeviation() / 10;
        final Grid.Builder grid = Grid.of("Points and their deviations", "#point", "#" + line.data().xName(),
            "#" + line.data().yName(), "#line", "#deviation", "fixes the line");
        for (int i = 0; i < line.data().size(); i++) {
            final double off = line.deviations().get(i);
            final boolean fixes = line.fixedBy().contains(i);
            grid.row(List.of(Integer.toString(i + 1), NumberText.plain(line.data().x(i), 7),
                NumberText.plain(line.data().y(i), 7), Figures.value(line.at(line.data().x(i)), place),
                Figures.value(off, place), fixes ? "\u25ef yes" : ""), fixes, Figures.full(off));
        }
        return Sheet.saying(line.kind() + " line: largest deviation "
                + NumberText.significant(line.largestDeviation(), 3) + " (highest "
                + Figures.value(line.highestDeviation(), place) + ", lowest "
                + Figures.value(line.lowestDeviation(), place) + "); slope "
                + NumberText.significant(line.slope(), 7) + ", intercept "
                + NumberText.significant(line.intercept(), 6) + ".")
            .with(ReferenceCharts.line(line)).with(grid.build())
            .notes("How the line is placed", List.of(placed(line)));
    }

    private static String placed(ReferenceLine line) {
        switch (line.kind()) {
            case INDEPENDENT:
                return "Free in slope and position, so that the largest deviation is the least of all lines.";
            case ZERO_BASED:
                return "Through the point of the lowest x; the slope makes the largest deviation the least.";
            case TERMINAL_BASED:
                return "Through the points of the lowest and the highest x.";
            case ABSOLUTE:
                return "The specified characteristic: the points have no part in it.";
            default:
                return "Least squares through all points: for comparison, none of the four lines of"
                    + " linearity.";
        }
    }

    private static Sheet adjustment(MinimaxAdjustment a) {
        final Grid.Builder grid = Grid.of("Points before and after", "#" + a.data().xName(),
            "#" + a.data().yName() + ", before", "#after", "#limit \u00b1", "#before, of limit",
            "#after, of limit", "fixes the correction");
        for (int i = 0; i < a.data().size(); i++) {
            final double place = a.limits().get(i) / 10;
            final boolean fixes = a.fixedBy().contains(i);
            grid.row(List.of(NumberText.plain(a.data().x(i), 6), Figures.value(a.data().y(i), place),
                Figures.value(a.after(i), place), NumberText.plain(a.limits().get(i), 4),
                NumberText.fixed(a.shareBefore(i), 2), NumberText.fixed(a.shareAfter(i), 2),
                fixes ? "\u25ef yes" : ""), fixes, Figures.full(a.after(i)));
        }
        return Sheet.saying("Adding " + NumberText.significant(a.offset(), 4) + " and "
                + NumberText.significant(a.tilt(), 4) + " per unit of " + a.data().xName()
                + " brings the largest error from " + NumberText.fixed(a.largestBefore(), 2) + " to "
                + NumberText.fixed(a.largest(), 2) + " of its limit; no correction of zero and span does"
                + " better.")
            .with(ReferenceCharts.adjustment(a)).with(grid.build());
    }

    private static Sheet lackOfFit(LackOfFit test) {
        final String curve = test.curve().degree() == 1 ? "straight line"
            : "polynomial of degree " + test.curve().degree();
        final double place = Math.max(test.replicatesSd(), 1e-300);
        final Grid.Builder grid = Grid.of("Means of each point", "#" + test.curve().data().xName(),
            "#readings", "#mean", "#curve", "#departure");
        for (LackOfFit.Point p : test.points()) {
            grid.row(List.of(NumberText.plain(p.x(), 7), Integer.toString(p.readings()),
                Figures.value(p.mean(), place), Figures.value(p.onCurve(), place),
                Figures.value(p.departure(), place)), false, Figures.full(p.departure()));
        }
        final var probability = test.analysis().probability(LackOfFit.LACK_OF_FIT);
        return Sheet.saying((test.isShownAt(0.05) ? "The " + curve + " does not describe the readings"
                : "No lack of fit of the " + curve + " is shown") + (probability.isPresent()
                    ? ": so much departure would come by chance with a probability of "
                        + NumberText.significant(probability.getAsDouble(), 2) : "") + ".")
            .with(StatisticsRenderer.sources("Departure of the means against repeated readings",
                test.analysis())).with(FitCharts.lackOfFit(test)).with(grid.build())
            .notes("Judged at", List.of("a significance of 0.05. That no lack is shown does not prove the "
                + curve + "."));
    }

    private static Sheet inverse(InverseInterval answer) {
        final Grid.Builder grid = Grid.of("The line read backwards", "what", "#value");
        grid.row("indication", NumberText.plain(answer.indication().value(), 7))
            .row("its standard uncertainty by the scatter",
                NumberText.uncertainty(answer.indication().u()))
            .row("stimulus", answer.stimulus().map(x -> answer.interval().map(i ->
                Figures.value(x, i.halfWidth())).orElse(NumberText.significant(x, 4))).orElse("none"))
            .row(NumberText.plain(100 * answer.coverage(), 4) + " % interval",
                answer.interval().map(Figures::interval).orElse("no bounded interval"));
        final Sheet sheet = Sheet.saying(FitCharts.inverse(answer).title()).with(FitCharts.inverse(answer))
            .with(grid.build());
        return answer.interval().isEmpty() ? sheet.notes("Why there is no interval",
                List.of(answer.reason(),
                    "More readings, or stimuli farther apart, tell the slope from zero."))
            : sheet.notes("How to read it",
                List.of("The interval is where the indication lies within the band"
                + " about the line (Fieller); it is not symmetrical about the stimulus.",
                answer.isWithinTheReadings() ? "The stimulus lies within the readings."
                    : "The stimulus lies beyond the readings: nothing supports the line there."));
    }
}
