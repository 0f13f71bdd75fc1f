package spanwright.notebook.show;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import spanwright.chart.FitCharts;
import spanwright.fit.CalibrationLine;
import spanwright.fit.FittedCurve;
import spanwright.fit.FittedData;
import spanwright.fit.Interval;
import spanwright.fit.LineThroughPoint;
import spanwright.fit.LineWithBothUncertain;
import spanwright.fit.LinearRegression;
import spanwright.fit.PolynomialCurve;
import spanwright.fit.PredictingCurve;
import spanwright.kernel.display.MimeBundle;
import spanwright.kernel.display.Renderer;
import spanwright.quantity.NumberText;
import spanwright.uncertainty.Estimate;

/** Shows fitted lines and curves: what was fitted, how well, and where the curve and one more reading lie. */
public final class FitRenderer implements Renderer {
    static final double COVERAGE = 0.95;

    /** For the service loader. */
    public FitRenderer() { }

    @Override
    public Optional<MimeBundle> render(Object value) {
        if (value instanceof CalibrationLine line) {
            return Optional.of(curve(line, sentence(line.data(), line.slope(), line), line(line)).bundle());
        }
        if (value instanceof LineThroughPoint line) {
            return Optional.of(curve(line, sentence(line.data(), line.slope(), line), through(line))
                .bundle());
        }
        if (value instanceof LineWithBothUncertain line) {
            return Optional.of(curve(line, sentence(line), bothUncertain(line)).bundle());
        }
        if (value instanceof PolynomialCurve polynomial) {
            return Optional.of(curve(polynomial, sentence(polynomial), coefficients(polynomial)).bundle());
        }
        if (value instanceof LinearRegression fit) {
            return Optional.of(regression(fit).bundle());
        }
        return Optional.empty();
    }

    private static Sheet curve(FittedCurve curve, String sentence, Grid parameters) {
        return Sheet.saying(sentence).with(parameters).with(FitCharts.curve(curve, COVERAGE))
            .with(bands(curve)).with(readings(curve)).notes("Assumptions", assumptions(curve));
    }

    private static String sentence(FittedData data, Estimate slope, PredictingCurve line) {
        return data.yName() + " changes by " + Figures.value(slope) + " per unit of " + data.xName()
            + ", u = " + NumberText.uncertainty(slope.u()) + "; single readings scatter by "
            + NumberText.uncertainty(line.residualSd()) + " about the line (" + data.size() + " readings, "
            + line.dof() + " degrees of freedom).";
    }

    private static String sentence(LineWithBothUncertain line) {
        return line.data().yName() + " changes by " + Figures.value(line.slope()) + " per unit of "
            + line.data().xName() + ", u = " + NumberText.uncertainty(line.slope().u())
            + " by the stated uncertainties; chi squared by its degrees of freedom is "
            + NumberText.significant(line.chiSquaredByDof(), 3) + ".";
    }

    private static String sentence(PolynomialCurve curve) {
        return "Polynomial of degree " + curve.degree() + " through " + curve.data().size()
            + " readings: single readings scatter by " + NumberText.uncertainty(curve.residualSd())
            + " about it (" + curve.dof() + " degrees of freedom).";
    }

    private static Grid.Builder parameters(String caption) {
        return Grid.of(caption, "what", "#value", "#u", "#dof", "#95 % interval");
    }

    private static void row(Grid.Builder grid, String name, Estimate e) {
        grid.row(List.of(name, Figures.value(e), NumberText.uncertainty(e.u()), e.dof().toString(),
            Figures.interval(Interval.about(e, COVERAGE))), false, Figures.full(e.value()) + ", u = "
                + Figures.full(e.u()));
    }

    private static Grid line(CalibrationLine line) {
        final Grid.Builder grid = parameters("The line");
        row(grid, "slope", line.slope());
        row(grid, "level at the mean stimulus, x = " + NumberText.plain(line.centre(), 6), line.level());
        row(grid, "intercept, x = 0", line.intercept());
        return grid.row("residual standard deviation", NumberText.uncertainty(line.residualSd()), "",
                line.dof().toString(), "")
            .row("correlation of intercept and slope",
                NumberText.fixed(line.correlationOfInterceptAndSlope(), 3), "", "", "").build();
    }

    private static Grid through(LineThroughPoint line) {
        final Grid.Builder grid = parameters("The line through (" + NumberText.plain(line.throughX(), 7)
            + ", " + NumberText.plain(line.throughY(), 7) + ")");
        row(grid, "slope", line.slope());
        return grid.row("residual standard deviation", NumberText.uncertainty(line.residualSd()), "",
            line.dof().toString(), "").build();
    }

    private static Grid bothUncertain(LineWithBothUncertain line) {
        final Grid.Builder grid = parameters("The line");
        row(grid, "slope", line.slope());
        row(grid, "level at x = " + NumberText.plain(line.centre(), 6), line.level());
        row(grid, "intercept, x = 0", line.intercept());
        return grid.row("chi squared by degrees of freedom",
                NumberText.significant(line.chiSquaredByDof(), 3), "",
                Integer.toString(line.data().size() - 2), "")
            .row("probability of so much or more, if the stated uncertainties are right",
                NumberText.significant(line.probabilityOfChiSquared(), 2), "", "", "").build();
    }

