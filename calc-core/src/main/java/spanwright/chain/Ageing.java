package spanwright.chain;

/** How a stated drift per year grows with the time since calibration. */
public enum Ageing {
    /** In proportion to time: a trend. */
    LINEAR("in proportion to time") {
        @Override
        double factor(double years) {
            return years;
        }
    },
    /** With the root of time: a random walk. */
    ROOT_OF_TIME("with the root of time") {
        @Override
        double factor(double years) {
            return Math.sqrt(years);
        }
    };

    private final String words;

    Ageing(String words) {
        this.words = words;
    }

    abstract double factor(double years);

    @Override
    public String toString() {
        return words;
    }
}
