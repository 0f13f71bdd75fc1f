package spanwright.notebook.show;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import spanwright.chart.ChannelCharts;
import spanwright.error.ChannelAnalysis;
import spanwright.error.Finding;
import spanwright.error.NonLinearity;
import spanwright.error.PointErrors;
import spanwright.error.ReadingError;
import spanwright.error.Shift;
import spanwright.fit.ReferenceKind;
import spanwright.fit.ReferenceLine;
import spanwright.kernel.display.MimeBundle;
import spanwright.kernel.display.Renderer;
import spanwright.quantity.NumberText;
import spanwright.readings.CalibrationRun;
import spanwright.readings.CellAddress;
import spanwright.readings.Direction;

/** Shows what was found of one calibrated channel. */
public final class ChannelRenderer implements Renderer {
    private static final int DECIMALS = 3;

    /** For the service loader. */
    public ChannelRenderer() { }

    @Override
    public Optional<MimeBundle> render(Object value) {
        if (value instanceof ChannelAnalysis channel) {
            return Optional.of(channel(channel).bundle());
        }
        if (value instanceof NonLinearity linearity) {
            return Optional.of(linearity(linearity).bundle());
        }
        if (value instanceof List<?> list && !list.isEmpty()
                && list.stream().allMatch(ReadingError.class::isInstance)) {
            return Optional.of(errors(list.stream().map(ReadingError.class::cast).toList()).bundle());
        }
        return Optional.empty();
    }

    private static Sheet channel(ChannelAnalysis channel) {
        final CalibrationRun run = channel.run();
        final Sheet sheet = Sheet.saying(sentence(channel))
            .with(ChannelCharts.errors(channel)).with(metrics(channel)).with(points(channel));
        return sheet.notes("Conditions", List.of(
                "ambient " + run.conditions().ambient().map(Object::toString).orElse("not recorded"),
                "supply " + optional(run.conditions().supplyVolts(), "V"),
                "load " + optional(run.conditions().loadOhms(), "\u03a9"),
                run.transfer() + " transfer from " + run.input() + " to " + run.output()))
            .notes("What the record does not tell", channel.notes());
    }

    private static String sentence(ChannelAnalysis channel) {
        return channel.run().channel() + ", " + channel.run().phase() + ": inaccuracy "
            + channel.inaccuracy().map(Object::toString).value().orElse("not determined") + "; zero shift "
            + figure(channel.zeroShift().endPoint().map(p -> p.value())) + ", span shift "
            + figure(channel.spanShift().endPoint().map(p -> p.value())) + ", hysteresis "
            + figure(channel.hysteresis().map(h -> h.largest().value())) + ", non-repeatability "
            + figure(channel.nonRepeatability().map(r -> r.largestSpread().value())) + " (% of span).";
    }

    private static String figure(Finding<Double> finding) {
        return finding.value().map(v -> NumberText.signed(v, DECIMALS)).orElse("not determined");
    }

    private static String optional(java.util.OptionalDouble value, String unit) {
        return value.isPresent() ? NumberText.plain(value.getAsDouble(), 6) + " " + unit : "not recorded";
    }

    private static Grid metrics(ChannelAnalysis channel) {
        final Grid.Builder grid = Grid.of("Figures of the channel, in % of span", "figure", "#value", "from");
        row(grid, "inaccuracy, highest", channel.inaccuracy().map(p -> p.highest().deviation().value()),
            channel.inaccuracy().map(p -> cells(p.highest().cells())));
        row(grid, "inaccuracy, lowest", channel.inaccuracy().map(p -> p.lowest().deviation().value()),
            channel.inaccuracy().map(p -> cells(p.lowest().cells())));
        row(grid, "measured error, highest",
            channel.measuredError().map(p -> p.highest().deviation().value()),
            channel.measuredError().map(p -> cells(p.highest().cells())));
        row(grid, "measured error, lowest", channel.measuredError().map(p -> p.lowest().deviation().value()),
            channel.measuredError().map(p -> cells(p.lowest().cells())));
        shift(grid, channel.zeroShift());
        shift(grid, channel.spanShift());
        row(grid, "hysteresis", channel.hysteresis().map(h -> h.largest().value()),
            channel.hysteresis().map(h -> "at " + NumberText.plain(h.position(), 4) + " %"));
        row(grid, "non-repeatability", channel.nonRepeatability().map(r -> r.largestSpread().value()),
            channel.nonRepeatability().map(r -> cells(r.cells())));
        row(grid, "pooled standard deviation", channel.nonRepeatability().map(r -> r.pooledSd()),
            channel.nonRepeatability().map(r -> r.dof() + " degrees of freedom"));
        for (ReferenceKind kind : ReferenceKind.values()) {
            row(grid, "non-linearity, " + kind, channel.nonLinearity().map(n -> n.against(kind).value()),
                channel.nonLinearity().map(n -> fixed(n, kind)));
        }
        row(grid, "dead band", channel.deadBand().map(p -> p.value()), channel.deadBand().map(p -> ""));
        return grid.build();
    }

