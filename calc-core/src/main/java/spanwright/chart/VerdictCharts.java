package spanwright.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;
import spanwright.verdict.DecisionRule;
import spanwright.verdict.GlobalRisk;
import spanwright.verdict.GuardBand;
import spanwright.verdict.JudgedPoint;
import spanwright.verdict.MeasurementUncertainty;
import spanwright.verdict.NonBinary;
import spanwright.verdict.Reliability;
import spanwright.verdict.RiskSurface;
import spanwright.verdict.RootDifference;
import spanwright.verdict.SimpleAcceptance;
import spanwright.verdict.ToleranceInterval;
import spanwright.verdict.TwoPercentGuardBand;
import spanwright.verdict.Verdict;
import spanwright.verdict.Word;
import spanwright.verdict.WorstCase;

/** Pictures of decisions and their risks. Risks are in percent of all measured, errors in percent of span. */
public final class VerdictCharts {
    private static final Ink[] INKS = {Ink.VERMILION, Ink.BLUE, Ink.GREEN, Ink.BLACK};
    private static final int HEIGHT = 330;
    private static final int MOST_ROWS = 40;
    private static final double FIRST_RATIO = 1.05;
    private static final double LAST_RATIO = 10;
    private static final double LOWEST_RISK = 0.01;

    private VerdictCharts() { }

    /**
     * False-accept and false-reject risk of a rule against test uncertainty ratio and in-tolerance
     * proportion, as lines of equal risk over tints; the line of 2 % is the thick one.
     *
     * @param surface at least two ratios and two proportions
     * @throws IllegalArgumentException if there are fewer, or the rule applies at none of them
     */
    public static Picture riskSurface(RiskSurface surface) {
        Checks.atLeast("number of ratios", surface.ratios().size(), 2);
        Checks.atLeast("number of in-tolerance proportions", surface.reliabilities().size(), 2);
        final RiskSurface.Cell worst = surface.cells().stream().filter(c -> c.risk().isPresent())
            .max((a, b) -> Double.compare(a.risk().get().falseAccept(), b.risk().get().falseAccept()))
            .orElseThrow(() -> new IllegalArgumentException("no risk to draw: " + surface));
        final long unknown = RiskPanel.unknown(surface);
        return new Picture(capital(name(surface.rule())) + ": false accept is at most "
            + percent(worst.risk().orElseThrow().falseAccept()) + " of all measured, at a ratio of "
            + NumberText.plain(worst.ratio(), 3) + " and " + NumberText.plain(100 * worst.reliability(), 4)
            + " % in tolerance" + (unknown == 0 ? "." : "; white where the risk is not determined."),
            "False-accept risk above, false-reject risk below, as lines of equal risk against test"
                + " uncertainty ratio and " + surface.kind()
                    + " in-tolerance proportion; darker is larger. " + surface
                + " Not determined at " + unknown + " of " + surface.cells().size() + " pairs.",
            List.of(new RiskPanel(surface, GlobalRisk::falseAccept).chart("false accept", Ink.VERMILION),
                new RiskPanel(surface, GlobalRisk::falseReject).chart("false reject", Ink.BLUE)));
    }

    /**
     * False accept and false reject of several rules against the test uncertainty ratio from 1 to 10, side by
     * side on the same scale, for a centred normal population.
     *
     * @param rules          one to four; a rule solved for a population of its own has no place here
     * @param reliability    true in-tolerance proportion, in (0, 1)
     * @param coverageFactor k = U / u of the measurement
     */
    public static Picture rules(List<? extends DecisionRule> rules, double reliability,
        double coverageFactor) {
        checkNumber(rules);
        final List<RiskSurface> all = rules.stream().map(r -> (DecisionRule) r)
            .map(r -> RiskSurface.of(r, Reliability.TRUE, coverageFactor, ratios(), List.of(reliability)))
            .toList();
        final RiskLines accept = new RiskLines("false accept (% of all)", LOWEST_RISK, 100);
        final RiskLines reject = new RiskLines("false reject (% of all)", LOWEST_RISK, 100);
        for (int i = 0; i < all.size(); i++) {
            accept.add(name(rules.get(i)), points(all.get(i), GlobalRisk::falseAccept), INKS[i]);
            reject.add(name(rules.get(i)), points(all.get(i), GlobalRisk::falseReject), INKS[i]);
        }
        final String population = NumberText.plain(100 * reliability, 4)
            + " % of the population in tolerance";
        return new Picture("With " + population + ", false accept and false reject at a ratio of 4: "
            + String.join("; ",
            all.stream().map(VerdictCharts::atFour).toList()) + ".",
            "False accept above, false reject below, on the same logarithmic scale against the test"
                + " uncertainty ratio, with the line of 2 %, for " + population + ": "
                + String.join(", ", rules.stream().map(VerdictCharts::name).toList()) + ".",
            List.of(accept.chart(HEIGHT, true), reject.chart(HEIGHT, false)));
    }

