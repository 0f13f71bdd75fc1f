package spanwright.loop;

/** Class and finish of a copper conductor, in the manner of IEC 60228. */
public enum ConductorClass {
    /** Class 1, solid, plain. */
    SOLID("class 1, solid", 1, 0),
    /** Class 2, stranded, plain. */
    STRANDED("class 2, stranded", 2, 1),
    /** Class 5, flexible, plain. */
    FLEXIBLE("class 5, flexible", 5, 2),
    /** Class 1 or 2, metal-coated. */
    COATED("class 1 or 2, metal-coated", 2, 3),
    /** Class 5, flexible, metal-coated. */
    FLEXIBLE_COATED("class 5, flexible, metal-coated", 5, 4);

    private final String words;
    private final int number;
    private final int column;

    ConductorClass(String words, int number, int column) {
        this.words = words;
        this.number = number;
        this.column = column;
    }

    /** The number of the class. */
    public int number() {
        return number;
    }

    int column() {
        return column;
    }

    @Override
    public String toString() {
        return words;
    }
}
