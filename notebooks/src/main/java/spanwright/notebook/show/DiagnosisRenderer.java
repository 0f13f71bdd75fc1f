package spanwright.notebook.show;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spanwright.chart.DiagnosisCharts;
import spanwright.error.Diagnosis;
import spanwright.error.Hypothesis;
import spanwright.kernel.display.MimeBundle;
import spanwright.kernel.display.Renderer;
import spanwright.quantity.NumberText;

/** Shows what the errors of a channel speak for: the hypotheses in their order, and what would tell. */
public final class DiagnosisRenderer implements Renderer {
    private static final double WORTH_A_ROW = 0.005;
    private static final int DECIMALS = 3;

    /** For the service loader. */
    public DiagnosisRenderer() { }

    @Override
    public Optional<MimeBundle> render(Object value) {
        return value instanceof Diagnosis d ? Optional.of(sheet(d).bundle()) : Optional.empty();
    }

    private static Sheet sheet(Diagnosis d) {
        final List<Hypothesis> likely = new ArrayList<>();
        final List<Hypothesis> unlikely = new ArrayList<>();
        for (Hypothesis h : d.hypotheses()) {
            (h.weight() >= WORTH_A_ROW ? likely : unlikely).add(h);
        }
        Sheet sheet = Sheet.saying(d.channel() + ": " + d.sentence()).with(DiagnosisCharts.shapes(d))
            .with(ranked(d, likely)).notes("What would tell", checks(d, likely)).with(points(d));
        sheet = unlikely.isEmpty() ? sheet : sheet.with(new Notes("Tried, and below 0.5 %",
            unlikely.stream().map(h -> h.fault() + ": leaves "
                + NumberText.fixed(h.largestResidual(), DECIMALS) + " % of span").toList()));
        return sheet.notes("How to read it", List.of("weights are shares among the hypotheses tried, each "
            + "fitted figure paid for; they do not say that one of them is true",
            "by itself the record explains a scatter of " + NumberText.significant(d.scatter(), 2)
                + " % of span at a point", "causes of one shape cannot be told apart by the record; the "
                + "check can"));
    }

    private static Grid ranked(Diagnosis d, List<Hypothesis> likely) {
        final Grid.Builder grid = Grid.of(d.noneFits() ? "Nearest hypotheses: none fits"
            : "Hypotheses, the likeliest first", "cause", "#weight (%)", "#leaves (% of span)",
            "#takes away (%)", "#fitted figures", "evidence");
        for (Hypothesis h : likely) {
            grid.row(List.of(h.fault().toString(), NumberText.fixed(100 * h.weight(), 0),
                NumberText.fixed(h.largestResidual(), DECIMALS), NumberText.fixed(100 * h.explained(), 0),
                Integer.toString(h.parameters()), String.join("; ", h.evidence())),
                !d.noneFits() && h.equals(d.first()), "weight " + h.weight());
        }
        return grid.build();
    }

    private static List<String> checks(Diagnosis d, List<Hypothesis> likely) {
        return d.noneFits() ? List.of("look at the readings and the set-up: no known shape accounts for them")
            : likely.stream().map(h -> h.fault() + ": " + h.fault().check()).distinct().toList();
    }

    private static Grid points(Diagnosis d) {
        final Grid.Builder grid = Grid.of("Average error at each point, in % of span", "#expected output (%)",
            "#error", "#" + d.first().fault(), "#left over");
        for (int i = 0; i < d.points().size(); i++) {
            final double error = d.points().get(i).error();
            final double left = d.first().residuals().get(i);
            grid.row(List.of(NumberText.fixed(d.points().get(i).expected(), 2),
                NumberText.signed(error, DECIMALS), NumberText.signed(error - left, DECIMALS),
                NumberText.signed(left, DECIMALS)), false, "left over " + left);
        }
        return grid.build();
    }
}
