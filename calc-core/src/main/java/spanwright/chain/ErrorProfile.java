package spanwright.chain;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import spanwright.quantity.Checks;
import spanwright.quantity.Span;

/**
 * How an error term changes over the range of an element: factors at input fractions, joined by straight
 * lines. A constant term has the factor 1 everywhere; a span term grows from 0 to 1; a term of reading
 * follows the output.
 *
 * @param points knots in rising order, at least one; beyond the first and last the factor stays
 */
public record ErrorProfile(List<Knot> points) {
    /** The same at every input. */
    public static final ErrorProfile CONSTANT = new ErrorProfile(List.of(new Knot(0, 1)));
    /** Nothing at the lower range value, all at the upper. */
    public static final ErrorProfile GROWING = new ErrorProfile(List.of(new Knot(0, 0), new Knot(1, 1)));

    /**
     * One point of a profile.
     *
     * @param inputFraction position in the range, 0 to 1
     * @param factor        what the term is multiplied by there
     */
    public record Knot(double inputFraction, double factor) {
        /** Checks the components. */
        public Knot {
            Checks.finite("input fraction", inputFraction);
            Checks.finite("factor", factor);
        }
    }

    /** Checks the components, sorts and copies the list. */
    public ErrorProfile {
        final List<Knot> sorted = new ArrayList<>(points);
        Checks.atLeast("number of profile points", sorted.size(), 1);
        sorted.sort(Comparator.comparingDouble(Knot::inputFraction));
        for (int i = 1; i < sorted.size(); i++) {
            if (sorted.get(i).inputFraction() == sorted.get(i - 1).inputFraction()) {
                throw new IllegalArgumentException("two profile points at input fraction "
                    + sorted.get(i).inputFraction());
            }
        }
        points = List.copyOf(sorted);
    }

    /**
     * A term of reading: output over span. For 4-20 mA the factor is 0.25 at 4 mA and 1.25 at 20 mA.
     */
    public static ErrorProfile ofReading(Span output) {
        return new ErrorProfile(List.of(new Knot(0, output.lower() / output.width()),
            new Knot(1, output.upper() / output.width())));
    }

    /** The factor at a position of the output, as a fraction of the range. */
    public double at(double fraction) {
        final Knot first = points.get(0);
        if (fraction <= first.inputFraction()) {
            return first.factor();
        }
        Knot before = first;
        for (Knot knot : points) {
            if (fraction <= knot.inputFraction()) {
                final double share = (fraction - before.inputFraction())
                    / (knot.inputFraction() - before.inputFraction());
                return before.factor() * (1 - share) + knot.factor() * share;
            }
            before = knot;
        }
        return before.factor();
    }
}
