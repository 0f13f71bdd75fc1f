package spanwright.kernel.jshell;

/** The few colours of error texts. Colour never carries the meaning alone. */
enum Ansi {
    /** What is wrong. */
    ERROR("\u001b[1;31m"),
    /** A place in a cell. */
    PLACE("\u001b[36m"),
    /** What is rarely of interest. */
    FAINT("\u001b[90m");

    private final String begin;

    Ansi(String begin) {
        this.begin = begin;
    }

    /** The text in this colour. */
    String of(String text) {
        return begin + text + "\u001b[0m";
    }
}
