package spanwright.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import spanwright.chain.Bin;
import spanwright.chain.ChainClaim;
import spanwright.chain.ChainError;
import spanwright.chain.Contribution;
import spanwright.chain.InputError;
import spanwright.chain.MethodFigure;
import spanwright.chain.TemperatureError;
import spanwright.quantity.NumberText;

/** Pictures of the error of a measuring chain. Errors are in percent of the chain's output span. */
public final class ChainCharts {
    private static final int BINS = 80;
    private static final int SHOWN = 12;

    private ChainCharts() { }

    /**
     * Distribution of the chain's error by Monte Carlo, with what the four methods say it stays within, and
     * the target.
     *
     * @throws IllegalStateException if the claim is not determined
     */
    public static Picture distribution(ChainClaim claim) {
        final ChainError error = claim.error();
        final List<Bin> bins = error.histogram(BINS);
        final double[] x = new double[2 * bins.size()];
        final double[] y = new double[2 * bins.size()];
        double peak = 0;
        for (int i = 0; i < bins.size(); i++) {
            final Bin bin = bins.get(i);
            x[2 * i] = bin.from();
            x[2 * i + 1] = bin.to();
            y[2 * i] = bin.density();
            y[2 * i + 1] = bin.density();
            peak = Math.max(peak, bin.density());
        }
        double widest = claim.target().value();
        for (MethodFigure figure : error.methods().figures()) {
            widest = Math.max(widest, figure.limit());
        }
        final double reach = Math.max(widest, Math.max(-x[0], x[x.length - 1])) * 1.12;
        final Plot plot = new Plot("error at the input card (% of span)",
            "probability density (1 / % of span)", 480)
            .xRange(-reach, reach).yRange(0, peak * 1.75).area("Monte Carlo", x, y, Ink.BLUE);
        final Ink[] inks = {Ink.VERMILION, Ink.ORANGE, Ink.GREEN, Ink.BLUE};
        double height = peak * 1.60;
        int k = 0;
        for (MethodFigure figure : error.methods().figures()) {
            plot.note(PlotNote.interval(-figure.limit(), figure.limit(), height,
                figure.method() + " \u00b1" + NumberText.fixed(figure.limit(), 3),
                    inks[k % inks.length].colour()));
            height -= peak * 0.145;
            k++;
        }
        final double target = claim.target().value();
        final String label = NumberText.fixed(target, 2);
        plot.note(PlotNote.verticalLimit(target, "target +" + label, Ink.BLACK.colour(), false, 0))
            .note(PlotNote.verticalLimit(-target, "target " + NumberText.MINUS + label, Ink.BLACK.colour(),
                true, 0));
        return Picture.of(
            "By Monte Carlo, " + error.coverage() + ", the error stays within \u00b1"
                + NumberText.fixed(error.methods().monteCarlo().limit(), 3) + " % of span, "
                + (error.covered().value() <= target ? "inside" : "outside") + " the target of \u00b1" + label
                + " % of span.",
            "Histogram of the simulated error of the chain with four intervals: " + figures(error) + ".",
            plot.chart());
    }

    private static String figures(ChainError error) {
        final List<String> words = new ArrayList<>();
        error.methods().figures().forEach(f -> words.add(f.method() + " " + NumberText.fixed(f.limit(), 3)));
        return String.join(", ", words) + " % of span";
    }

    /** What the error is made of: standard uncertainty of each cause, largest share of the variance first. */
    public static Picture contributions(ChainError error) {
        Objects.requireNonNull(error, "error");
        final List<Contribution> all = error.contributions();
        final List<BarPlot.Bar> bars = new ArrayList<>();
        for (Contribution c : all.subList(0, Math.min(SHOWN, all.size()))) {
            bars.add(new BarPlot.Bar(c.label(), 0, c.u(), NumberText.fixed(c.percentOfVariance(), 1) + " %",
                Ink.BLUE));
        }
        final Contribution first = all.get(0);
        return Picture.of(first.label() + " makes " + NumberText.fixed(first.percentOfVariance(), 0)
                + " % of the variance of the chain's error" + (all.size() > SHOWN ? "; the smallest "
                + (all.size() - SHOWN) + " of " + all.size() + " causes are not drawn" : "") + ".",
            "Standard uncertainties of the causes of error, largest first, with their share of the variance.",
            new BarPlot("standard uncertainty (% of span), with the share of the variance", bars));
    }

    /** How far each cause alone moves the error at its limits. */
    public static Picture tornado(ChainError error) {
        Objects.requireNonNull(error, "error");
        final double known = error.methods().knownError();
        final List<Contribution> all = new ArrayList<>(error.contributions());
        all.sort((a, b) -> Double.compare(b.limit(), a.limit()));
        final List<BarPlot.Bar> bars = new ArrayList<>();
        for (Contribution c : all.subList(0, Math.min(SHOWN, all.size()))) {
            bars.add(new BarPlot.Bar(c.label(), c.tornadoLow(known), c.tornadoHigh(known),
                "\u00b1" + NumberText.fixed(c.limit(), 3), Ink.BLUE));
        }
        return Picture.of(all.get(0).label() + " alone moves the error by up to "
                + NumberText.fixed(all.get(0).limit(), 3) + " % of span either way from the known error of "
                + NumberText.signed(known, 3) + " % of span.",
            "Each cause at its lower and upper limit, the others at their expectation; widest first.",
            new BarPlot("error of the chain (% of span)", bars));
    }

