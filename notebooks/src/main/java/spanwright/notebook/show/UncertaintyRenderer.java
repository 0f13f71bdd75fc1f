package spanwright.notebook.show;

import java.util.List;
import java.util.Optional;
import spanwright.chart.UncertaintyCharts;
import spanwright.kernel.display.MimeBundle;
import spanwright.kernel.display.Renderer;
import spanwright.quantity.NumberText;
import spanwright.uncertainty.Budget;
import spanwright.uncertainty.BudgetLine;
import spanwright.uncertainty.ExpandedUncertainty;

/** Shows uncertainty budgets: one line an input, largest share first. */
public final class UncertaintyRenderer implements Renderer {
    private static final double COVERAGE = 0.95;

    /** For the service loader. */
    public UncertaintyRenderer() { }

    @Override
    public Optional<MimeBundle> render(Object value) {
        return value instanceof Budget budget ? Optional.of(sheet(budget).bundle()) : Optional.empty();
    }

    static Sheet sheet(Budget budget) {
        final ExpandedUncertainty expanded = budget.expanded(COVERAGE);
        final String unit = budget.unit().isEmpty() ? "" : " " + budget.unit();
        final Grid.Builder grid = Grid.of("Uncertainty budget", "input", "#value", "#u", "distribution",
            "#dof", "#sensitivity", "#contribution" + (unit.isEmpty() ? "" : " (" + budget.unit() + ")"),
            "#% of variance", "correlated with");
        boolean first = true;
        for (BudgetLine line : budget.byShare()) {
            grid.row(List.of(line.name(), NumberText.plain(line.value(), 7), NumberText.uncertainty(line.u()),
                line.input().distribution().kind(), line.dof().toString(),
                NumberText.plain(line.sensitivity().value(), 4),
                NumberText.significant(Math.abs(line.contribution()), 2),
                NumberText.fixed(line.percentOfVariance(), 1), line.correlationGroup().orElse("")), first,
                "contribution " + line.contribution());
            first = false;
        }
        return Sheet.saying(budget.measurand() + " = "
                + NumberText.fixed(budget.value(), NumberText.decimalsFor(expanded.expanded())) + " \u00b1 "
                + NumberText.uncertainty(expanded.expanded()) + unit + " at 95 % coverage, k = "
                + NumberText.plain(expanded.k(), 3) + " (" + expanded.basis() + ").")
            .with(grid.build()).with(UncertaintyCharts.contributions(budget)).notes("Warnings",
                budget.warnings());
    }
}
