package spanwright.verdict;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;
import spanwright.quantity.PercentOfReading;
import spanwright.quantity.PercentOfSpan;
import spanwright.quantity.PercentOfUpperRangeValue;
import spanwright.quantity.Span;
import spanwright.quantity.Tolerance;

/**
 * The permissible error over the range: one, or several that meet at breakpoints. On a breakpoint the tighter
 * of its two neighbours holds. The first and the last reach beyond the ends of the range.
 *
 * @param pieces      the permissible errors from the lower end of the range upwards, at least one
 * @param breakpoints where a piece hands over to the next, in percent of the output range, rising; one fewer
 *                    than pieces
 */
public record Limit(List<PermissibleError> pieces, List<Double> breakpoints) {
    /** Checks the components and copies the lists. */
    public Limit {
        pieces = List.copyOf(pieces);
        breakpoints = List.copyOf(breakpoints);
        Checks.atLeast("number of permissible errors", pieces.size(), 1);
        if (breakpoints.size() != pieces.size() - 1) {
            throw new IllegalArgumentException(pieces.size() + " permissible errors need "
                + (pieces.size() - 1)
                + " breakpoints, not " + breakpoints.size());
        }
        for (int i = 0; i < breakpoints.size(); i++) {
            Checks.finite("breakpoint", breakpoints.get(i));
            if (i > 0 && !(breakpoints.get(i) > breakpoints.get(i - 1))) {
                throw new IllegalArgumentException("breakpoint " + breakpoints.get(i)
                    + " % does not lie above the one before, " + breakpoints.get(i - 1) + " %");
            }
        }
    }

    /** One permissible error over the whole range. */
    public static Limit of(PermissibleError permissible) {
        return new Limit(List.of(permissible), List.of());
    }

    /**
     * The tolerance of a record, over the whole range.
     *
     * @throws IllegalArgumentException if the tolerance has no width
     */
    public static Limit of(Tolerance tolerance) {
        return of(PermissibleError.of(tolerance));
    }

    /** Plus and minus so many percent of span; above 0. */
    public static Limit plusMinus(PercentOfSpan percent) {
        return of(PermissibleError.plusMinus(percent.value(), Tolerance.Basis.PERCENT_OF_SPAN));
    }

    /** Plus and minus so many percent of the expected reading; above 0. */
    public static Limit plusMinus(PercentOfReading percent) {
        return of(PermissibleError.plusMinus(percent.value(), Tolerance.Basis.PERCENT_OF_READING));
    }

    /** Plus and minus so many percent of the upper range value; above 0. */
    public static Limit plusMinus(PercentOfUpperRangeValue percent) {
        return of(PermissibleError.plusMinus(percent.value(), Tolerance.Basis.PERCENT_OF_UPPER_RANGE_VALUE));
    }

    /** This limit up to a breakpoint and another permissible error from there on. */
    public Limit above(double breakpointPercent, PermissibleError permissible) {
        final List<PermissibleError> more = new ArrayList<>(pieces);
        more.add(permissible);
        final List<Double> at = new ArrayList<>(breakpoints);
        at.add(breakpointPercent);
        return new Limit(more, at);
    }

    /**
     * The permissible error in percent of span at a point of the range, where no slope is needed.
     *
     * @throws IllegalArgumentException as in {@link #at(Span, double, OptionalDouble)}
     */
    public ToleranceInterval at(Span output, double percent) {
        return at(output, percent, OptionalDouble.empty());
    }

    /**
     * The permissible error in percent of span at a point of the range.
     *
     * @param output         range of the output
     * @param percent        where the point lies in the output range, in percent
     * @param outputPerInput slope of the specified characteristic, needed for the basis INPUT_UNIT alone
     * @throws IllegalArgumentException if the basis needs a slope that is absent, allows no error at all at
     *                                  this point, or two pieces contradict each other on a breakpoint
     */
    public ToleranceInterval at(Span output, double percent, OptionalDouble outputPerInput) {
        final List<PermissibleError> here = piecesAt(percent);
        final ToleranceInterval first = here.get(0).at(output, percent, outputPerInput);
        if (here.size() == 1) {
            return first;
        }
        return first.and(here.get(1).at(output, percent, outputPerInput)).orElseThrow(
            () -> new IllegalArgumentException(here.get(0) + " and " + here.get(1)
                + " contradict each other at the breakpoint " + percent + " %"));
    }

    /** Why there is no limit at a point, in the words of something missing; absent if there is one. */
    Optional<String> obstacle(Span output, double percent, OptionalDouble outputPerInput) {
        return piecesAt(percent).stream().map(p -> p.obstacle(output, percent, outputPerInput))
            .flatMap(Optional::stream).findFirst();
    }

    private List<PermissibleError> piecesAt(double percent) {
        Checks.finite("percent of the range", percent);
        int i = 0;
        while (i < breakpoints.size() && percent > breakpoints.get(i)) {
            i++;
        }
        final boolean onBreakpoint = i < breakpoints.size() && percent == breakpoints.get(i);
        return pieces.subList(i, onBreakpoint ? i + 2 : i + 1);
    }

    @Override
    public String toString() {
        final StringBuilder text = new StringBuilder(pieces.get(0).toString());
        for (int i = 0; i < breakpoints.size(); i++) {
            text.append(i == 0 ? " up to " : ", up to ").append(NumberText.plain(breakpoints.get(i), 6))
                .append(" % of the range, then ").append(pieces.get(i + 1));
        }
        return text.toString();
    }
}
