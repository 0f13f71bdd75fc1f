package spanwright.temperature;

/**
 * How a temperature coefficient was made from values at several temperatures. The method decides what the
 * figure may be used for.
 */
public enum CoefficientMethod {
    /** Largest minus smallest value over the width of the temperature range: a bound on the total spread. */
    BOX("box", false, false),
    /** Value at the highest minus value at the lowest temperature, over the width: near 0 for a parabola. */
    END_POINT("end point", true, false),
    /** The steepest step between neighbouring temperatures. */
    SLOPE("slope", false, true),
    /** The steepest line from the value at the calibration temperature to any other value. */
    BOW_TIE("bow-tie", false, true),
    /** The least-squares line forced through the value at the calibration temperature. */
    LEAST_SQUARES("least squares through the calibration temperature", true, true);

    private final String words;
    private final boolean signed;
    private final boolean partial;

    CoefficientMethod(String words, boolean signed, boolean partial) {
        this.words = words;
        this.signed = signed;
        this.partial = partial;
    }

    /** Whether the figure keeps the direction of the change; otherwise it is a magnitude. */
    public boolean isSigned() {
        return signed;
    }

    /** Whether the figure may be multiplied by an excursion that is only a part of the tested range. */
    public boolean allowsPartialExcursion() {
        return partial;
    }

    @Override
    public String toString() {
        return words;
    }
}
