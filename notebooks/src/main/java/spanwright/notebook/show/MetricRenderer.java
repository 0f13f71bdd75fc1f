package spanwright.notebook.show;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import spanwright.chart.CourseCharts;
import spanwright.chart.StatisticsCharts;
import spanwright.error.DeadBand;
import spanwright.error.Hysteresis;
import spanwright.error.NonRepeatability;
import spanwright.error.PointErrors;
import spanwright.error.ReadingError;
import spanwright.error.WarmUp;
import spanwright.fit.Sample;
import spanwright.kernel.display.MimeBundle;
import spanwright.kernel.display.Renderer;
import spanwright.quantity.NumberText;
import spanwright.readings.CellAddress;
import spanwright.readings.Direction;

/** Shows the figures of one channel that have points behind them: hysteresis, repeatability, dead band. */
public final class MetricRenderer implements Renderer {
    private static final int DECIMALS = 3;

    /** For the service loader. */
    public MetricRenderer() { }

    @Override
    public Optional<MimeBundle> render(Object value) {
        if (value instanceof Hysteresis hysteresis) {
            return Optional.of(hysteresis(hysteresis).bundle());
        }
        if (value instanceof NonRepeatability figure) {
            return Optional.of(repeatability(figure).bundle());
        }
        if (value instanceof DeadBand band) {
            return Optional.of(deadBand(band).bundle());
        }
        if (value instanceof WarmUp warmUp) {
            return Optional.of(warmUp(warmUp).bundle());
        }
        return Optional.empty();
    }

    private static Sheet hysteresis(Hysteresis figure) {
        final Grid.Builder grid = Grid.of("Mean errors at each point, in % of span", "#input (%)",
            "#mean upscale", "#mean downscale", "#difference", "#readings");
        for (PointErrors p : figure.points()) {
            grid.row(List.of(NumberText.plain(p.position(), 4), mean(p, Direction.UPSCALE),
                mean(p, Direction.DOWNSCALE), p.hysteresis().value()
                    .map(h -> NumberText.fixed(h.value(), DECIMALS)).orElse("not determined"),
                Integer.toString(p.all().size())), p.position() == figure.position(), cells(p.all()));
        }
        return Sheet.saying("Hysteresis " + NumberText.fixed(figure.largest().value(), DECIMALS)
                + " % of span, at " + NumberText.plain(figure.position(), 4) + " %.")
            .with(StatisticsCharts.hysteresis(figure)).with(grid.build())
            .notes("How to read it", List.of("Mean of the upscale readings against mean of the downscale"
                + " readings at each point; the dead band is included.",
                "Points read from one side only have no part in it."));
    }

    private static String mean(PointErrors p, Direction d) {
        return p.mean(d).isPresent() ? NumberText.signed(p.mean(d).getAsDouble(), DECIMALS) : "not read";
    }

    private static String cells(List<ReadingError> errors) {
        return errors.stream().map(ReadingError::cell).map(CellAddress::toString)
            .collect(Collectors.joining(", "));
    }

    private static Sheet repeatability(NonRepeatability figure) {
        final Grid.Builder grid = Grid.of("Readings of each point from one side, in % of span", "#input (%)",
            "direction", "#readings", "#mean", "#spread", "#standard deviation");
        for (PointErrors p : figure.points()) {
            for (Direction d : Direction.values()) {
                if (!p.in(d).isEmpty()) {
                    final OptionalDouble sd = p.in(d).size() < 2 ? OptionalDouble.empty()
                        : OptionalDouble.of(Sample.of(p.in(d).stream().mapToDouble(e -> e.ofSpan().value())
                            .toArray()).sd());
                    grid.row(List.of(NumberText.plain(p.position(), 4), d.toString(),
                        Integer.toString(p.in(d).size()), mean(p, d), p.spread(d).value()
                            .map(s -> NumberText.fixed(s.value(), DECIMALS)).orElse("not determined"),
                        sd.isPresent() ? NumberText.uncertainty(sd.getAsDouble()) : "not determined"),
                        p.position() == figure.position() && d == figure.direction(), cells(p.in(d)));
                }
            }
        }
        return Sheet.saying("Non-repeatability " + NumberText.fixed(figure.largestSpread().value(), DECIMALS)
                + " % of span, at " + NumberText.plain(figure.position(), 4) + " % " + figure.direction()
                + "scale; a single reading scatters by " + NumberText.uncertainty(figure.pooledSd())
                + " % of span (pooled, " + figure.dof() + " degrees of freedom).")
            .with(StatisticsCharts.repeatability(figure)).with(grid.build())
            .notes("How to read it",
                List.of("Spread: largest less smallest reading of one point from one side"
                + " over the cycles. Hysteresis has no part in it.", "The pooled standard deviation is taken"
                + " over all points and sides; it is what one more reading scatters by."));
    }

    private static Sheet deadBand(DeadBand figure) {
        final Grid.Builder grid = Grid.of("Reversals of the input, in % of span", "#at (% of range)",
            "#largest without an answer", "#smallest with an answer", "#tried");
        figure.reversals().stream().map(DeadBand.Reversal::position).distinct().sorted().forEach(at -> {
            final List<DeadBand.Reversal> here = figure.reversals().stream().filter(r -> r.position() == at)
                .toList();
            grid.row(List.of(NumberText.plain(at, 4), size(here.stream().filter(r -> isStill(figure, r))
                    .mapToDouble(DeadBand.Reversal::inputPercent).max()),
                size(here.stream().filter(r -> !isStill(figure, r))
                    .mapToDouble(DeadBand.Reversal::inputPercent).min()), Integer.toString(here.size())),
                at == figure.position() && figure.largest().value() > 0, "");
        });
        return Sheet.saying("Dead band " + NumberText.plain(figure.largest().value(), 3) + " % of span, at "
                + NumberText.plain(figure.position(), 4) + " %.")
            .with(CourseCharts.deadBand(figure)).with(grid.build())
            .notes("How to read it", List.of("A change of the output of at most "
                + NumberText.plain(figure.resolution().value(), 3) + " % of span counts as none.",
                "In the manner of IEC 61298-2 (from memory): the dead band lies between the two columns."));
    }

    private static boolean isStill(DeadBand figure, DeadBand.Reversal r) {
        return Math.abs(r.outputPercent()) <= figure.resolution().value();
    }

    private static String size(OptionalDouble percent) {
        return percent.isPresent() ? NumberText.plain(percent.getAsDouble(), 3) : "none";
    }

    private static Sheet warmUp(WarmUp figure) {
        final Grid.Builder grid = Grid.of("Output less its last reading", "#minutes", "#% of span",
            "within the band");
        for (WarmUp.Moment m : figure.course()) {
            grid.row(List.of(NumberText.plain(m.minutes(), 5), NumberText.signed(m.off().value(), DECIMALS),
                Math.abs(m.off().value()) <= figure.band().value() ? "\u2713 yes" : "\u2717 no"),
                m.minutes() == figure.minutes(), Figures.full(m.off().value()));
        }
        return Sheet.saying("Settled within \u00b1" + figure.band() + " from "
                + NumberText.plain(figure.minutes(), 4) + " minutes on, having been "
                + NumberText.fixed(figure.excursion().value(), DECIMALS) + " % of span off.")
            .with(CourseCharts.warmUp(figure)).with(grid.build())
            .notes("How to read it", List.of("Settled: this and every later reading lie within the band about"
                + " the last one. It says nothing of drift slower than the time watched."));
    }
}
