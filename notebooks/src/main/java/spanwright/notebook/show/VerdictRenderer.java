package spanwright.notebook.show;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import spanwright.chart.VerdictCharts;
import spanwright.kernel.display.MimeBundle;
import spanwright.kernel.display.Renderer;
import spanwright.kernel.document.Headline;
import spanwright.quantity.NumberText;
import spanwright.verdict.Grounds;
import spanwright.verdict.JudgedPoint;
import spanwright.verdict.RiskSurface;
import spanwright.verdict.Verdict;

/** Shows verdicts: the word with its mark, the sentence, then limit, rule, margin, risk and grounds. */
public final class VerdictRenderer implements Renderer {
    private static final double TAIL = 1e-4;

    /** For the service loader. */
    public VerdictRenderer() { }

    @Override
    public Optional<MimeBundle> render(Object value) {
        if (value instanceof RiskSurface surface && isDrawable(surface)) {
            return Optional.of(Sheet.saying(surface.toString()).with(VerdictCharts.riskSurface(surface))
                .bundle());
        }
        return value instanceof Verdict verdict ? Optional.of(bundle(verdict)) : Optional.empty();
    }

    private static boolean isDrawable(RiskSurface surface) {
        return surface.ratios().size() > 1 && surface.reliabilities().size() > 1
            && surface.cells().stream().anyMatch(c -> c.risk().isPresent());
    }

    /** The verdict with its sentence as a headline, which a headless run prints. */
    static MimeBundle bundle(Verdict verdict) {
        return new Headline(verdict.word().toString(), oneLine(verdict.sentence())).on(sheet(verdict)
            .bundle());
    }

    private static String oneLine(String sentence) {
        return sentence.replaceAll("\\s*\\R\\s*", " ");
    }

    static Sheet sheet(Verdict verdict) {
        Sheet sheet = Sheet.saying(verdict.word().mark() + " " + verdict.sentence());
        final Grounds grounds = verdict.grounds();
        sheet = verdict.parts().isEmpty() ? sheet.with(facts(verdict)) : sheet.with(parts(verdict));
        if (verdict.deciding().flatMap(JudgedPoint::limit).isPresent()) {
            sheet = sheet.with(VerdictCharts.bands(verdict));
        }
        if (verdict.points().size() > 1) {
            sheet = sheet.with(points(verdict));
        }
        return sheet.notes("What dominates", grounds.dominating()).notes("Warnings", grounds.warnings())
            .notes("Reservations", grounds.reservations()).notes("What would change it", verdict.changes())
            .notes("Assumptions", grounds.assumptions());
    }

    private static Grid facts(Verdict verdict) {
        final Grid.Builder grid = Grid.of("Decision", "", "value");
        grid.deciding("decision", verdict.word().mark() + " " + verdict.word());
        grid.row("limit", verdict.limit().map(Object::toString).orElse("none stated"));
        grid.row("rule", verdict.rule().map(Object::toString).orElse("none agreed"));
        verdict.deciding().ifPresent(p -> {
            grid.row("deciding", p.finding().toString());
            if (!p.finding().sources().isEmpty()) {
                grid.row("read from", String.join(", ", p.finding().sources()));
            }
        });
        grid.row("margin", verdict.margin().map(m -> NumberText.signed(m.value(), 3) + " % of span"
            + sigmas(verdict.marginInSigmas())).orElse("not determined"));
        grid.row("probability of conformity", probability(verdict.conformanceProbability()));
        verdict.deciding().ifPresent(p -> {
            grid.row("risk if accepted here", probability(p.specificFalseAccept()));
            grid.row("test uncertainty ratio", p.ratio().map(Object::toString).orElse("not determined"));
        });
        verdict.risks().point()
            .ifPresent(r -> grid.row("risk over the population, at this point", r.sentence()));
        verdict.risks().instrument()
            .ifPresent(r -> grid.row("risk over the population, whole instrument", r.sentence()));
        return grid.build();
    }

    private static String sigmas(OptionalDouble sigmas) {
        return sigmas.isPresent() ? ", " + NumberText.plain(sigmas.getAsDouble(), 3)
            + " standard uncertainties" : "";
    }

    private static String probability(OptionalDouble p) {
        if (p.isEmpty()) {
            return "not determined";
        }
        // Beyond four digits it is the shape of the far tails that would be printed, which nobody knows.
        return p.getAsDouble() < TAIL ? "below 0.01 %" : p.getAsDouble() > 1 - TAIL ? "above 99.99 %"
            : NumberText.plain(100 * p.getAsDouble(), 4) + " %";
    }

    private static Grid parts(Verdict verdict) {
        final Grid.Builder grid = Grid.of("Verdicts, the worst first", "what", "decision",
            "#margin (% of span)");
        for (Verdict part : verdict.parts()) {
            grid.row(List.of(part.measurand(), part.word().mark() + " " + part.word(), part.margin()
                .map(m -> NumberText.signed(m.value(), 3)).orElse("not determined")), false, part.sentence());
        }
        return grid.build();
    }

    private static Grid points(Verdict verdict) {
        final Grid.Builder grid = Grid.of("Points, the deciding one first", "point", "#error (% of span)",
            "#U (% of span)", "decision", "#margin (% of span)", "conformity");
        boolean first = true;
        for (JudgedPoint p : verdict.points()) {
            final List<String> cells = new ArrayList<>(List.of(p.finding().point(),
                NumberText.signed(p.finding().error(), 3),
                p.finding().uncertainty().map(u -> NumberText.uncertainty(u.expanded())).orElse("unknown"),
                p.word().mark() + " " + p.word(),
                p.margin().map(m -> NumberText.signed(m.value(), 3)).orElse("not determined"),
                probability(p.conformanceProbability())));
            grid.row(cells, first, String.join(", ", p.finding().sources()));
            first = false;
        }
        return grid.build();
    }
}
