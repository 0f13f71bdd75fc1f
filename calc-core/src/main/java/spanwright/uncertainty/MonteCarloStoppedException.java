package spanwright.uncertainty;

/** A Monte Carlo run was interrupted before its end: no result. The thread stays marked as interrupted. */
public final class MonteCarloStoppedException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    /** With the number of trials done and asked for. */
    public MonteCarloStoppedException(long done, long asked) {
        super("Monte Carlo was interrupted after " + done + " of " + asked + " trials: no result");
    }
}
