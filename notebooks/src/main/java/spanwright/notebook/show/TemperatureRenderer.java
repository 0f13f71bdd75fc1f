package spanwright.notebook.show;

import java.util.List;
import java.util.Optional;
import spanwright.chart.TemperatureCharts;
import spanwright.kernel.display.MimeBundle;
import spanwright.kernel.display.Renderer;
import spanwright.quantity.NumberText;
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
            return Optional.of(Sheet.saying(TemperatureCharts.errors(test).title())
                .with(TemperatureCharts.errors(test)).with(coefficients(test.coefficients()))
                .notes("Non-return", List.of(nonReturn(test.zero()), nonReturn(test.span())))
                .notes("Warnings", test.warnings()).bundle());
        }
        return Optional.empty();
    }

    private static Grid coefficients(List<TemperatureCoefficient> coefficients) {
        final Grid.Builder grid = Grid.of("Temperature coefficients by each method", "of", "method",
            "#% of span per K", "#u", "#ppm of span per K", "#tested from (\u00b0C)", "#to (\u00b0C)",
                "may be multiplied");
        for (TemperatureCoefficient c : coefficients) {
            grid.row(c.effect().toString(), c.method().toString(), NumberText.significant(c.perKelvin()
                .value(), 3),
                NumberText.uncertainty(c.perKelvin().u()), NumberText.significant(c.ppmOfSpanPerKelvin(), 3),
                NumberText.plain(c.coldest().value(), 4), NumberText.plain(c.hottest().value(), 4),
                c.method().allowsPartialExcursion() ? "by any excursion within" : "by the whole range only");
        }
        return grid.build();
    }

    private static String nonReturn(TemperatureSeries series) {
        return series.effect() + ": " + series.nonReturn()
            .map(e -> NumberText.fixed(e.value(), 3) + " % of span between visits to " + series.reference())
            .orElse("not determined, " + series.reference() + " was visited once");
    }
}