    /**
     * Error against outdoor temperature: known error, expanded uncertainty about it, worst case, and the
     * target.
     *
     * @throws IllegalArgumentException if the chain has no ambient range
     */
    public static Picture temperature(ChainClaim claim) {
        final ChainError error = claim.error();
        final List<TemperatureError> curve = error.byTemperature();
        if (curve.isEmpty()) {
            throw new IllegalArgumentException("the chain " + error.chain()
                + " has no error against temperature to draw");
        }
        final double[] t = curve.stream().mapToDouble(c -> c.outdoor().value()).toArray();
        final double[] worst = curve.stream().mapToDouble(TemperatureError::worstCase).toArray();
        final double[] below = new double[worst.length];
        double largest = claim.target().value();
        for (int i = 0; i < worst.length; i++) {
            below[i] = -worst[i];
            largest = Math.max(largest, worst[i]);
        }
        final double range = Steps.symmetricRange(largest);
        final Plot plot = new Plot("outdoor temperature (\u00b0C)", "error (% of span)").yRange(-range, range)
            .line("known", t, curve.stream().mapToDouble(TemperatureError::knownError).toArray(), Ink.BLACK)
            .line("lower", t, curve.stream().mapToDouble(TemperatureError::lower).toArray(), Ink.BLUE)
            .line("upper", t, curve.stream().mapToDouble(TemperatureError::upper).toArray(), Ink.BLUE)
            .line("worst case, high", t, worst, Ink.VERMILION)
            .line("worst case, low", t, below, Ink.VERMILION);
        addTarget(plot, claim.target().value());
        final int last = t.length - 1;
        plot.note(label("worst case", t[last], worst[last], Ink.VERMILION, -6))
            .note(label(error.coverage().toString(), t[last], curve.get(last).upper(), Ink.BLUE, 20))
            .note(label("known error", t[last], curve.get(last).knownError(), Ink.BLACK, -6));
        TemperatureError widest = curve.get(0);
        for (TemperatureError c : curve) {
            widest = Math.max(c.upper(), -c.lower()) > Math.max(widest.upper(), -widest.lower()) ? c : widest;
        }
        return Picture.of(
            "At " + widest.outdoor() + " outdoor the error is " + NumberText.signed(widest.knownError(), 3)
                + " \u00b1 " + NumberText.fixed(widest.expanded(), 3) + " % of span at " + error.coverage()
                + ", the most within the range.",
            "Known error, interval and worst case of the chain against outdoor temperature, with the target.",
            plot.chart());
    }

    /** Error at inputs from 0 to 100 %: GUM figure, root sum of squares, worst case, and the target. */
    public static Picture byInput(ChainClaim claim) {
        final ChainError error = claim.error();
        final List<InputError> curve = error.byInput();
        final double[] x = curve.stream().mapToDouble(InputError::inputPercent).toArray();
        final double largest = Math.max(claim.target().value(),
            curve.stream().mapToDouble(InputError::worstCase).max().orElseThrow());
        final Plot plot = new Plot("input (% of range)", "error stays within \u00b1 (% of span)")
            .yRange(0, Steps.symmetricRange(largest))
            .line("worst case", x, curve.stream().mapToDouble(InputError::worstCase).toArray(), Ink.VERMILION)
            .line("GUM", x, curve.stream().mapToDouble(InputError::gum).toArray(), Ink.BLUE)
            .line("RSS", x, curve.stream().mapToDouble(InputError::rootSumOfSquares).toArray(), Ink.ORANGE);
        plot.note(PlotNote.horizontalLimit(claim.target().value(),
            "target " + NumberText.fixed(claim.target().value(), 2), Ink.BLACK.colour(), true));
        final InputError mid = curve.get(curve.size() / 3);
        final InputError far = curve.get(curve.size() * 9 / 10);
        plot.note(label("worst case", mid.inputPercent(), mid.worstCase(), Ink.VERMILION, -8))
            .note(label("GUM", mid.inputPercent(), mid.gum(), Ink.BLUE, -8))
            .note(label("root sum of squares", far.inputPercent(), far.rootSumOfSquares(), Ink.ORANGE, 40));
        return Picture.of(
            "The error is largest at " + NumberText.plain(error.at().inputPercent(), 3)
                + " % of the input range: GUM \u00b1" + NumberText.fixed(error.methods().gum().limit(), 3)
                + " % of span.",
            "What the error stays within at each input, by three methods, and the target.", plot.chart());
    }

    private static PlotNote label(String text, double x, double y, Ink ink, int down) {
        return PlotNote.text(text, x, y, PlotNote.Anchor.RIGHT, ink.colour(), down);
    }

    private static void addTarget(Plot plot, double target) {
        plot.note(PlotNote.horizontalLimit(target, "", Ink.BLACK.colour(), true))
            .note(PlotNote.horizontalLimit(-target, "", Ink.BLACK.colour(), false))
            .note(PlotNote.leftLabel("target \u00b1" + NumberText.fixed(target, 2), target,
                Ink.BLACK.colour()));
    }
}
