package spanwright.quantity;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Objects;
import java.util.Optional;
import javax.measure.IncommensurableException;
import javax.measure.Unit;
import javax.measure.UnitConverter;
import tech.units.indriya.AbstractUnit;

/**
 * A straight conversion of written numbers, {@code y = x * factor / divisor + offset}, in decimal arithmetic
 * of 34 digits, so that 0.004012 A is 4.012 mA and not 4.0120000000000005 mA.
 *
 * @param factor  multiplies, not 0
 * @param divisor divides, not 0
 * @param offset  added last, in the unit converted to
 */
public record UnitConversion(BigDecimal factor, BigDecimal divisor, BigDecimal offset) {
    /** Leaves a number as it is. */
    public static final UnitConversion NONE = new UnitConversion(BigDecimal.ONE, BigDecimal.ONE,
        BigDecimal.ZERO);

    private static final Unit<?> PER_MILLION = UnitSymbols.parse("ppm");

    /** Checks the components. */
    public UnitConversion {
        Objects.requireNonNull(offset, "offset");
        if (factor.signum() == 0 || divisor.signum() == 0) {
            throw new IllegalArgumentException("conversion by " + factor + " / " + divisor
                + ": neither may be 0");
        }
    }

    /**
     * The conversion from one unit to another of the same dimension, or nothing if there is none. A plain
     * number, percent and ppm convert into each other, and into nothing else.
     */
    public static Optional<UnitConversion> between(Unit<?> from, Unit<?> to) {
        if (from.equals(to)) {
            return Optional.of(NONE);
        }
        if (!from.isCompatible(to) || isRatio(from) != isRatio(to)) {
            return Optional.empty();
        }
        try {
            final UnitConverter converter = from.getConverterToAny(to);
            final double zero = converter.convert(0.0);
            final double one = converter.convert(1.0);
            return Optional.of(new UnitConversion(decimal(one - zero), BigDecimal.ONE, decimal(zero)));
        } catch (IncommensurableException e) {
            return Optional.empty();
        }
    }

    /**
     * The current through a resistor, in the unit of current asked for, from the voltage across it.
     *
     * @param voltage unit of the voltage, for example mV
     * @param ohms    the resistor, above 0
     * @param current unit of the current, for example mA
     * @throws IllegalArgumentException if the units are no voltage and no current, or the resistor is not
     *                                  finite and above 0
     */
    public static UnitConversion voltageAcross(Unit<?> voltage, double ohms, Unit<?> current) {
        Checks.positive("resistor in ohm", ohms);
        final UnitConversion volts = between(voltage, UnitSymbols.parse("V")).orElseThrow(() ->
            new IllegalArgumentException("unit \"" + UnitSymbols.symbol(voltage) + "\" is no voltage"));
        final UnitConversion amperes = between(UnitSymbols.parse("A"), current).orElseThrow(() ->
            new IllegalArgumentException("unit \"" + UnitSymbols.symbol(current) + "\" is no current"));
        return new UnitConversion(volts.factor.multiply(amperes.factor), BigDecimal.valueOf(ohms),
            BigDecimal.ZERO);
    }

    /** The straight line that carries one range onto another, for values that lie in the first. */
    public static UnitConversion scaling(Span from, Span to) {
        final BigDecimal factor = exact(to.upper()).subtract(exact(to.lower()));
        final BigDecimal divisor = exact(from.upper()).subtract(exact(from.lower()));
        final BigDecimal atLower = exact(from.lower()).multiply(factor)
            .divide(divisor, MathContext.DECIMAL128);
        return new UnitConversion(factor, divisor, exact(to.lower()).subtract(atLower));
    }

    /** The converted number. */
    public BigDecimal apply(BigDecimal x) {
        final BigDecimal scaled = factor.equals(BigDecimal.ONE) && divisor.equals(BigDecimal.ONE) ? x
            : x.multiply(factor).divide(divisor, MathContext.DECIMAL128);
        return scaled.add(offset);
    }

    /** The converted number, in double arithmetic: for long columns. */
    public double applyTo(double x) {
        return x * factor.doubleValue() / divisor.doubleValue() + offset.doubleValue();
    }

    /** This conversion followed by another. */
    public UnitConversion andThen(UnitConversion next) {
        return new UnitConversion(factor.multiply(next.factor), divisor.multiply(next.divisor),
            offset.multiply(next.factor).divide(next.divisor, MathContext.DECIMAL128).add(next.offset));
    }

    /** How much a step of 1 becomes, above 0: converts resolutions and half widths. */
    public double step() {
        return factor.divide(divisor, MathContext.DECIMAL128).abs().doubleValue();
    }

    /** Whether it leaves every number as it is. */
    public boolean isNone() {
        return factor.compareTo(divisor) == 0 && offset.signum() == 0;
    }

    private static boolean isRatio(Unit<?> unit) {
        return unit.isCompatible(AbstractUnit.ONE) && unit.isCompatible(PER_MILLION)
            && !unit.equals(UnitSymbols.parse("pH"));
    }

    private static BigDecimal exact(double value) {
        return BigDecimal.valueOf(value);
    }

    /** Indriya answers in doubles: 15 digits drop the noise of the last places. */
    private static BigDecimal decimal(double value) {
        return BigDecimal.valueOf(Checks.finite("conversion factor", value)).round(new MathContext(15));
    }
}
