package spanwright.notebook.show;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import spanwright.chart.InfluenceCharts;
import spanwright.error.InfluenceStudy;
import spanwright.error.MeasuredInfluence;
import spanwright.kernel.display.MimeBundle;
import spanwright.kernel.display.Renderer;
import spanwright.quantity.NumberText;

/** Shows what other channels, the supply or the load do to an output. */
public final class InfluenceRenderer implements Renderer {
    private static final String CAUTION = "Moving the other channels, the supply or the load of a unit in "
        + "service moves the processes behind them: do it on the bench, or with everything bypassed under "
        + "the site's procedures.";
    private static final String NOT_NONE = "\"Not shown\" is not none: the column at most says how large the "
        + "effect may be by the 95 % interval.";

    /** For the service loader. */
    public InfluenceRenderer() { }

    @Override
    public Optional<MimeBundle> render(Object value) {
        if (value instanceof InfluenceStudy study) {
            return Optional.of(study(study).bundle());
        }
        return value instanceof MeasuredInfluence one ? Optional.of(Sheet.saying(one + ".")
            .with(table(List.of(one))).notes("How to read it", List.of(NOT_NONE)).bundle())
            : Optional.empty();
    }

    private static Sheet study(InfluenceStudy study) {
        final List<MeasuredInfluence> shown = study.shown();
        final String rest = study.influences().stream().filter(i -> !i.isShown())
            .map(i -> i.name() + " at most " + NumberText.uncertainty(i.atMost().value()))
            .collect(Collectors.joining(", "));
        return Sheet.saying(study.subject() + ": " + (shown.isEmpty() ? "no influence is told from none"
                : shown.stream().map(MeasuredInfluence::toString).collect(Collectors.joining("; ")))
                + (rest.isEmpty() ? "" : "; not shown: " + rest + " % of span") + ".")
            .with(new Cautions(List.of(CAUTION))).with(table(study.influences()))
            .with(InfluenceCharts.effects(study))
            .notes("How to read it", List.of(NOT_NONE, "All influences are fitted together by least squares,"
                + " each as a straight line; a reading scatters about the fit by "
                + NumberText.uncertainty(study.scatter()) + " % of span."));
    }

    private static Grid table(List<MeasuredInfluence> influences) {
        final Grid.Builder grid = Grid.of("Change of the output, in % of its span", "influence",
            "#tried over", "#over that range", "#at most", "#per unit", "told from none?");
        for (MeasuredInfluence i : influences) {
            // Readings without scatter leave an uncertainty of rounding only, whose digits nobody wants.
            final double u = Math.max(i.perUnit().u(), 1e-3 * Math.abs(i.perUnit().value()));
            grid.row(List.of(i.name(), NumberText.plain(i.range(), 4) + " " + i.unit(),
                Figures.value(i.overRange().value(), u * i.range()),
                NumberText.uncertainty(i.atMost().value()), Figures.value(i.perUnit().value(), u) + " per "
                    + i.unit(), i.isShown() ? "yes" : "not shown"), i.isShown(),
                "95 % interval " + Figures.value(i.interval().lower(), u) + " to "
                    + Figures.value(i.interval().upper(), u) + " per " + i.unit());
        }
        return grid.build();
    }
}
