package spanwright.chain;

import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import spanwright.quantity.Checks;

/**
 * The same chain at the same input and temperatures, added in four ways. A known error is in each of them
 * with its sign, outside the root.
 *
 * @param knownError        sum of the known errors, percent of span, signed
 * @param worstCase         all limits against the claim
 * @param rootSumOfSquares  limits as if independent: covers neither the worst case nor a stated share
 * @param gum               known error plus expanded uncertainty
 * @param monteCarlo        share of the trials given by the coverage stays within it
 */
public record FourMethods(double knownError, MethodFigure worstCase, MethodFigure rootSumOfSquares,
                          MethodFigure gum, MethodFigure monteCarlo) {
    /** Checks the components. */
    public FourMethods {
        Checks.finite("known error", knownError);
        Objects.requireNonNull(worstCase, "worstCase");
        Objects.requireNonNull(rootSumOfSquares, "rootSumOfSquares");
        Objects.requireNonNull(gum, "gum");
        Objects.requireNonNull(monteCarlo, "monteCarlo");
    }

    /** The four figures in order. */
    public List<MethodFigure> figures() {
        return List.of(worstCase, rootSumOfSquares, gum, monteCarlo);
    }

    @Override
    public String toString() {
        return figures().stream().map(MethodFigure::toString).collect(Collectors.joining("\n"));
    }
}
