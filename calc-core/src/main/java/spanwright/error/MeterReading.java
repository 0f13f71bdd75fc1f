package spanwright.error;

import java.util.Objects;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;
import spanwright.quantity.PercentOfSpan;
import spanwright.quantity.Span;
import spanwright.uncertainty.Budget;
import spanwright.uncertainty.BudgetLine;
import spanwright.uncertainty.ExpandedUncertainty;
import spanwright.uncertainty.Rectangular;

/**
 * How well a set-up reads one current.
 *
 * @param name        the set-up
 * @param milliamps   the current
 * @param output      range whose span the percentages refer to, in mA
 * @param budget      uncertainty budget of the reading, mA
 * @param burdenVolts voltage the set-up takes from the loop
 */
public record MeterReading(String name, double milliamps, Span output, Budget budget, double burdenVolts) {
    /** Checks the components. */
    public MeterReading {
        Checks.notBlank("name", name);
        Checks.finite("current in mA", milliamps);
        Objects.requireNonNull(output, "output");
        Objects.requireNonNull(budget, "budget");
        if (!output.symbol().equals("mA")) {
            throw new IllegalArgumentException("the range must be in mA, not in " + output.symbol());
        }
    }

    /** Expanded uncertainty at 95 %, in mA; k as the shape of the terms asks. */
    public ExpandedUncertainty expanded() {
        return budget.expanded(0.95);
    }

    /** Expanded uncertainty at 95 %. */
    public PercentOfSpan expandedOfSpan() {
        return output.ofSpan(expanded().expanded());
    }

    /** Standard uncertainty. */
    public PercentOfSpan standardOfSpan() {
        return output.ofSpan(budget.u());
    }

    /**
     * Limit of one term: half width of its rectangle, twice the standard uncertainty where it is normal.
     *
     * @param term name of the term, such as "meter accuracy"
     * @throws IllegalArgumentException if there is no such term
     */
    public PercentOfSpan limitOf(String term) {
        return output.ofSpan(limit(budget.line(term)));
    }

    /** All limits added: no reading is farther off while each limit holds. */
    public PercentOfSpan worstCase() {
        return output.ofSpan(budget.lines().stream().mapToDouble(MeterReading::limit).sum());
    }

    private static double limit(BudgetLine line) {
        final var d = line.input().distribution();
        return d instanceof Rectangular r ? (r.upper() - r.lower()) / 2
            : 2 * d.standardUncertainty();
    }

    /**
     * Tolerance by expanded uncertainty: the test uncertainty ratio as far as the meter goes. The device's
     * own resolution and repeatability lower it further.
     */
    public double ratioTo(PercentOfSpan tolerance) {
        return Checks.positive("tolerance in percent of span", tolerance.value()) / expandedOfSpan().value();
    }

    @Override
    public String toString() {
        return name + " at " + NumberText.plain(milliamps, 4) + " mA: U "
            + NumberText.uncertainty(expanded().expanded())
            + " mA = " + NumberText.uncertainty(expandedOfSpan().value()) + " % of span (95 %), at worst "
            + NumberText.uncertainty(worstCase().value()) + " % of span";
    }
}
