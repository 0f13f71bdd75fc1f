package spanwright.verdict;

/** Mean and variance of a history, in two passes so that a large common offset costs no digits. */
final class Moments {
    private Moments() { }

    static double mean(double[] x) {
        double sum = 0;
        for (double v : x) {
            sum += v / x.length;
        }
        return sum;
    }

    static double variance(double[] x) {
        final double mean = mean(x);
        double sum = 0;
        for (double v : x) {
            sum += (v - mean) * (v - mean);
        }
        return sum / (x.length - 1);
    }
}
