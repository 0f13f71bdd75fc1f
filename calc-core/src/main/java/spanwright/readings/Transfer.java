package spanwright.readings;

import java.util.Objects;
import spanwright.quantity.Span;

/** The specified characteristic from input to output of a channel. */
public enum Transfer {
    /** Output proportional to the input within the ranges. */
    LINEAR("linear") {
        @Override
        double fraction(double inputFraction) {
            return inputFraction;
        }

        @Override
        double inverse(double outputFraction) {
            return outputFraction;
        }

        @Override
        double slope(double inputFraction) {
            return 1;
        }
    },
    /**
     * Output proportional to the square root of the input, as for differential pressure flow; 0 below the
     * range.
     */
    SQUARE_ROOT("square root") {
        @Override
        double fraction(double inputFraction) {
            return inputFraction <= 0 ? 0 : Math.sqrt(inputFraction);
        }

        @Override
        double inverse(double outputFraction) {
            return outputFraction * Math.abs(outputFraction);
        }

        @Override
        double slope(double inputFraction) {
            if (inputFraction > 0) {
                return 0.5 / Math.sqrt(inputFraction);
            }
            throw new IllegalArgumentException("the square root has no slope at " + 100 * inputFraction
                + " % of the input range");
        }
    };

    private final String words;

    Transfer(String words) {
        this.words = words;
    }

    abstract double fraction(double inputFraction);

    abstract double inverse(double outputFraction);

    abstract double slope(double inputFraction);

    /** The output that the specified characteristic gives for an applied input. */
    public double ideal(Span input, Span output, double applied) {
        Objects.requireNonNull(output, "output");
        return output.lower() + output.width() * fraction((applied - input.lower()) / input.width());
    }

    /** The input for which the specified characteristic gives an output. */
    public double inputFor(Span input, Span output, double indicated) {
        Objects.requireNonNull(output, "output");
        return input.lower() + input.width() * inverse((indicated - output.lower()) / output.width());
    }

    /**
     * Change of the output per unit of input at an applied input.
     *
     * @throws IllegalArgumentException for the square root at or below the lower range value, where there is
     * none
     */
    public double slopeAt(Span input, Span output, double applied) {
        return output.width() / input.width() * slope((applied - input.lower()) / input.width());
    }

    @Override
    public String toString() {
        return words;
    }
}
