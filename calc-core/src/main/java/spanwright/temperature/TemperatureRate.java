package spanwright.temperature;

import java.util.Objects;
import spanwright.quantity.Checks;
import spanwright.quantity.Kelvin;
import spanwright.quantity.NumberText;

/**
 * The figure of a data sheet, before it is said of what it is a fraction and whether it is guaranteed:
 * {@code ppmPerDegC(100).maximumOfSpan()}.
 *
 * @param percentPerKelvin percent per kelvin, at least 0: 0.01 for 100 ppm/degC
 * @param written          the figure as the maker wrote it
 */
public record TemperatureRate(double percentPerKelvin, String written) {
    /** Checks the components. */
    public TemperatureRate {
        Checks.notNegative("temperature coefficient in percent per kelvin", percentPerKelvin);
        Objects.requireNonNull(written, "written");
    }

    /** So many parts per million per degree Celsius; 100 ppm is 0.01 %. */
    public static TemperatureRate ppmPerDegC(double ppm) {
        return new TemperatureRate(ppm * 1e-4, NumberText.plain(ppm, 6) + " ppm/\u00b0C");
    }

    /** So many percent per degree Celsius. */
    public static TemperatureRate percentPerDegC(double percent) {
        return new TemperatureRate(percent, NumberText.plain(percent, 6) + " % per \u00b0C");
    }

    /** So many percent per 10 degrees Celsius. */
    public static TemperatureRate percentPer10DegC(double percent) {
        return percentPer(percent, new Kelvin(10));
    }

    /** So many percent per 28 degrees Celsius, the 50 degrees Fahrenheit of older data sheets. */
    public static TemperatureRate percentPer28DegC(double percent) {
        return percentPer(percent, new Kelvin(28));
    }

    /**
     * So many percent per step of temperature.
     *
     * @throws IllegalArgumentException if the step is not above 0
     */
    public static TemperatureRate percentPer(double percent, Kelvin step) {
        Checks.positive("temperature step in K", step.value());
        return new TemperatureRate(percent / step.value(),
            NumberText.plain(percent, 6) + " % per " + NumberText.plain(step.value(), 6) + " \u00b0C");
    }

    /** A guaranteed limit, of the span. */
    public TemperatureStatement maximumOfSpan() {
        return statement(TemperatureStatement.Base.SPAN, TemperatureStatement.Standing.MAXIMUM);
    }

    /** A guaranteed limit, of the reading. */
    public TemperatureStatement maximumOfReading() {
        return statement(TemperatureStatement.Base.READING, TemperatureStatement.Standing.MAXIMUM);
    }

    /** A typical figure, of the span: it carries no guarantee. */
    public TemperatureStatement typicalOfSpan() {
        return statement(TemperatureStatement.Base.SPAN, TemperatureStatement.Standing.TYPICAL);
    }

    /** A typical figure, of the reading: it carries no guarantee. */
    public TemperatureStatement typicalOfReading() {
        return statement(TemperatureStatement.Base.READING, TemperatureStatement.Standing.TYPICAL);
    }

    private TemperatureStatement statement(TemperatureStatement.Base base,
                                           TemperatureStatement.Standing standing) {
        return new TemperatureStatement(this, base, standing, TemperatureEffect.OUTPUT, "");
    }
}
