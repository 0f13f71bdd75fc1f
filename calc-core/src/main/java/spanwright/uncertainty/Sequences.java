package spanwright.uncertainty;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** What each sequence of an adaptive run found, and whether they agree (JCGM 101:2008, 7.9.4). */
final class Sequences {
    private final Stability stability;
    private final List<double[]> summaries = new ArrayList<>();

    Sequences(Stability stability) {
        this.stability = stability;
    }

    /** Mean, standard deviation and ends of the symmetric interval of one sequence; sorts it. */
    static double[] summary(double[] outcomes, double probability) {
        Arrays.sort(outcomes);
        final int n = outcomes.length;
        final double reference = outcomes[n / 2];
        double sum = 0;
        double squares = 0;
        for (final double y : outcomes) {
            sum += y - reference;
            squares += (y - reference) * (y - reference);
        }
        final double shift = sum / n;
        final double variance = Math.max(0, squares - sum * shift) / (n - 1);
        final int covered = (int) Math.floor(probability * n + 0.5);
        final int below = (n - covered + 1) / 2;
        return new double[] {reference + shift, Math.sqrt(variance), outcomes[Math.max(0, below - 1)],
            outcomes[Math.min(n - 1, below + covered - 1)]};
    }

    void add(double[] summary) {
        summaries.add(summary);
    }

    /**
     * Whether all four figures are known within the tolerance.
     *
     * @param u standard uncertainty from all sequences, from which the tolerance follows
     */
    boolean areStable(double u) {
        if (u == 0) {
            return true;
        }
        final double tolerance = NumericalTolerance.of(u, stability.digits());
        for (int figure = 0; figure < 4; figure++) {
            if (2 * standardError(figure) > tolerance) {
                return false;
            }
        }
        return true;
    }

    private double standardError(int figure) {
        final int h = summaries.size();
        final double reference = summaries.get(0)[figure];
        double sum = 0;
        double squares = 0;
        for (final double[] summary : summaries) {
            sum += summary[figure] - reference;
            squares += (summary[figure] - reference) * (summary[figure] - reference);
        }
        return Math.sqrt(Math.max(0, squares - sum * sum / h) / (h - 1) / h);
    }
}
