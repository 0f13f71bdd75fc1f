package spanwright.notebook.show;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import spanwright.chart.Picture;
import spanwright.chart.TrimCharts;
import spanwright.error.Finding;
import spanwright.error.TrimAdvice;
import spanwright.error.TrimPivot;
import spanwright.error.TrimTarget;
import spanwright.error.TrimmedPoint;
import spanwright.kernel.display.MimeBundle;
import spanwright.kernel.display.Renderer;
import spanwright.quantity.NumberText;
import spanwright.quantity.Span;
import spanwright.verdict.ToleranceInterval;

/** Shows what to adjust and what that leaves, and where a trim pivots. */
public final class TrimRenderer implements Renderer {
    private static final int DECIMALS = 4;

    /** For the service loader. */
    public TrimRenderer() { }

    @Override
    public Optional<MimeBundle> render(Object value) {
        if (value instanceof TrimAdvice advice) {
            return Optional.of(advice(advice).bundle());
        }
        return value instanceof TrimPivot pivot ? Optional.of(pivot(pivot).bundle()) : Optional.empty();
    }

    private static Sheet advice(TrimAdvice advice) {
        Sheet sheet = Sheet.saying(advice.run().channel() + ": " + advice.sentence()).with(targets(advice))
            .with(TrimCharts.beforeAndAfter(advice)).with(residuals(advice));
        final Finding<Picture> setting = TrimCharts.setting(advice);
        if (setting.isDetermined()) {
            sheet = sheet.with(setting.orElseThrow()).with(missed(advice));
        }
        return sheet.notes("Why", advice.reasons()).notes("Reckoned with", assumptions(advice))
            .notes("Mind", advice.warnings());
    }

    private static Grid targets(TrimAdvice advice) {
        final Span output = advice.run().output();
        final String caption = switch (advice.action()) {
            case ADJUST -> "What to set, one step a row";
            case DO_NOT_TOUCH -> "What the best setting would be: do not touch";
            case CANNOT_HELP -> "What the best setting would be: adjustment cannot help";
        };
        final Grid.Builder grid = Grid.of(caption, "#apply", "#set the reading to", "#it reads now",
            "#change (" + output.symbol() + ")", "#change (% of span)");
        for (TrimTarget t : advice.targets()) {
            final double change = t.setTo() - t.readsNow();
            grid.row(List.of(NumberText.fixed(t.apply(), 3) + " " + t.inputUnit(),
                NumberText.fixed(t.setTo(), DECIMALS) + " " + t.outputUnit(),
                NumberText.fixed(t.readsNow(), DECIMALS), NumberText.signed(change, DECIMALS),
                NumberText.signed(output.ofSpan(change).value(), 3)),
                advice.action() == TrimAdvice.Action.ADJUST, "set to " + t.setTo());
        }
        return grid.build();
    }

    private static Grid residuals(TrimAdvice advice) {
        final boolean temperatures = advice.points().stream().anyMatch(p -> p.temperature().value() != 0);
        final List<String> heads = new ArrayList<>(List.of("#input (%)", "direction"));
        if (temperatures) {
            heads.add("#from calibration (K)");
        }
        heads.addAll(List.of("#as found", "#after the best setting", "permitted", "after is"));
        final boolean fixed = !advice.fixedBy().isEmpty();
        if (fixed) {
            heads.add("");
        }
        final Grid.Builder grid = Grid.of("Errors in % of span" + (fixed ? "; the marked ones fix the "
            + "setting: one cannot shrink but the other grows" : ""), heads.toArray(String[]::new));
        for (int i = 0; i < advice.points().size(); i++) {
            final TrimmedPoint p = advice.points().get(i);
            final List<String> row = new ArrayList<>(List.of(NumberText.plain(p.position(), 4),
                p.direction().toString()));
            if (temperatures) {
                row.add(NumberText.signed(p.temperature().value(), 1));
            }
            row.addAll(
                List.of(NumberText.signed(p.before(), DECIMALS), NumberText.signed(p.after(), DECIMALS),
                    p.permitted().map(ToleranceInterval::toString).orElse("not stated"), p.isPermittedAfter()
                        .map(ok -> ok ? "\u2713 within" : "\u2717 beyond").value().orElse("not determined")));
            if (fixed) {
                row.add(advice.fixedBy().contains(i) ? "fixes the setting" : "");
            }
            grid.row(row, advice.fixedBy().contains(i), "after " + p.after());
        }
        return grid.build();
    }

