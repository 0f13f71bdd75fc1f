package spanwright.verdict;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * True errors as the plant's own history shows them, smoothed: one small normal bell about each recorded
 * error, drawn in towards the mean so that the variance stays that of the history (smoothed bootstrap with
 * variance correction; B. W. Silverman, 1986, from memory). Unsmoothed, a history without an error beyond the
 * limit would claim that there is no risk at all.
 *
 * @param centres   centres of the bells, at least 10
 * @param bandwidth standard deviation of each bell, above 0
 * @param kind      whether the recorded errors were taken as true or as observed
 * @param basis     what the figures rest on, in words
 */
public record EmpiricalPrior(List<Double> centres, double bandwidth, Reliability kind, String basis)
    implements Prior {
    /** Fewest errors a history must have. */
    public static final int FEWEST = 10;

    /** Checks the components and copies the list. */
    public EmpiricalPrior {
        centres = List.copyOf(centres);
        Checks.atLeast("number of recorded errors", centres.size(), FEWEST);
        centres.forEach(c -> Checks.finite("centre", c));
        Checks.positive("bandwidth", bandwidth);
        Objects.requireNonNull(kind, "kind");
        Checks.notBlank("basis of the population", basis);
    }

    /**
     * A history of errors that may be taken as true, the measurement's own scatter being negligible.
     *
     * @param errors at least 10, not all equal; not modified
     */
    public static EmpiricalPrior ofTrue(double[] errors) {
        return of(errors, 0, Reliability.TRUE, "taken as true");
    }

    /**
     * A history of observed errors, whose variance is reduced by that of the measurement.
     *
     * @param errors at least 10, not all equal; not modified
     * @param u      standard uncertainty of each, above 0
     * @throws IllegalArgumentException if the measurement alone explains their spread
     */
    public static EmpiricalPrior ofObserved(double[] errors, double u) {
        Checks.positive("standard uncertainty of the observations", u);
        return of(errors, u, Reliability.OBSERVED, "less the measurement's u = " + NumberText.uncertainty(u));
    }

    static EmpiricalPrior of(double[] errors, double u) {
        return u == 0 ? ofTrue(errors) : ofObserved(errors, u);
    }

    private static EmpiricalPrior of(double[] errors, double u, Reliability kind, String how) {
        final double[] x = Checks.finiteAll("recorded errors", errors, FEWEST);
        final double mean = Moments.mean(x);
        final double observed = Math.sqrt(Moments.variance(x));
        final double sd = NormalPrior.withoutMeasurement(observed, u);
        // Silverman's rule of thumb; 0.9 n^-0.2 is below 0.57 for 10 errors and more, so the root is real.
        final double share = 0.9 * Math.pow(x.length, -0.2);
        final double draw = sd / observed * Math.sqrt((1 - share) * (1 + share));
        final List<Double> centres = new ArrayList<>(x.length);
        for (double v : x) {
            centres.add(mean + draw * (v - mean));
        }
        return new EmpiricalPrior(centres, share * sd, kind, x.length + " recorded errors, " + how);
    }

    @Override
    public double probabilityWithin(ToleranceInterval interval) {
        return centres.stream().mapToDouble(c -> NormalPrior.of(c, bandwidth, basis)
            .probabilityWithin(interval) / centres.size()).sum();
    }

    @Override
    public String sentence() {
        return "Population from " + basis + " (" + kind + "), smoothed with a bandwidth of "
            + NumberText.plain(bandwidth, 3) + " in the unit of the limit.";
    }

    @Override
    public String toString() {
        return sentence();
    }
}
