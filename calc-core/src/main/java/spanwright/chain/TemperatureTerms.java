package spanwright.chain;

import java.util.List;
import spanwright.quantity.Celsius;
import spanwright.quantity.Span;
import spanwright.temperature.CoefficientMethod;
import spanwright.temperature.TemperatureCoefficient;
import spanwright.temperature.TemperatureEffect;
import spanwright.temperature.TemperatureSeries;
import spanwright.temperature.TemperatureStatement;
import spanwright.temperature.TemperatureTest;
import spanwright.uncertainty.Estimate;
import spanwright.uncertainty.Normal;

/** Turns what is known of a temperature influence into error terms that act per kelvin. */
final class TemperatureTerms {
    private TemperatureTerms() { }

    static ErrorTerm of(TemperatureStatement statement, Span output) {
        final double rate = statement.admitted().rate().percentPerKelvin();
        final ErrorProfile profile = statement.base() == TemperatureStatement.Base.SPAN
            ? profile(statement.effect()) : ofReading(statement.effect(), output);
        final String name = name(statement.effect());
        if (statement.isGuaranteed()) {
            return ErrorTerm.limit(name, Influence.TEMPERATURE, rate, ErrorTerm.Basis
                .of(Standing.GUARANTEED, true, "data sheet: " + statement).actingPerKelvin())
                .withProfile(profile);
        }
        return new ErrorTerm(name, Influence.TEMPERATURE, new Normal(0, rate),
            ErrorTerm.FACTOR_WITHOUT_LIMIT * rate, profile,
            ErrorTerm.Basis.of(Standing.TYPICAL, false, "data sheet: " + statement).actingPerKelvin());
    }

    /** A statement of reading: at the zero it acts with the lower range value, on the span with the width. */
    private static ErrorProfile ofReading(TemperatureEffect effect, Span output) {
        return switch (effect) {
            case OUTPUT -> ErrorProfile.ofReading(output);
            case SPAN -> ErrorProfile.GROWING;
            case ZERO -> new ErrorProfile(List.of(
                new ErrorProfile.Knot(0, Math.abs(output.lower()) / output.width())));
        };
    }

    static ChainElement add(ChainElement element, TemperatureTest test) {
        ChainElement with = add(element, test.zero().coefficient(CoefficientMethod.LEAST_SQUARES));
        with = add(with, test.span().coefficient(CoefficientMethod.LEAST_SQUARES));
        return nonReturn(nonReturn(with, test.zero()), test.span());
    }

    private static ChainElement nonReturn(ChainElement element, TemperatureSeries series) {
        final String name = "non-return of " + series.effect();
        return series.nonReturn().map(e -> element.with(
                ErrorTerm.limit(name, Influence.TEMPERATURE, e.value(),
                    measured(series.channel() + ", difference of the visits to " + series.reference()))
                .withProfile(profile(series.effect()))))
            .orElseGet(() -> element.withGap(element.name() + ": " + name
                + " is not determined, the test does not come back to " + series.reference()));
    }

    /**
     * A signed coefficient keeps its sign and its uncertainty, and leaves a residual; slope and bow-tie are
     * limits of unknown sign; a box figure bounds the spread over its whole range and acts without regard to
     * the excursion.
     */
    static ChainElement add(ChainElement element, TemperatureCoefficient c) {
        final ChainElement placed = calibrated(element, c.reference());
        final String name = name(c.effect());
        final ErrorProfile profile = profile(c.effect());
        final Estimate a = c.perKelvin();
        final ErrorTerm.Basis basis = measured(c.toString()).from(c);
        if (c.method() == CoefficientMethod.BOX) {
            final double spread = a.value() * (c.hottest().value() - c.coldest().value());
            return placed.with(
                ErrorTerm.limit(name, Influence.TEMPERATURE, spread, basis).withProfile(profile));
        }
        if (!c.method().isSigned()) {
            final double limit = a.value() + ErrorTerm.FACTOR_WITHOUT_LIMIT * a.u();
            return placed.with(ErrorTerm.limit(name, Influence.TEMPERATURE, limit, basis.actingPerKelvin())
                .withProfile(profile));
        }
        final ChainElement with = placed.with(
            ErrorTerm.estimate(name, Influence.TEMPERATURE, a, basis.actingPerKelvin()).withProfile(profile));
        return c.residual() == 0 ? with : with.with(ErrorTerm.limit(name + ", departure from the line",
            Influence.TEMPERATURE, c.residual(), measured(c.toString())).withProfile(profile));
    }

    private static ChainElement calibrated(ChainElement element, Celsius reference) {
        return element.site().calibration().isPresent() ? element : element.calibratedAt(reference);
    }

    private static ErrorTerm.Basis measured(String source) {
        return ErrorTerm.Basis.of(Standing.MEASURED, false, source);
    }

    private static ErrorProfile profile(TemperatureEffect effect) {
        return effect == TemperatureEffect.SPAN ? ErrorProfile.GROWING : ErrorProfile.CONSTANT;
    }

    private static String name(TemperatureEffect effect) {
        return effect == TemperatureEffect.OUTPUT ? "temperature" : "temperature of " + effect;
    }
}
