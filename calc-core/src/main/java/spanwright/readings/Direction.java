package spanwright.readings;

/** From which side a point was approached. */
public enum Direction {
    /** With rising input. */
    UPSCALE("up"),
    /** With falling input. */
    DOWNSCALE("down");

    private final String word;

    Direction(String word) {
        this.word = word;
    }

    @Override
    public String toString() {
        return word;
    }
}
