package spanwright.notebook.show;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import spanwright.chart.InfluenceCharts;
import spanwright.chart.UncertaintyCharts;
import spanwright.error.CalibrationStandard;
import spanwright.error.MeasurementProcess;
import spanwright.error.PointUncertainty;
import spanwright.kernel.display.MimeBundle;
import spanwright.kernel.display.Renderer;
import spanwright.quantity.NumberText;
import spanwright.readings.CellAddress;
import spanwright.uncertainty.BudgetLine;
import spanwright.uncertainty.ExpandedUncertainty;

/** Shows how a calibration was measured and how sure each point's error is; what is missing comes first. */
public final class ProcessRenderer implements Renderer {
    /** For the service loader. */
    public ProcessRenderer() { }

    @Override
    public Optional<MimeBundle> render(Object value) {
        if (value instanceof MeasurementProcess process) {
            return Optional.of(process(process).bundle());
        }
        if (value instanceof PointUncertainty point) {
            return Optional.of(point(point).bundle());
        }
        if (value instanceof List<?> list && !list.isEmpty()
                && list.stream().allMatch(PointUncertainty.class::isInstance)) {
            return Optional.of(points(list.stream().map(PointUncertainty.class::cast).toList()).bundle());
        }
        return Optional.empty();
    }

    private static Sheet process(MeasurementProcess process) {
        final List<String> lacks = new ArrayList<>();
        for (CalibrationStandard s : List.of(process.applied(), process.indicated())) {
            if (s.driftPerYear() == 0) {
                lacks.add("the drift of " + s.name() + " since its certificate is not stated");
            }
        }
        final Grid.Builder grid = Grid.of("The standards", "standard", "of the", "#U of the certificate",
            "#k", "#drift per year", "#years since", "#limit of the drift", "figures are");
        row(grid, "input", process.applied());
        row(grid, "output", process.indicated());
        return Sheet.saying((lacks.isEmpty() ? "" : "Not complete: " + String.join("; ", lacks) + ". ")
                + "Input by " + process.applied().name() + ", output by " + process.indicated().name() + ".")
            .with(grid.build()).notes("Reckoned with", List.of("repeatability: " + process.repeatability()
                .map(e -> NumberText.uncertainty(e.u()) + " % of span for a single reading with " + e.dof()
                    + " degrees of freedom, where the record cannot tell it").orElse("left to the record"),
                "the two standards are independent; where one instrument served both sides these figures "
                + "are too large", "each standard has one error at all points of a run: do not average the "
                + "uncertainties of the points"));
    }

    private static void row(Grid.Builder grid, String side, CalibrationStandard s) {
        final boolean stated = s.driftPerYear() > 0;
        grid.row(s.name(), side, NumberText.plain(s.expanded(), 4), NumberText.plain(s.k(), 3),
            stated ? NumberText.plain(s.driftPerYear(), 4) : "not stated",
            stated ? NumberText.plain(s.years(), 3) : "", stated ? NumberText.plain(s.driftLimit(), 4) : "",
            s.basis().toString());
    }

    private static String complete(List<PointUncertainty> points) {
        final Map<String, Integer> lacks = new LinkedHashMap<>();
        points.forEach(p -> p.missing().forEach(m -> lacks.merge(m, 1, Integer::sum)));
        return lacks.isEmpty() ? "" : "Not complete, so U is too small: " + lacks.entrySet().stream()
            .map(e -> e.getKey() + (points.size() == 1 ? "" : e.getValue() == points.size()
                ? " (at every point)" : " (at " + e.getValue() + " of " + points.size() + " points)"))
            .collect(Collectors.joining("; ")) + ". ";
    }

    private static Sheet points(List<PointUncertainty> points) {
        final PointUncertainty worst = points.stream()
            .max(Comparator.comparingDouble(p -> p.expanded().expanded())).orElseThrow();
        final Grid.Builder grid = Grid.of("Mean error and its uncertainty at each point, in % of span",
            "#input (%)", "direction", "#mean error", "#U (95 %)", "#k", "largest term", "#lacks", "from");
        for (PointUncertainty p : points) {
            final ExpandedUncertainty u = p.expanded();
            grid.row(List.of(NumberText.plain(p.position(), 4), p.direction().toString(),
                NumberText.signed(u.value(), NumberText.decimalsFor(u.expanded())),
                NumberText.uncertainty(u.expanded()), NumberText.fixed(u.k(), 2),
                p.budget().byShare().get(0).name(), p.missing().isEmpty() ? "nothing"
                    : Integer.toString(p.missing().size()), cells(p)), p == worst,
                "U " + Figures.full(u.expanded()));
        }
        return Sheet.saying(complete(points) + "Largest U: " + NumberText.uncertainty(worst.expanded()
                .expanded()) + " % of span at " + NumberText.plain(worst.position(), 4) + " % "
                + worst.direction() + " (95 % coverage, k = " + NumberText.fixed(worst.expanded().k(), 2)
                + "), most of it from " + worst.budget().byShare().get(0).name() + ".")
            .with(grid.build()).with(InfluenceCharts.errors(points)).with(budget(worst))
            .with(UncertaintyCharts.contributions(worst.budget()))
            .notes("How to read it", List.of("The points share the standards: their uncertainties are "
                + "correlated, so do not average them."));
    }

    private static Sheet point(PointUncertainty p) {
        return Sheet.saying(complete(List.of(p)) + NumberText.plain(p.position(), 4) + " % " + p.direction()
                + ": error " + p.expanded() + ", in % of span.")
            .with(budget(p)).with(UncertaintyCharts.contributions(p.budget()))
            .notes("From", p.cells().stream().map(CellAddress::toString).toList());
    }

    private static Grid budget(PointUncertainty p) {
        final Grid.Builder grid = Grid.of("What makes U at " + NumberText.plain(p.position(), 4) + " % "
            + p.direction(), "term", "#u (% of span)", "distribution", "#dof", "#% of variance");
        final List<BudgetLine> lines = p.budget().byShare();
        for (BudgetLine line : lines) {
            grid.row(List.of(line.name(), NumberText.uncertainty(line.u()),
                line.input().distribution().kind(), line.dof().toString(),
                NumberText.fixed(line.percentOfVariance(), 1)), line == lines.get(0),
                "u " + Figures.full(line.u()));
        }
        return grid.build();
    }

    private static String cells(PointUncertainty p) {
        return p.cells().stream().limit(3).map(CellAddress::toString).collect(Collectors.joining(", "))
            + (p.cells().size() > 3 ? " and " + (p.cells().size() - 3) + " more" : "");
    }
}