    private static void shift(Grid.Builder grid, Shift shift) {
        row(grid, shift.name() + ", end point", shift.endPoint().map(p -> p.value()),
            shift.endPoint().map(p -> "mean of the end readings"));
        row(grid, shift.name() + ", least squares", shift.leastSquares().map(e -> e.value()),
            shift.leastSquares().map(e -> "u = " + NumberText.uncertainty(e.u()) + ", "
                + e.dof() + " degrees of freedom"));
    }

    private static void row(Grid.Builder grid, String name, Finding<Double> figure, Finding<String> from) {
        grid.row(name, figure.value().map(v -> NumberText.signed(v, DECIMALS)).orElse("not determined"),
            figure.isDetermined() ? from.value().orElse("") : figure.reason());
    }

    private static String cells(List<CellAddress> cells) {
        return cells.stream().limit(3).map(CellAddress::toString).collect(Collectors.joining(", "))
            + (cells.size() > 3 ? " and " + (cells.size() - 3) + " more" : "");
    }

    private static String fixed(NonLinearity linearity, ReferenceKind kind) {
        final List<Double> at = linearity.fixedAt(kind);
        return at.isEmpty() ? "" : "line fixed by " + at.stream().map(p -> NumberText.plain(p, 4) + " %")
            .collect(Collectors.joining(", "));
    }

    private static Grid points(ChannelAnalysis channel) {
        final Grid.Builder grid = Grid.of("Errors at each point, in % of span", "#input (%)", "#mean upscale",
            "#mean downscale", "#hysteresis", "#readings");
        for (PointErrors p : channel.points()) {
            grid.row(List.of(NumberText.plain(p.position(), 4), mean(p, Direction.UPSCALE),
                mean(p, Direction.DOWNSCALE), p.hysteresis().value()
                    .map(h -> NumberText.fixed(h.value(), DECIMALS)).orElse("not determined"),
                Integer.toString(p.all().size())), false, cells(p.all().stream().map(ReadingError::cell)
                    .toList()));
        }
        return grid.build();
    }

    private static String mean(PointErrors point, Direction direction) {
        return point.mean(direction).isPresent()
            ? NumberText.signed(point.mean(direction).getAsDouble(), DECIMALS) : "not read";
    }

    private static Sheet errors(List<ReadingError> errors) {
        final Grid.Builder grid = Grid.of("Error of each reading", "#input (%)", "direction", "#cycle",
            "#expected", "#error (% of span)", "cell");
        errors.forEach(e -> grid.row(List.of(NumberText.plain(e.position(), 4), e.direction().toString(),
            Integer.toString(e.cycle()), NumberText.fixed(e.expected(), 4),
            NumberText.signed(e.ofSpan().value(), DECIMALS), e.cell().toString()), false,
            "error " + e.error() + " " + e.output().symbol()));
        return Sheet.saying(errors.size()
            + " readings, errors in % of the output span, from the applied input.")
            .with(grid.build());
    }

    private static Sheet linearity(NonLinearity linearity) {
        final Grid.Builder grid = Grid.of("Non-linearity, in % of span", "reference line", "#largest",
            "#highest", "#lowest", "fixed by");
        for (ReferenceLine line : linearity.lines()) {
            grid.row(line.kind().toString(), NumberText.fixed(line.largestDeviation(), DECIMALS),
                NumberText.signed(line.highestDeviation(), DECIMALS),
                NumberText.signed(line.lowestDeviation(), DECIMALS), fixed(linearity, line.kind()));
        }
        return Sheet.saying("Non-linearity " + NumberText.fixed(linearity.against(ReferenceKind.INDEPENDENT)
                .value(), DECIMALS) + " % of span against the independent line.")
            .with(ChannelCharts.linearity("Averages of both directions", linearity)).with(grid.build())
            .notes("Notes", linearity.notes());
    }
}
