package spanwright.notebook.show;

import java.util.List;
import java.util.Optional;
import spanwright.chart.TemperatureCharts;
import spanwright.kernel.display.MimeBundle;
import spanwright.kernel.display.Renderer;
import spanwright.quantity.NumberText;
import spanwright.temperature.CoefficientMethod;
import spanwright.temperature.TemperatureCoefficient;
import spanwright.temperature.TemperatureSeries;
import spanwright.temperature.TemperatureTest;

/** Shows chamber tests: the errors over temperature and the coefficients by every method. */
public final class TemperatureRenderer implements Renderer {
    /** For the service loader. */
    public TemperatureRenderer() { }

    @Override
    public Optional<MimeBundle> render(Object value) {
        if (value instanceof TemperatureTest test) {
            return Optional.of(Sheet.saying(sentence(test))
                .with(TemperatureCharts.errors(test)).with(coefficients(test.coefficients()))
                .notes("Non-return", List.of(nonReturn(test.zero()), nonReturn(test.span())))
                .notes("Warnings", test.warnings()).bundle());
        }
        return Optional.empty();
    }

    private static Grid coefficients(List<TemperatureCoefficient> coefficients) {
        final TemperatureCoefficient any = coefficients.get(0);
        final Grid.Builder grid = Grid.of("Temperature coefficients by each method, tested from "
            + any.coldest()
            + " to " + any.hottest(), "of", "method", "#% of span per K", "#u", "may be multiplied by");
        for (TemperatureCoefficient c : coefficients) {
            grid.row(List.of(c.effect().toString(), c.method().toString(),
                NumberText.significant(c.perKelvin().value(), 3), NumberText.uncertainty(c.perKelvin().u()),
                c.method().allowsPartialExcursion() ? "any excursion" : "the whole range only"), false,
                NumberText.significant(c.ppmOfSpanPerKelvin(), 3) + " ppm of span per kelvin");
        }
        return grid.build();
    }

    private static String sentence(TemperatureTest test) {
        return test.zero().channel() + " in the chamber: by least squares through " + test.zero().reference()
            + " zero moves by " + slope(test.zero()) + " and span by " + slope(test.span())
                + " % of span per kelvin.";
    }

    private static String slope(TemperatureSeries series) {
        return NumberText.significant(series.coefficient(CoefficientMethod.LEAST_SQUARES).perKelvin()
            .value(), 2);
    }

    private static String nonReturn(TemperatureSeries series) {
        return series.effect() + ": " + series.nonReturn()
            .map(e -> NumberText.fixed(e.value(), 3) + " % of span between visits to " + series.reference())
            .orElse("not determined, " + series.reference() + " was visited once");
    }
}
