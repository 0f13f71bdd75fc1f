package spanwright.uncertainty;

/** Told how far a Monte Carlo run is. Called by the thread that started it, a few times a second. */
@FunctionalInterface
public interface TrialProgress {
    /**
     * So many trials are done.
     *
     * @param done  trials done
     * @param asked trials asked for; of an adaptive run, the most it may take
     */
    void at(long done, long asked);
}
