package spanwright.notebook.show;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import spanwright.chart.LoopCharts;
import spanwright.kernel.display.MimeBundle;
import spanwright.kernel.display.Renderer;
import spanwright.loop.DigitalSignal;
import spanwright.loop.FaultTable;
import spanwright.loop.GroundLoop;
import spanwright.loop.KneeCurve;
import spanwright.loop.LoopChecks;
import spanwright.loop.LoopInverse;
import spanwright.loop.LoopMargins;
import spanwright.loop.MarginDistribution;
import spanwright.loop.ReceiverReading;
import spanwright.quantity.NumberText;

/**
 * Shows what was asked about a loop: faults, inverse questions, the knee, the digital signal, grounds, the
 * margin as a distribution. Cautions stand with each.
 */
public final class LoopQuestionRenderer implements Renderer {
    /** For the service loader. */
    public LoopQuestionRenderer() { }

    @Override
    public Optional<MimeBundle> render(Object value) {
        return sheet(value).map(Sheet::bundle);
    }

    private static Optional<Sheet> sheet(Object value) {
        if (value instanceof FaultTable table) {
            return Optional.of(faults(table));
        }
        if (value instanceof LoopInverse inverse) {
            return Optional.of(inverse(inverse));
        }
        if (value instanceof KneeCurve curve) {
            return Optional.of(knee(curve));
        }
        if (value instanceof DigitalSignal signal) {
            return Optional.of(digital(signal));
        }
        if (value instanceof GroundLoop ground) {
            return Optional.of(ground(ground));
        }
        if (value instanceof MarginDistribution margin) {
            return Optional.of(distribution(margin));
        }
        if (value instanceof LoopChecks checks) {
            return Optional.of(LoopRenderer.cautioned(checks.items().isEmpty() ? checks.toString()
                : checks.loop() + ": " + checks.refusals().size() + " of " + checks.items().size()
                    + " checks refuse it.").with(checks(checks)));
        }
        return value instanceof LoopMargins margins ? Optional.of(LoopRenderer.cautioned("Voltages of "
            + margins.loop() + ".").with(LoopRenderer.margins(margins))) : Optional.empty();
    }

    private static Sheet faults(FaultTable table) {
        final Grid.Builder grid = Grid.of("Faults, one at a time", "fault", "readings",
            "the transmitter's loop lives on", "flagged as a failure", "note");
        for (FaultTable.Row row : table.rows()) {
            final Optional<Boolean> flagged = row.isFlagged(table.milliamps());
            final boolean wrong = row.readings().stream().anyMatch(r -> r.milliamps().isPresent()
                && Math.abs(r.milliamps().getAsDouble() - table.milliamps()) > 1e-6);
            grid.row(List.of(row.fault().toString(), row.readings().stream().map(ReceiverReading::toString)
                .collect(Collectors.joining("; ")), row.primary().toString(),
                flagged.map(f -> !wrong ? "nothing to flag" : f ? "yes" : "no").orElse("not determined"),
                row.note()), wrong && flagged.isPresent() && !flagged.get(), "");
        }
        return LoopRenderer.cautioned(LoopCharts.faults(table).title()).with(LoopCharts.faults(table))
            .with(grid.build());
    }

    private static Sheet inverse(LoopInverse inverse) {
        final Grid.Builder grid = Grid.of("How far one thing alone may go, every limit against the loop",
            "what", "limit");
        answers(grid, "longest ", inverse.longestCables(), "m one way");
        answers(grid, "smallest area of ", inverse.smallestAreas(), "mm\u00b2");
        grid.row("smallest nominal supply", inverse.smallestSupply().map(v -> NumberText.fixed(v, 2) + " V")
            .orElse("none to ask about, or none would do"));
        answers(grid, "largest load of ", inverse.largestLoads(), "\u03a9");
        grid.row("input-loop-powered isolators in the nest", inverse.isolators().map(Object::toString)
            .orElse("there is none to ask about"));
        return LoopRenderer.cautioned(inverse.loop() + " carries "
            + NumberText.plain(inverse.fromMilliamps(), 4) + " to "
            + NumberText.plain(inverse.toMilliamps(), 4)
            + " mA, every limit against it, with any one of these alone: "
            + grid.build().rows().stream()
                .map(r -> r.cells().get(0) + " " + r.cells().get(1)).collect(Collectors.joining("; ")) + ".")
            .with(grid.build());
    }

    private static void answers(Grid.Builder grid, String what, List<LoopInverse.Answer> answers,
                                String unit) {
        answers.forEach(a -> grid.row(what + a.element(), a.value()
            .map(v -> NumberText.plain(v, 4) + " " + unit).orElse("none would do")));
    }

    private static Sheet knee(KneeCurve curve) {
        final Sheet sheet = LoopRenderer.cautioned(curve.toString());
        if (curve.points().size() < 2) {
            return sheet;
        }
        final Grid.Builder grid = Grid.of("What " + curve.receiver() + " reads", "#asked for (mA)",
            "#read (mA)", "#error (% of span)");
        curve.points().stream().filter(p -> isRound(p.askedMilliamps())).forEach(p -> grid.row(
            NumberText.plain(p.askedMilliamps(), 4), NumberText.fixed(p.readMilliamps(), 2),
            NumberText.fixed(p.errorPercentOfSpan(), 2)));
        return sheet.with(LoopCharts.knee(curve)).with(grid.build());
    }

    /** Every fourth part of the span, and the currents above it. */
    private static boolean isRound(double milliamps) {
        return milliamps > 20 || Math.abs(milliamps / 4 - Math.rint(milliamps / 4)) < 1e-9;
    }

    private static Sheet digital(DigitalSignal signal) {
        final OptionalDouble metres = signal.longestMetres();
        return LoopRenderer.cautioned(signal.loop() + (signal.checks().isAllowed()
            ? ": nothing is known that stops the digital signal." : " does not let the digital signal "
                + "through.") + " Longest cable by the RC limit: " + (metres.isPresent()
            ? NumberText.significant(metres.getAsDouble(), 3) + " m." : "not determined."))
            .with(checks(signal.checks()));
    }

    private static Grid checks(LoopChecks checks) {
        final Grid.Builder grid = Grid.of("Checks", "rule", "outcome", "why");
        checks.items().forEach(i -> grid.row(List.of(i.rule(), i.outcome().toString(), i.sentence()),
            i.outcome() == LoopChecks.Outcome.REFUSED, ""));
        return grid.build();
    }

    private static Sheet ground(GroundLoop ground) {
        final OptionalDouble left = ground.isolatedErrorPercentOfSpan();
        final Grid grid = Grid.of("Error from the ground potential", "path", "#error (% of span)")
            .row("not isolated, " + NumberText.plain(ground.pathOhms(), 5) + " \u03a9",
                NumberText.significant(ground.errorPercentOfSpan(), 3))
            .row(ground.isolator().map(i -> "isolated by " + i.name()).orElse("isolated"), left.isPresent()
                ? NumberText.significant(left.getAsDouble(), 3) : "not determined").build();
        return LoopRenderer.cautioned(ground + ".").with(grid).notes("Isolation", List.of(
            ground.workingVoltage().toString()));
    }

    private static Sheet distribution(MarginDistribution margin) {
        return LoopRenderer.cautioned(margin + ".").with(LoopCharts.marginDistribution(margin))
            .notes("Warnings", margin.result().warnings());
    }
}