    private static Grid missed(TrimAdvice advice) {
        final TrimTarget target = advice.targets().get(0);
        final double step = advice.trim().settability();
        final Grid.Builder grid = Grid.of("What other readings at " + NumberText.fixed(target.apply(), 3)
            + " "
            + target.inputUnit() + " would leave", "setting", "#reading (" + target.outputUnit() + ")",
            "#largest error (% of span)", "#in tolerances");
        grid.deciding(row(advice, "the target", target.setTo()));
        if (step > 0) {
            grid.row(row(advice, "missed low by what can be set", target.setTo() - step));
            grid.row(row(advice, "missed high by what can be set", target.setTo() + step));
        }
        grid.row(row(advice, "nulled at " + NumberText.fixed(target.apply(), 3) + " " + target.inputUnit(),
            nulled(advice, target)));
        grid.row(row(advice, "left as found", target.readsNow()));
        return grid.build();
    }

    /** The reading without error there, the setting that is made where nobody reckons. */
    private static double nulled(TrimAdvice advice, TrimTarget target) {
        return advice.run().transfer().ideal(advice.run().input(), advice.run().output(), target.apply());
    }

    private static String[] row(TrimAdvice advice, String name, double setTo) {
        double largest = 0;
        OptionalDouble use = OptionalDouble.of(0);
        for (TrimmedPoint p : advice.ifSetTo(setTo).orElseThrow()) {
            largest = Math.max(largest, Math.abs(p.after()));
            use = p.permitted().isEmpty() || use.isEmpty() ? OptionalDouble.empty()
                : OptionalDouble.of(Math.max(use.getAsDouble(), inTolerances(p)));
        }
        return new String[] {name, NumberText.fixed(setTo, DECIMALS), NumberText.fixed(largest, DECIMALS),
            use.isEmpty() ? "not determined" : NumberText.fixed(use.getAsDouble(), 2)};
    }

    private static double inTolerances(TrimmedPoint p) {
        final ToleranceInterval t = p.permitted().orElseThrow();
        final double half = t.halfWidth().orElseThrow();
        return Math.abs(p.after() - (t.lower().orElseThrow() + half)) / half;
    }

    private static List<String> assumptions(TrimAdvice advice) {
        final List<String> said = new ArrayList<>();
        said.add(advice.means() + (advice.trim().pivot().isPresent()
            ? "; the pivot is the data sheet's, or found from two records" : ""));
        final var service = advice.trim().service();
        final boolean sameTemperature = service.coldest().value() == 0 && service.warmest().value() == 0;
        said.add("service from " + NumberText.plain(service.fromPercent(), 3) + " to "
            + NumberText.plain(service.toPercent(), 3) + " % of the range, " + (sameTemperature
                ? "at the temperature of the calibration" : NumberText.signed(service.coldest().value(), 1)
                + " to " + NumberText.signed(service.warmest().value(), 1)
                + " K from the temperature of the calibration"));
        said.add("settability " + orNotGiven(advice.trim().settability(), advice.run().output().symbol())
            + "; uncertainty of the measured errors " + orNotGiven(advice.trim().uncertainty(), "% of span"));
        said.add("tolerance " + advice.run().tolerance().map(Object::toString).orElse("not stated"));
        return said;
    }

    private static String orNotGiven(double figure, String unit) {
        return figure == 0 ? "not given" : NumberText.uncertainty(figure) + " " + unit;
    }

    private static Sheet pivot(TrimPivot pivot) {
        final String unit = " (" + pivot.unit() + ")";
        final Grid.Builder grid = Grid.of("What the turn did, point by point", "#output before" + unit,
            "#change" + unit, "#by the line" + unit);
        pivot.changes().forEach(c -> grid.row(NumberText.fixed(c.output(), DECIMALS),
            NumberText.signed(c.change(), DECIMALS),
            NumberText.signed(pivot.line().at(c.output()).value(), DECIMALS)));
        return Sheet.saying(pivot.channel() + ": the turn left " + NumberText.fixed(pivot.pivot(), 2) + " "
                + pivot.unit() + " where it was (95 % interval " + pivot.interval() + " " + pivot.unit()
                + ") and multiplied by " + NumberText.significant(pivot.gain(), 6) + ".")
            .with(TrimCharts.pivot(pivot)).with(grid.build());
    }
}
