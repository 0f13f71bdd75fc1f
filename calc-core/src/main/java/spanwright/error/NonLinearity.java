package spanwright.error;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import spanwright.fit.ReferenceKind;
import spanwright.fit.ReferenceLine;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;
import spanwright.quantity.PercentOfSpan;

/**
 * Departure from straightness against each reference line, with least squares beside them. At each point the
 * average of the upscale and the downscale mean counts.
 *
 * <p>x is the expected output and y the indicated output, both in percent of the output span: slope 1 and
 * intercept 0 are the specified characteristic. For a square-root characteristic this is conformity to it.
 *
 * @param positions of the points on the scale, in percent of the input span
 * @param expected  x of each point
 * @param lines     one for each {@link ReferenceKind}, in that order
 * @param notes     what the reader must know of the record's points
 */
public record NonLinearity(List<Double> positions, List<Double> expected, List<ReferenceLine> lines,
                           List<String> notes) {
    /** Checks the components and copies the lists. */
    public NonLinearity {
        positions = List.copyOf(positions);
        expected = List.copyOf(expected);
        lines = List.copyOf(lines);
        notes = List.copyOf(notes);
        Checks.atLeast("number of lines", lines.size(), ReferenceKind.values().length);
    }

    static Finding<NonLinearity> of(List<PointErrors> points, List<String> notes) {
        if (points.size() < 3) {
            return Finding.notDetermined("the record has " + points.size()
                + " points within the range; a departure from a straight line needs three");
        }
        final double[] x = points.stream().mapToDouble(PointErrors::expectedPercent).toArray();
        if (Arrays.stream(x).distinct().count() < x.length) {
            return Finding.notDetermined("two points have the same expected output; the characteristic "
                + "does not tell"
                + " them apart");
        }
        final double[] y = new double[x.length];
        for (int i = 0; i < x.length; i++) {
            y[i] = x[i] + points.get(i).average();
        }
        return Finding.of(new NonLinearity(points.stream().map(PointErrors::position).toList(),
            points.stream().map(PointErrors::expectedPercent).toList(),
            Stream.of(ReferenceLine.independent(x, y), ReferenceLine.zeroBased(x, y),
                ReferenceLine.terminalBased(x, y), ReferenceLine.absolute(x, y, 1, 0),
                ReferenceLine.leastSquares(x, y))
                .map(line -> line.named("expected output (% of span)", "indicated output (% of span)"))
                .toList(), notes));
    }

    /** The line of a kind. */
    public ReferenceLine line(ReferenceKind kind) {
        return lines.stream().filter(line -> line.kind() == kind).findFirst().orElseThrow();
    }

    /** Largest deviation, without sign, from the line of a kind. */
    public PercentOfSpan against(ReferenceKind kind) {
        return new PercentOfSpan(line(kind).largestDeviation());
    }

    /** The points that fix the line of a kind, as places on the scale in percent of the input span. */
    public List<Double> fixedAt(ReferenceKind kind) {
        return line(kind).fixedBy().stream().map(positions::get).toList();
    }

    @Override
    public String toString() {
        return lines.stream().map(this::row).collect(Collectors.joining("\n"));
    }

    private String row(ReferenceLine line) {
        final String fixed = fixedAt(line.kind()).stream().map(p -> NumberText.plain(p, 4) + " %")
            .collect(Collectors.joining(", "));
        return line.kind() + ": " + NumberText.fixed(line.largestDeviation(), 3) + " % of span ("
            + NumberText.signed(line.highestDeviation(), 3) + " / "
            + NumberText.signed(line.lowestDeviation(), 3) + ")"
            + (fixed.isEmpty() ? "" : ", fixed by " + fixed);
    }
}
