package spanwright.error;

import java.util.List;
import java.util.Objects;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * A fault and how well it accounts for the errors.
 *
 * @param fault           the fault
 * @param weight          share of the likelihood among the hypotheses tried, 0 to 1, each parameter paid for
 * @param parameters      how many figures were fitted
 * @param largestResidual largest error that it leaves, percent of span
 * @param explained       share of the largest error that it takes away, 0 to 1
 * @param shape           its errors, fitted, as a line in pieces over the expected output
 * @param residuals       the error it leaves at each point of the diagnosis, percent of span
 * @param evidence        what speaks for it, in words
 */
public record Hypothesis(ErrorPattern fault, double weight, int parameters, double largestResidual,
                         double explained, List<Diagnosis.ShapePoint> shape, List<Double> residuals,
                         List<String> evidence) {
    /** Checks the components and copies the list. */
    public Hypothesis {
        Objects.requireNonNull(fault, "fault");
        Checks.within("weight", weight, 0, 1);
        Checks.atLeast("number of parameters", parameters, 0);
        Checks.notNegative("largest residual", largestResidual);
        Checks.within("share explained", explained, 0, 1);
        shape = List.copyOf(shape);
        residuals = List.copyOf(residuals);
        evidence = List.copyOf(evidence);
    }

    @Override
    public String toString() {
        return fault + " (" + NumberText.fixed(100 * weight, 0) + " %): leaves "
            + NumberText.fixed(largestResidual, 3) + " % of span; " + String.join("; ", evidence);
    }
}
