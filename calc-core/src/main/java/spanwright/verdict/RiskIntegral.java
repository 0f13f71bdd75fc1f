package spanwright.verdict;

import java.util.Arrays;
import java.util.stream.DoubleStream;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.hipparchus.analysis.integration.gauss.GaussIntegrator;
import org.hipparchus.analysis.integration.gauss.GaussIntegratorFactory;

/**
 * The joint distribution of true error and result, integrated over the true error: outside the limit what is
 * accepted, inside what is rejected. Both integrands are positive and each probability is taken from the tail
 * that is small, so nothing cancels and a tiny risk keeps its digits.
 *
 * <p>The integrand changes on the scale of the population's spread about its mean and on that of u about the
 * acceptance limits, and nowhere else; panels of one such step, cut at the limits, are smooth to a 16-point
 * Gauss rule whatever the ratio of the two scales.
 */
final class RiskIntegral {
    private static final NormalDistribution STANDARD = NormalDistribution.of(0, 1);
    private static final int POINTS = 16;
    /** Beyond this many standard deviations the density is below the smallest double. */
    private static final int FARTHEST = 38;
    private static final double ROOT_TWO_PI = Math.sqrt(2 * Math.PI);
    private static final double[] NODES = new double[POINTS];
    private static final double[] WEIGHTS = new double[POINTS];

    static {
        final GaussIntegrator rule = new GaussIntegratorFactory().legendre(POINTS);
        for (int i = 0; i < POINTS; i++) {
            NODES[i] = rule.getPoint(i);
            WEIGHTS[i] = rule.getWeight(i);
        }
    }

    private final double limitLower;
    private final double limitUpper;
    private final double acceptLower;
    private final double acceptUpper;
    private final boolean acceptsNothing;
    private final double u;

    /** Sides that are absent become bounds that no true error reaches. */
    RiskIntegral(ToleranceInterval limit, Acceptance acceptance, double u) {
        limitLower = limit.lower().orElse(-Double.MAX_VALUE);
        limitUpper = limit.upper().orElse(Double.MAX_VALUE);
        acceptLower = acceptance.lower().orElse(-Double.MAX_VALUE);
        acceptUpper = acceptance.upper().orElse(Double.MAX_VALUE);
        acceptsNothing = acceptance.zone().isEmpty();
        this.u = u;
    }

    /**
     * The four probabilities of one true error and its result.
     *
     * @param falseAccept outside the limit and accepted
     * @param falseReject inside the limit and rejected
     * @param within      inside the limit
     * @param accepted    accepted
     */
    record Parts(double falseAccept, double falseReject, double within, double accepted) {
        Parts plus(Parts other, double weight) {
            return new Parts(falseAccept + weight * other.falseAccept, falseReject
                + weight * other.falseReject,
                within + weight * other.within, accepted + weight * other.accepted);
        }
    }

    Parts of(Prior prior) {
        if (prior instanceof NormalPrior normal) {
            return ofNormal(normal);
        }
        final EmpiricalPrior empirical = (EmpiricalPrior) prior;
        Parts sum = new Parts(0, 0, 0, 0);
        for (double centre : empirical.centres()) {
            sum = sum.plus(ofNormal(NormalPrior.of(centre, empirical.bandwidth(), empirical.basis())),
                1.0 / empirical.centres().size());
        }
        return sum;
    }

    Parts ofNormal(NormalPrior prior) {
        final double[] cuts = cuts(prior);
        double falseAccept = 0;
        double falseReject = 0;
        double within = 0;
        double outside = 0;
        for (int i = 1; i < cuts.length; i++) {
            final double middle = (cuts[i - 1] + cuts[i]) / 2;
            final double half = (cuts[i] - cuts[i - 1]) / 2;
            final boolean inside = middle >= limitLower && middle <= limitUpper;
            double wrong = 0;
            double all = 0;
            for (int j = 0; j < POINTS; j++) {
                final double t = middle + half * NODES[j];
                final double z = (t - prior.mean()) / prior.sd();
                final double density = WEIGHTS[j] * half * Math.exp(-z * z / 2) / (ROOT_TWO_PI * prior.sd());
                all += density;
                wrong += density * (inside ? rejection(t) : acceptance(t));
            }
            if (inside) {
                within += all;
                falseReject += wrong;
            } else {
                outside += all;
                falseAccept += wrong;
            }
        }
        final double mass = within + outside;
        return new Parts(falseAccept / mass, falseReject / mass, within / mass,
            (within - falseReject + falseAccept) / mass);
    }

    double acceptance(double t) {
        if (acceptsNothing) {
            return 0;
        }
        final double from = (acceptLower - t) / u;
        final double to = (acceptUpper - t) / u;
        // By symmetry the interval is moved to the side where both tails are small.
        return from > 0 ? STANDARD.survivalProbability(from) - STANDARD.survivalProbability(to)
            : STANDARD.probability(from, to);
    }

    double rejection(double t) {
        return acceptsNothing ? 1 : STANDARD.cumulativeProbability((acceptLower - t) / u)
            + STANDARD.survivalProbability((acceptUpper - t) / u);
    }

    private double[] cuts(NormalPrior prior) {
        final double from = Math.max(prior.mean() - FARTHEST * prior.sd(),
            prior.truncation().map(t -> t.lower().orElse(-Double.MAX_VALUE)).orElse(-Double.MAX_VALUE));
        final double to = Math.min(prior.mean() + FARTHEST * prior.sd(),
            prior.truncation().map(t -> t.upper().orElse(Double.MAX_VALUE)).orElse(Double.MAX_VALUE));
        final DoubleStream.Builder cuts = DoubleStream.builder();
        cuts.add(from).add(to).add(limitLower).add(limitUpper);
        for (int k = -FARTHEST; k <= FARTHEST; k++) {
            cuts.add(prior.mean() + k * prior.sd());
            cuts.add(acceptLower + k * u);
            cuts.add(acceptUpper + k * u);
        }
        return Arrays.stream(cuts.build().toArray()).filter(c -> c >= from && c <= to).sorted().distinct()
            .toArray();
    }
}
