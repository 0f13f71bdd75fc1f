package spanwright.temperature;

/** Where a module is mounted, as far as its temperature is concerned. */
public enum Place {
    /** In the open air: the weather, and the sun where it shines on the housing. */
    FIELD("in the field"),
    /** In a cabinet that stands in the same weather: its rise and the heat of the neighbours come on top. */
    CABINET("in the cabinet");

    private final String words;

    Place(String words) {
        this.words = words;
    }

    @Override
    public String toString() {
        return words;
    }
}
