package spanwright.fit;

/**
 * Sums in two passes: first the mean, then everything about it. So readings of 10 000 000.1 and 10 000 000.3
 * keep their scatter (NIST StRD NumAcc4), which a single pass over x and x squared loses.
 */
final class Sums {
    private Sums() { }

    /** Compensated sum (Neumaier 1974). */
    static double of(double[] values) {
        double sum = 0;
        double lost = 0;
        for (double v : values) {
            final double next = sum + v;
            lost += Math.abs(sum) >= Math.abs(v) ? (sum - next) + v : (v - next) + sum;
            sum = next;
        }
        return sum + lost;
    }

    static double mean(double[] values) {
        final double first = of(values) / values.length;
        double rest = 0;
        for (double v : values) {
            rest += v - first;
        }
        return first + rest / values.length;
    }

    /** Mean with weights, in two passes. */
    static double mean(double[] values, double[] weights) {
        final double total = of(weights);
        double first = 0;
        for (int i = 0; i < values.length; i++) {
            first += weights[i] * values[i];
        }
        first /= total;
        double rest = 0;
        for (int i = 0; i < values.length; i++) {
            rest += weights[i] * (values[i] - first);
        }
        return first + rest / total;
    }

    /** Sum of (a - centreA)(b - centreB). */
    static double ofProducts(double[] a, double centreA, double[] b, double centreB) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += (a[i] - centreA) * (b[i] - centreB);
        }
        return sum;
    }

    /** Sum of w (a - centreA)(b - centreB). */
    static double ofProducts(double[] w, double[] a, double centreA, double[] b, double centreB) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += w[i] * (a[i] - centreA) * (b[i] - centreB);
        }
        return sum;
    }

    /** Largest minus smallest value. */
    static double range(double[] values) {
        double least = values[0];
        double most = values[0];
        for (double v : values) {
            least = Math.min(least, v);
            most = Math.max(most, v);
        }
        return most - least;
    }
}
