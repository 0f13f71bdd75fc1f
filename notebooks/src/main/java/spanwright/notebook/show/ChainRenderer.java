package spanwright.notebook.show;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import spanwright.chain.ChainClaim;
import spanwright.chain.ChainError;
import spanwright.chain.Contribution;
import spanwright.chain.MethodFigure;
import spanwright.chart.ChainCharts;
import spanwright.kernel.display.MimeBundle;
import spanwright.kernel.display.Renderer;
import spanwright.kernel.document.Headline;
import spanwright.quantity.NumberText;
import spanwright.verdict.Word;

/** Shows what a chain of elements adds up to, and whether it meets its target. */
public final class ChainRenderer implements Renderer {
    /** For the service loader. */
    public ChainRenderer() { }

    @Override
    public Optional<MimeBundle> render(Object value) {
        if (value instanceof ChainClaim claim) {
            return Optional.of(new Headline(claim.word().toString(), claim.sentence()).on(claim(claim)
                .bundle()));
        }
        if (value instanceof ChainError error) {
            return Optional.of(error(error).bundle());
        }
        return Optional.empty();
    }

    private static Sheet claim(ChainClaim claim) {
        final Sheet sheet = Sheet.saying(claim.word().mark() + " " + claim.sentence());
        if (claim.word() == Word.NOT_DETERMINED) {
            return sheet.notes("What is missing", claim.missing());
        }
        final ChainError error = claim.error();
        return sheet.with(methods(error, claim.target().value())).with(ChainCharts.distribution(claim))
            .with(ChainCharts.contributions(error)).with(contributions(error))
            .notes("Words the figures carry", List.of(claim.mayPromise()
                ? "\"Will not exceed\" may be said: the worst case is within the target."
                : "\"Will not exceed\" may not be said: only the stated coverage, under the assumptions."))
            .notes("Where each figure comes from", error.contributions().stream().map(ChainRenderer::basis)
                .toList())
            .notes("Reservations", claim.reservations())
            .notes("Warnings", error.warnings())
            .notes("Assumptions", error.assumptions().stream().map(Object::toString).toList());
    }

    private static Sheet error(ChainError error) {
        return Sheet.saying("At " + error.at() + " the error of the chain stays within \u00b1"
                + NumberText.fixed(error.methods().gum().limit(), 3) + " % of span by GUM and \u00b1"
                + NumberText.fixed(error.methods().monteCarlo().limit(), 3) + " % of span by Monte Carlo, "
                + error.coverage() + ".")
            .with(methods(error, Double.NaN)).with(ChainCharts.contributions(error))
                .with(contributions(error))
            .notes("Warnings", error.warnings())
            .notes("Assumptions", error.assumptions().stream().map(Object::toString).toList());
    }

    private static Grid methods(ChainError error, double target) {
        final boolean judged = !Double.isNaN(target);
        final Grid.Builder grid = judged
            ? Grid.of("Four ways of adding, side by side", "method", "#\u00b1 % of span",
                "#target \u2212 figure", "rests on")
            : Grid.of("Four ways of adding, side by side", "method", "#\u00b1 % of span", "rests on");
        for (MethodFigure figure : error.methods().figures()) {
            final boolean decides = judged && figure.method() == MethodFigure.Method.MONTE_CARLO;
            final String limit = NumberText.fixed(figure.limit(), 3);
            grid.row(judged ? List.of(figure.method().toString(), limit,
                    NumberText.signed(target - figure.limit(), 3), figure.remark())
                    : List.of(figure.method().toString(), limit, figure.remark()), decides,
                String.format(Locale.ROOT, "%.17g", figure.limit()));
        }
        return grid.build();
    }

    private static Grid contributions(ChainError error) {
        final Grid.Builder grid = Grid.of("Causes of error, largest share first, in % of span", "cause",
            "distribution", "#known error", "#limit \u00b1", "#u", "#% of variance");
        boolean first = true;
        for (Contribution c : error.contributions()) {
            grid.row(List.of(c.label(), c.distribution(), NumberText.signed(c.knownError(), 3),
                NumberText.fixed(c.limit(), 3), NumberText.uncertainty(c.u()),
                NumberText.fixed(c.percentOfVariance(), 1)), first, basis(c));
            first = false;
        }
        return grid.build();
    }

    private static String basis(Contribution c) {
        return c.label() + " (" + c.influence() + " of " + String.join(", ", c.elements()) + "): "
            + c.basis().standing() + ", " + c.basis().source();
    }
}
