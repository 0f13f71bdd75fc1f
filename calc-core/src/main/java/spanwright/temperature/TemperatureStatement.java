package spanwright.temperature;

import java.util.List;
import java.util.Objects;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;
import spanwright.quantity.Span;

/**
 * A maker's statement of the influence of temperature. Of unknown sign, so it is a limit to both sides.
 *
 * <p>A maximum is taken as the half width of a rectangle (common practice, no source). A typical figure says
 * neither how many units stay within it nor how far the others go: it carries no guarantee and is refused
 * under one, unless
 * {@link #takenAsOneSigma} forces it; then it is one standard deviation and marked so.
 *
 * @param rate     the figure
 * @param base     what it is a fraction of
 * @param standing whether it is guaranteed
 * @param effect   zero or span given apart, or the output as a whole
 * @param reason   why a typical figure was forced; empty where it was not
 */
public record TemperatureStatement(TemperatureRate rate, Base base, Standing standing,
                                   TemperatureEffect effect, String reason) {
    /** What the percentage is of. */
    public enum Base {
        /** Of the output span. */
        SPAN("% of span"),
        /** Of the output reading, so 1.25 times the span figure at 20 mA and 0.25 times at 4 mA. */
        READING("% of reading");

        private final String words;

        Base(String words) {
            this.words = words;
        }

        @Override
        public String toString() {
            return words;
        }
    }

    /** What the maker stands for. */
    public enum Standing {
        /** Every unit stays within it. */
        MAXIMUM("maximum"),
        /** Some unit somewhere did. */
        TYPICAL("typical");

        private final String word;

        Standing(String word) {
            this.word = word;
        }

        @Override
        public String toString() {
            return word;
        }
    }

    /** Checks the components. */
    public TemperatureStatement {
        Objects.requireNonNull(rate, "rate");
        Objects.requireNonNull(base, "base");
        Objects.requireNonNull(standing, "standing");
        Objects.requireNonNull(effect, "effect");
        Objects.requireNonNull(reason, "reason");
    }

    /** The statement for the zero alone. */
    public TemperatureStatement onZero() {
        return new TemperatureStatement(rate, base, standing, TemperatureEffect.ZERO, reason);
    }

    /** The statement for the span alone. */
    public TemperatureStatement onSpan() {
        return new TemperatureStatement(rate, base, standing, TemperatureEffect.SPAN, reason);
    }

    /**
     * The typical figure forced into a budget as one standard deviation, with the reason that the report
     * will show.
     *
     * @throws IllegalArgumentException if the reason is blank or the figure is a maximum
     */
    public TemperatureStatement takenAsOneSigma(String why) {
        if (standing == Standing.MAXIMUM) {
            throw new IllegalArgumentException(rate.written() + " is a maximum: it needs no forcing");
        }
        return new TemperatureStatement(rate, base, standing, effect,
            Checks.notBlank("reason for using a typical figure", why));
    }

    /** Whether the figure is a guaranteed limit. */
    public boolean isGuaranteed() {
        return standing == Standing.MAXIMUM;
    }

    /** Whether this is a typical figure that was forced into a budget. */
    public boolean isForced() {
        return !reason.isEmpty();
    }

    /**
     * This statement, if it may stand in a budget.
     *
     * @throws IllegalArgumentException if it is typical and was not forced
     */
    public TemperatureStatement admitted() {
        if (isGuaranteed() || isForced()) {
            return this;
        }
        throw new IllegalArgumentException(rate.written() + " is a typical figure and carries no guarantee:"
            + " use the maximum, measure it, or force it with takenAsOneSigma(reason)");
    }

    /**
     * The figure at an input in percent of span per kelvin.
     *
     * @param output        range of the output, which turns percent of reading into percent of span
     * @param inputFraction position in the range: 0 at the lower, 1 at the upper range value
     */
    public double percentOfSpanPerKelvin(Span output, double inputFraction) {
        return rate.percentPerKelvin() * factor(output, inputFraction) * effect.shareAt(inputFraction);
    }

    private double factor(Span output, double inputFraction) {
        return base == Base.SPAN ? 1
            : Math.abs(output.valueAt(100 * inputFraction)) / output.width();
    }

    /**
     * The limit that the statement sets over an excursion, both sides kept, at the upper range value.
     *
     * @throws IllegalArgumentException if it is typical and was not forced
     */
    public TemperatureContribution over(Excursion excursion, Span output) {
        final double perKelvin = admitted().percentOfSpanPerKelvin(output, 1);
        final List<String> warnings = isForced()
            ? List.of("typical figure taken as one standard deviation: " + reason) : List.of();
        final double below = perKelvin * excursion.kelvinBelow();
        final double above = perKelvin * excursion.kelvinAbove();
        return new TemperatureContribution(effect, below, above,
            Math.max(Math.abs(below), Math.abs(above)), warnings, toString());
    }

    @Override
    public String toString() {
        final String of = base == Base.SPAN ? " of span" : " of reading";
        final String part = effect == TemperatureEffect.OUTPUT ? "" : ", " + effect;
        final String forced = isForced() ? ", taken as one standard deviation: " + reason : "";
        return rate.written() + of + ", " + standing + part + forced + " ("
            + NumberText.significant(rate.percentPerKelvin(), 2) + " " + base + " per K)";
    }
}
