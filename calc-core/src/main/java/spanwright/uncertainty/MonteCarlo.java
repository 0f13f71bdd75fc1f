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
    private static final int MOST_THREADS = 1024;

    private final long seed;
    private final long trials;
    private final int threads;
    private final Optional<Progress> progress;

    private MonteCarlo(long seed, long trials, int threads, Optional<Progress> progress) {
        this.seed = seed;
        this.trials = trials;
        this.threads = threads;
        this.progress = progress;
    }

    /** A million trials on all processors, from this seed. */
    public static MonteCarlo seeded(long seed) {
        return new MonteCarlo(seed, DEFAULT_TRIALS, Runtime.getRuntime().availableProcessors(),
            Optional.empty());
    }

    /**
     * With so many trials.
     *
     * @param count at least 1000
     */
    public MonteCarlo trials(long count) {
        if (count < 1000) {
            throw new IllegalArgumentException("trials is " + count + ": at least 1000 needed");
        }
        return new MonteCarlo(seed, count, threads, progress);
    }

    /** On so many threads, 1 to 1024. The result does not depend on it. */
    public MonteCarlo threads(int count) {
        Checks.within("threads", count, 1, MOST_THREADS);
        return new MonteCarlo(seed, trials, count, progress);
    }

    /** Telling how far it is. */
    public MonteCarlo onProgress(Progress listener) {
        return new MonteCarlo(seed, trials, threads,
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

    /** Number of trials. */
    public long trials() {
        return trials;
    }

    /** Number of threads. */
    public int threads() {
        return threads;
    }

    /** Who is told how far it is. */
    public Optional<Progress> progress() {
        return progress;
    }
}
