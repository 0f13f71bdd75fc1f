package spanwright.chain;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.ToDoubleFunction;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;
import spanwright.quantity.PercentOfSpan;

/**
 * What changing one cause would gain. The measure is the GUM figure, known error plus expanded uncertainty,
 * the largest over inputs and temperatures; the known errors stay as they are. Percent of span.
 *
 * @param label cause
 * @param now   figure of the chain as it stands
 * @param then  figure with the cause changed
 */
public record MarginGain(String label, double now, double then) {
    /** Checks the components. */
    public MarginGain {
        Checks.notBlank("label", label);
        Checks.notNegative("figure now", now);
        Checks.notNegative("figure then", then);
    }

    /** By how much the margin grows. */
    public double gain() {
        return now - then;
    }

    static List<MarginGain> ofDropping(ChainError error) {
        return of(error, c -> 0);
    }

    static List<MarginGain> ofMeasuring(ChainError error, PercentOfSpan expanded) {
        final double u = Checks.notNegative("expanded uncertainty", expanded.value()) / 2;
        return of(error, c -> c.u() <= u ? 1 : u / c.u());
    }

    private static List<MarginGain> of(ChainError error, ToDoubleFunction<Contribution> factor) {
        final double now = new Evaluation(error.chain(), error.coverage()).largestGum();
        final List<MarginGain> gains = new ArrayList<>();
        for (Contribution c : error.contributions()) {
            final MeasuringChain changed = error.chain().withSpread(c, factor.applyAsDouble(c));
            gains.add(new MarginGain(c.label(), now, new Evaluation(changed, error.coverage()).largestGum()));
        }
        gains.sort(Comparator.comparingDouble((MarginGain g) -> -g.gain()).thenComparing(MarginGain::label));
        return List.copyOf(gains);
    }

    @Override
    public String toString() {
        return label + ": \u00b1" + NumberText.fixed(now, 3) + " becomes \u00b1" + NumberText.fixed(then, 3)
            + " % of span, gains " + NumberText.fixed(gain(), 3) + " % of span";
    }
}