    /**
     * The largest false-accept risk of any centred normal population against the test uncertainty ratio, for
     * several rules, with the line of 2 %.
     *
     * @param rules          one to four
     * @param coverageFactor k = U / u of the measurement
     */
    public static Picture worstCases(List<? extends DecisionRule> rules, double coverageFactor) {
        checkNumber(rules);
        Checks.positive("coverage factor", coverageFactor);
        final RiskLines lines = new RiskLines("largest false accept (% of all)", LOWEST_RISK, 100);
        final List<String> words = new ArrayList<>();
        for (int i = 0; i < rules.size(); i++) {
            final DecisionRule rule = rules.get(i);
            final List<RiskLines.At> points = new ArrayList<>();
            for (double ratio : ratios()) {
                largest(rule, ratio, coverageFactor)
                    .ifPresent(r -> points.add(new RiskLines.At(ratio, 100 * r)));
            }
            lines.add(name(rule), points, INKS[i]);
            final OptionalDouble four = largest(rule, 4, coverageFactor);
            words.add(name(rule) + " "
                + (four.isPresent() ? percent(four.getAsDouble()) : "does not apply"));
        }
        return Picture.of("At a ratio of 4 the largest false-accept risk of any centred normal population: "
            + String.join("; ", words) + ".",
                "Largest false-accept risk over every spread of a centred normal"
            + " population against the test uncertainty ratio, on a logarithmic scale, with the line of 2 %.",
            lines.chart(Plot.HEIGHT, true));
    }

    /**
     * The judged points of a verdict, the deciding one first: limit, guard band, what the rule accepts, each
     * error with its interval, and the decision by mark and word. Of a verdict over others, the deciding
     * point of each.
     *
     * @throws IllegalArgumentException if nothing was judged
     */
    public static Picture bands(Verdict verdict) {
        Objects.requireNonNull(verdict, "verdict");
        final List<BandPlot.Row> all = verdict.parts().isEmpty()
            ? verdict.points().stream().map(p -> new BandPlot.Row(p.finding().point(), p)).toList()
            : verdict.parts().stream().filter(p -> p.deciding().isPresent())
                .map(p -> row(p, p.deciding().orElseThrow())).toList();
        if (all.isEmpty()) {
            throw new IllegalArgumentException("nothing was judged: " + verdict.sentence());
        }
        final List<BandPlot.Row> shown = all.subList(0, Math.min(MOST_ROWS, all.size()));
        final String margin = verdict.margin().map(m -> ", " + NumberText.significant(Math.abs(m.value()), 2)
            + " % of span " + (m.value() >= 0 ? "to spare" : "too much")).orElse("");
        return Picture.of(verdict.word() + ": " + verdict.measurand()
            + (verdict.word() == Word.NOT_DETERMINED ? "; open is " : "; deciding is ") + shown.get(0).name()
            + margin + (shown.size() < all.size() ? "; the first " + shown.size() + " of " + all.size() : "")
            + ".",
            "Each judged point as its error with the coverage interval between its limits, the guard band and"
                + " the accepted values tinted; full dots are accepted. "
                + String.join("; ", shown.stream().map(r -> r.name() + ": " + r.point().word()).toList())
                + ".",
            new BandPlot("error (% of span)", shown));
    }

    private static BandPlot.Row row(Verdict part, JudgedPoint point) {
        return new BandPlot.Row(part.measurand(), point);
    }

    private static void checkNumber(List<? extends DecisionRule> rules) {
        Checks.within("number of rules", rules.size(), 1, INKS.length);
    }

    /** Even steps of the logarithm: risks change fastest at small ratios. */
    private static List<Double> ratios() {
        final List<Double> ratios = new ArrayList<>();
        for (int i = 0; i <= 36; i++) {
            ratios.add(FIRST_RATIO * Math.pow(LAST_RATIO / FIRST_RATIO, i / 36.0));
        }
        return ratios;
    }

    private static List<RiskLines.At> points(RiskSurface surface, ToDoubleFunction<GlobalRisk> risk) {
        return surface.cells().stream().filter(c -> c.risk().isPresent())
            .map(c -> new RiskLines.At(c.ratio(), 100 * risk.applyAsDouble(c.risk().get()))).toList();
    }

    private static String atFour(RiskSurface surface) {
        return name(surface.rule()) + " " + RiskSurface.of(surface.rule(), surface.kind(),
            surface.coverageFactor(), List.of(4.0), surface.reliabilities()).cell(0, 0).risk()
            .map(r -> percent(r.falseAccept()) + " and " + percent(r.falseReject())).orElse("does not apply");
    }

    private static OptionalDouble largest(DecisionRule rule, double ratio, double coverageFactor) {
        final ToleranceInterval limit = ToleranceInterval.plusMinus(1);
        final MeasurementUncertainty u =
            MeasurementUncertainty.of(1 / (ratio * coverageFactor), coverageFactor);
        return rule.acceptance(limit, u).unmet().isPresent() ? OptionalDouble.empty()
            : OptionalDouble.of(WorstCase.overCentredNormal(limit, rule, u).falseAccept());
    }

    /** A rule in a few words, for labels. */
    private static String name(DecisionRule rule) {
        if (rule instanceof SimpleAcceptance) {
            return "simple acceptance";
        }
        if (rule instanceof GuardBand band) {
            return band.ratio() == 0 ? "no guard band"
                : "guard band w = " + (band.ratio() == 1 ? "" : NumberText.plain(band.ratio(), 3) + " ")
                    + "U";
        }
        if (rule instanceof TwoPercentGuardBand) {
            return "guard band w = M U";
        }
        if (rule instanceof RootDifference) {
            return "root difference";
        }
        return rule instanceof NonBinary ? "unconditional pass of four answers" : rule.sentence();
    }

    private static String capital(String words) {
        return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    }

    private static String percent(double probability) {
        return 100 * probability < LOWEST_RISK ? "below 0.01 %"
            : NumberText.significant(100 * probability, 3) + " %";
    }
}
