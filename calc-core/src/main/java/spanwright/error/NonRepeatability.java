package spanwright.error;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import spanwright.fit.Sample;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;
import spanwright.quantity.PercentOfSpan;
import spanwright.readings.CellAddress;
import spanwright.readings.Direction;
import spanwright.uncertainty.DegreesOfFreedom;

/**
 * How far readings of one point from one side differ from cycle to cycle. Hysteresis takes no part.
 *
 * @param largestSpread largest minus smallest error at the worst point and direction
 * @param position      that point, in percent of the input span
 * @param direction     that direction
 * @param cells         the cells of the indications behind it
 * @param pooledSd      standard deviation of a single reading in percent of span, pooled over points and
 *                      directions
 * @param dof           its degrees of freedom
 * @param points        the points, for the readings at each
 */
public record NonRepeatability(PercentOfSpan largestSpread, double position, Direction direction,
                               List<CellAddress> cells, double pooledSd, DegreesOfFreedom dof,
                               List<PointErrors> points) {
    /** Checks the components and copies the lists. */
    public NonRepeatability {
        Objects.requireNonNull(largestSpread, "largestSpread");
        Objects.requireNonNull(direction, "direction");
        cells = List.copyOf(cells);
        Checks.notNegative("pooled standard deviation", pooledSd);
        Objects.requireNonNull(dof, "dof");
        points = List.copyOf(points);
    }

    static Finding<NonRepeatability> of(List<PointErrors> points, int cycles) {
        if (cycles < 2) {
            return Finding.notDetermined("the record has one cycle only; two are needed, three are usual");
        }
        PointErrors worst = null;
        Direction side = Direction.UPSCALE;
        double largest = -1;
        double squares = 0;
        int dof = 0;
        for (PointErrors p : points) {
            for (Direction d : Direction.values()) {
                final List<ReadingError> errors = p.in(d);
                if (errors.size() < 2) {
                    continue;
                }
                final Sample s = Sample.of(errors.stream().mapToDouble(ReadingError::percentOfSpan)
                    .toArray());
                squares += s.sd() * s.sd() * (s.count() - 1);
                dof += s.count() - 1;
                final double spread = p.spread(d).orElseThrow().value();
                if (spread > largest) {
                    largest = spread;
                    worst = p;
                    side = d;
                }
            }
        }
        if (worst == null) {
            return Finding.notDetermined("no point was read twice from the same side");
        }
        return Finding.of(new NonRepeatability(new PercentOfSpan(largest), worst.position(), side,
            new ArrayList<>(PointErrors.cells(worst.in(side))), Math.sqrt(squares / dof),
            DegreesOfFreedom.of(dof), points));
    }

    @Override
    public String toString() {
        return NumberText.fixed(largestSpread.value(), 3) + " % of span, at " + NumberText.plain(position, 4)
            + " % " + direction + "; pooled standard deviation " + NumberText.uncertainty(pooledSd)
            + " % of span, " + dof + " degrees of freedom";
    }
}
