package spanwright.uncertainty;

import java.util.Objects;
import java.util.Optional;
import spanwright.quantity.Checks;

/**
 * Settings of a Monte Carlo run: propagation of distributions (JCGM 101:2008, clause 7).
 *
 * <p>One seed gives the same result to the last bit, whatever the number of threads. Immutable.
 */
public final class MonteCarlo {
    /** Trials where none are asked for, as JCGM 101:2008, 7.2.2 finds fit for a 95 % interval. */
    public static final long DEFAULT_TRIALS = 1_000_000;
    private static final long FEWEST_TRIALS = 1000;
    private static final int MOST_THREADS = 1024;

    private final long seed;
    private final long trials;
    private final int threads;
    private final Sampling sampling;
    private final Optional<Stability> stability;
    private final Optional<TrialProgress> progress;

    private MonteCarlo(long seed, long trials, int threads, Sampling sampling, Optional<Stability> stability,
                       Optional<TrialProgress> progress) {
        this.seed = seed;
        this.trials = trials;
        this.threads = threads;
        this.sampling = sampling;
        this.stability = stability;
        this.progress = progress;
    }

    /** A million random trials on all processors, from this seed. */
    public static MonteCarlo seeded(long seed) {
        return new MonteCarlo(seed, DEFAULT_TRIALS, Runtime.getRuntime().availableProcessors(),
            Sampling.RANDOM, Optional.empty(), Optional.empty());
    }

    /**
     * With so many trials; of a run that ends by itself, the most it may take.
     *
     * @param count at least 1000
     */
    public MonteCarlo trials(long count) {
        if (count < FEWEST_TRIALS) {
            throw new IllegalArgumentException("trials is " + count + ": at least " + FEWEST_TRIALS
                + " needed");
        }
        return new MonteCarlo(seed, count, threads, sampling, stability, progress);
    }

    /** On so many threads, 1 to 1024. The result does not depend on it. */
    public MonteCarlo threads(int count) {
        Checks.within("threads", count, 1, MOST_THREADS);
        return new MonteCarlo(seed, trials, count, sampling, stability, progress);
    }

    /** Drawing the inputs in this way. */
    public MonteCarlo sampling(Sampling way) {
        return new MonteCarlo(seed, trials, threads, Objects.requireNonNull(way, "way"), stability, progress);
    }

    /**
     * Ending by itself as soon as the results are stable (JCGM 101:2008, 7.9): when twice the standard error
     * of the mean, of the standard uncertainty and of both ends of the interval, as seen between sequences of
     * trials, is within the numerical tolerance of the standard uncertainty. Looked at after every eight
     * sequences.
     *
     * @param digits      significant digits of the standard uncertainty that are meant to hold, 1 to 6
     * @param probability coverage probability of the interval, in (0, 1)
     */
    public MonteCarlo untilStable(int digits, double probability) {
        return new MonteCarlo(seed, trials, threads, sampling,
            Optional.of(new Stability(digits, probability)), progress);
    }

    /** Telling how far it is. */
    public MonteCarlo onProgress(TrialProgress listener) {
        return new MonteCarlo(seed, trials, threads, sampling, stability,
            Optional.of(Objects.requireNonNull(listener, "listener")));
    }

    /**
     * Runs a model.
     *
     * @throws IllegalArgumentException   if the model gives a value that is not finite; the inputs are named
     * @throws MonteCarloStoppedException if the calling thread is interrupted
     */
    public MonteCarloResult run(MeasurementModel model) {
        return new Simulation(model, this).run();
    }

    /** The seed. */
    public long seed() {
        return seed;
    }

    /** Number of trials; of a run that ends by itself, the most. */
    public long trials() {
        return trials;
    }

    /** Number of threads. */
    public int threads() {
        return threads;
    }

    /** How the inputs are drawn. */
    public Sampling sampling() {
        return sampling;
    }

    /** What a run that ends by itself waits for. */
    public Optional<Stability> stability() {
        return stability;
    }

    /** Who is told how far it is. */
    public Optional<TrialProgress> progress() {
        return progress;
    }
}
