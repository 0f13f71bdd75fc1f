package spanwright.temperature;

/** What of an instrument's output moves with temperature. */
public enum TemperatureEffect {
    /** The output at the lower range value; the change is the same at every input. */
    ZERO("zero"),
    /** The width of the output between the range values; the change grows with the input. */
    SPAN("span"),
    /** The output as a whole, as stated by data sheets that do not tell zero from span. */
    OUTPUT("output");

    private final String word;

    TemperatureEffect(String word) {
        this.word = word;
    }

    /**
     * The share of the effect that is seen at an input.
     *
     * @param inputFraction position in the range: 0 at the lower, 1 at the upper range value
     */
    public double shareAt(double inputFraction) {
        return this == SPAN ? inputFraction : 1;
    }

    @Override
    public String toString() {
        return word;
    }
}
