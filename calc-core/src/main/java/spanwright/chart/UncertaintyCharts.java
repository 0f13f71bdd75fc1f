package spanwright.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;
import spanwright.uncertainty.Budget;
import spanwright.uncertainty.BudgetLine;
import spanwright.uncertainty.MonteCarloResult;

/** Pictures of an uncertainty budget and of a simulated distribution. */
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
        return Picture.of(budget.measurand() + ": " + first.name() + " makes "
                + NumberText.plain(first.percentOfVariance(), 2) + " % of the variance; combined u is "
                + NumberText.uncertainty(budget.u()) + (budget.unit().isEmpty() ? "" : " " + budget.unit())
                    + rest
                + ".",
            "Standard uncertainty contributed by each input, largest first.",
            new BarPlot("contribution, sensitivity times standard uncertainty" + unit, bars));
    }

    /** The density of a simulated distribution, in so many bins between its 0.01 % and 99.99 % quantiles. */
    static double[][] density(MonteCarloResult result, int bins) {
        Checks.atLeast("bins", bins, 10);
        final double low = result.quantile(0.0001);
        final double high = result.quantile(0.9999);
        final double width = (high - low) / bins;
        final double[] x = new double[bins];
        final double[] y = new double[bins];
        double below = low;
        int i = 0;
        // The quantile function is inverted by bisection: no need to hold the trials.
        double pBelow = 0.0001;
        for (; i < bins; i++) {
            final double above = low + (i + 1) * width;
            final double pAbove = i == bins - 1 ? 0.9999 : probabilityBelow(result, above);
            x[i] = (below + above) / 2;
            y[i] = (pAbove - pBelow) / width;
            below = above;
            pBelow = pAbove;
        }
        return new double[][] {x, y};
    }

    private static double probabilityBelow(MonteCarloResult result, double value) {
        double low = 0.0001;
        double high = 0.9999;
        for (int k = 0; k < 24; k++) {
            final double middle = (low + high) / 2;
            if (result.quantile(middle) < value) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return (low + high) / 2;
    }
}
