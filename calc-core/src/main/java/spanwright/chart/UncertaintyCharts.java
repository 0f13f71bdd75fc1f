package spanwright.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import spanwright.quantity.NumberText;
import spanwright.uncertainty.Budget;
import spanwright.uncertainty.BudgetLine;

/** Pictures of an uncertainty budget. */
public final class UncertaintyCharts {
    private static final int SHOWN = 10;

    private UncertaintyCharts() { }

    /** Contributions to the combined standard uncertainty, largest first, with their shares of variance. */
    public static Picture contributions(Budget budget) {
        Objects.requireNonNull(budget, "budget");
        final List<BudgetLine> lines = budget.byShare();
        final List<BarPlot.Bar> bars = new ArrayList<>();
        for (BudgetLine line : lines.subList(0, Math.min(SHOWN, lines.size()))) {
            bars.add(new BarPlot.Bar(line.name(), 0, Math.abs(line.contribution()),
                NumberText.plain(line.percentOfVariance(), 2) + " % of variance", Ink.BLUE));
        }
        final String unit = budget.unit().isEmpty() ? "" : " (" + budget.unit() + ")";
        final BudgetLine first = lines.get(0);
        final String rest = lines.size() > SHOWN ? "; " + (lines.size() - SHOWN)
            + " smaller ones are not drawn" : "";
        return Picture.of(
            budget.measurand() + ": " + first.name() + " makes "
                + NumberText.plain(first.percentOfVariance(), 2) + " % of the variance; combined u is "
                + NumberText.uncertainty(budget.u()) + (budget.unit().isEmpty() ? "" : " " + budget.unit())
                + rest + ".",
            "Standard uncertainty contributed by each input, largest first.",
            new BarPlot("contribution, sensitivity times standard uncertainty" + unit, bars));
    }
}
