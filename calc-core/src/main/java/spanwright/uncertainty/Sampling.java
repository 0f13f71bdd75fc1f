package spanwright.uncertainty;

/** How the inputs of a Monte Carlo run are drawn. */
public enum Sampling {
    /** Independent draws. */
    RANDOM("random"),
    /**
     * Latin hypercube: in every block of 512 trials each input visits each of 512 equally likely intervals
     * once, in random order. Means and quantiles of a model that is nearly a sum settle with fewer trials;
     * the errors that a result states are those of random draws and so too large. Slower for each trial.
     */
    LATIN_HYPERCUBE("Latin hypercube in blocks of 512");

    private final String words;

    Sampling(String words) {
        this.words = words;
    }

    /** The way in words. */
    public String words() {
        return words;
    }
}
