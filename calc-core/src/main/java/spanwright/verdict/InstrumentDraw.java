package spanwright.verdict;

import java.util.Arrays;
import java.util.List;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.sampling.distribution.ZigguratSampler;

/** Draws instruments from a population; one generator, not for use by several threads. */
abstract class InstrumentDraw {
    /** A population that its own truncation almost empties is a mistake, not a long wait. */
    private static final int MOST_REDRAWS = 100_000;

    private final ZigguratSampler.NormalizedGaussian gauss;

    InstrumentDraw(UniformRandomProvider rng) {
        this.gauss = ZigguratSampler.NormalizedGaussian.of(rng);
    }

    /** Writes the true errors of one instrument. */
    abstract void next(double[] errors);

    static InstrumentDraw from(InstrumentPopulation population, UniformRandomProvider rng) {
        return population instanceof NormalInstruments normal ? new Normal(normal, rng)
            : new Recorded((RecordedInstruments) population, rng);
    }

    /** Correlated standard normals; a column of zeros costs no draw. */
    final void correlated(double[][] factor, double[] into) {
        Arrays.fill(into, 0);
        for (int j = 0; j < into.length; j++) {
            if (isZeroColumn(factor, j)) {
                continue;
            }
            final double z = gauss.sample();
            for (int i = 0; i < into.length; i++) {
                into[i] += factor[i][j] * z;
            }
        }
    }

    private static boolean isZeroColumn(double[][] factor, int column) {
        for (double[] row : factor) {
            if (row[column] != 0) {
                return false;
            }
        }
        return true;
    }

    private static final class Normal extends InstrumentDraw {
        private final List<NormalPrior> priors;
        private final double[][] factor;

        Normal(NormalInstruments population, UniformRandomProvider rng) {
            super(rng);
            priors = population.priors();
            factor = population.correlation().factor();
        }

        @Override
        void next(double[] errors) {
            for (int tries = 0; tries < MOST_REDRAWS; tries++) {
                correlated(factor, errors);
                boolean occurs = true;
                for (int i = 0; i < errors.length; i++) {
                    final NormalPrior prior = priors.get(i);
                    errors[i] = prior.mean() + prior.sd() * errors[i];
                    occurs &= prior.truncation().isEmpty() || prior.truncation().get().contains(errors[i]);
                }
                if (occurs) {
                    return;
                }
            }
            throw new IllegalArgumentException("the truncation sorts out more than " + MOST_REDRAWS
                + " instruments in a row");
        }
    }

    private static final class Recorded extends InstrumentDraw {
        private final double[][] centres;
        private final double[] bandwidths;
        private final double[][] factor;
        private final double[] bells;
        private final UniformRandomProvider rng;

        Recorded(RecordedInstruments population, UniformRandomProvider rng) {
            super(rng);
            this.rng = rng;
            final int points = population.points();
            centres = new double[points][];
            bandwidths = new double[points];
            for (int j = 0; j < points; j++) {
                final EmpiricalPrior prior = EmpiricalPrior.of(
                    PointCorrelation.column(population.errors(), j), population.u());
                centres[j] = prior.centres().stream().mapToDouble(Double::doubleValue).toArray();
                bandwidths[j] = prior.bandwidth();
            }
            factor = PointCorrelation.ofHistory(population.errors()).factor();
            bells = new double[points];
        }

        @Override
        void next(double[] errors) {
            final int instrument = rng.nextInt(centres[0].length);
            correlated(factor, bells);
            for (int j = 0; j < errors.length; j++) {
                errors[j] = centres[j][instrument] + bandwidths[j] * bells[j];
            }
        }
    }
}