    private static Grid coefficients(PolynomialCurve curve) {
        final Grid.Builder grid = parameters("The polynomial, in powers of x");
        for (int k = 0; k <= curve.degree(); k++) {
            row(grid, "coefficient of x^" + k, curve.coefficient(k));
        }
        return grid.row("residual standard deviation", NumberText.uncertainty(curve.residualSd()), "",
                curve.dof().toString(), "")
            .row("share of the squares taken up", NumberText.significant(curve.rSquared(), 6), "", "", "")
            .build();
    }

    private static Grid bands(FittedCurve curve) {
        final boolean predicts = curve instanceof PredictingCurve;
        final FittedData data = curve.data();
        final Grid.Builder grid = predicts
            ? Grid.of("95 % bands, each for one x", "#" + data.xName(), "#curve", "#u",
                "#curve lies within \u00b1", "#one more reading within \u00b1")
            : Grid.of("95 % band, for one x", "#" + data.xName(), "#curve", "#u",
                "#curve lies within \u00b1");
        for (int k = 0; k <= 4; k++) {
            final double x = data.lowestX() + k * (data.highestX() - data.lowestX()) / 4;
            final Estimate e = curve.at(x);
            final List<String> cells = new ArrayList<>(List.of(NumberText.plain(x, 6), Figures.value(e),
                NumberText.uncertainty(e.u()),
                NumberText.uncertainty(curve.confidenceBand(x, COVERAGE).halfWidth())));
            if (curve instanceof PredictingCurve predicting) {
                cells.add(NumberText.uncertainty(predicting.predictionBand(x, COVERAGE).halfWidth()));
            }
            grid.row(cells, false, Figures.full(e.value()));
        }
        return grid.build();
    }

    private static Grid readings(FittedCurve curve) {
        final FittedData data = curve.data();
        final List<String> heads = new ArrayList<>(List.of("#reading", "#" + data.xName(),
            "#" + data.yName(), "#curve", "#residual"));
        if (data.isWeighted()) {
            heads.add("#weight");
        }
        if (data.isUncertain()) {
            heads.addAll(List.of("#u of x", "#u of y"));
        }
        final double largest = IntStream.range(0, data.size())
            .mapToDouble(i -> Math.abs(curve.residual(i))).max().orElseThrow();
        final Grid.Builder grid = Grid.of("Readings, the largest residual marked",
            heads.toArray(String[]::new));
        for (int i = 0; i < data.size(); i++) {
            final double off = curve.residual(i);
            final List<String> cells = new ArrayList<>(List.of(Integer.toString(i + 1),
                NumberText.plain(data.x(i), 7), NumberText.plain(data.y(i), 7),
                Figures.value(data.y(i) - off, largest / 10), signed(off, largest)));
            if (data.isWeighted()) {
                cells.add(NumberText.plain(data.weight(i), 4));
            }
            if (data.isUncertain()) {
                cells.add(NumberText.uncertainty(data.xUncertainty(i)));
                cells.add(NumberText.uncertainty(data.yUncertainty(i)));
            }
            grid.row(cells, largest > 0 && Math.abs(off) == largest, Figures.full(off));
        }
        return grid.build();
    }

    /** A residual to the second digit of the largest, with its sign. */
    private static String signed(double residual, double largest) {
        final String text = Figures.value(residual, largest);
        return residual > 0 && text.chars().anyMatch(c -> c >= '1' && c <= '9') ? "+" + text : text;
    }

    private static List<String> assumptions(FittedCurve curve) {
        final List<String> notes = new ArrayList<>();
        if (curve.data().isUncertain()) {
            notes.add("The uncertainties are those stated for the readings, uncorrelated; the scatter about"
                + " the line does not enter them.");
        } else {
            notes.add("x is taken as exact" + (curve.data().isWeighted()
                ? "; only the ratios of the weights count, the bands are for a reading of weight 1."
                : " and all readings as equally uncertain."));
        }
        if (curve instanceof LineThroughPoint) {
            notes.add("The point through which the line goes is taken as exact.");
        }
        if (curve instanceof PolynomialCurve) {
            notes.add("The coefficients are strongly correlated: predict with the curve, not with them.");
        }
        notes.add("A band holds for one x at a time. Beyond the readings nothing supports the curve.");
        return notes;
    }

    private static Sheet regression(LinearRegression fit) {
        final Grid.Builder grid = parameters("Coefficients of " + fit.yName());
        if (fit.hasIntercept()) {
            row(grid, "intercept", fit.intercept());
        }
        for (int j = 1; j <= fit.regressorNames().size(); j++) {
            row(grid, fit.regressorNames().get(j - 1), fit.coefficient(j));
        }
        return Sheet.saying(fit.yName() + " by " + fit.regressorNames().size() + " regressor"
                + (fit.regressorNames().size() == 1 ? "" : "s") + ": they take up "
                + NumberText.significant(100 * fit.rSquared(), 4) + " % of the squares; single readings"
                + " scatter by " + NumberText.uncertainty(fit.residualSd()) + " (" + fit.observed().size()
                + " readings, " + fit.dof() + " degrees of freedom).")
            .with(grid.build()).with(FitCharts.residuals(fit))
            .with(StatisticsRenderer.sources("Analysis of variance", fit.analysisOfVariance()))
            .notes("Assumptions", List.of(fit.hasIntercept() ? "Squares are taken about the mean."
                : "Through the origin: squares are taken about 0, not about the mean.",
                "Each interval is for one coefficient by itself."));
    }
}
