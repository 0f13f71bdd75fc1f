package spanwright.error;

import java.util.List;
import java.util.Objects;
import spanwright.quantity.NumberText;
import spanwright.quantity.PercentOfSpan;

/**
 * Largest difference between the mean upscale and the mean downscale error at one point. Points read from one
 * side only, such as the turning points, take no part. It includes the dead band.
 *
 * @param largest  the largest difference
 * @param position where it occurs, in percent of the input span
 * @param points   the points, for the difference at each
 */
public record Hysteresis(PercentOfSpan largest, double position, List<PointErrors> points) {
    /** Checks the components and copies the list. */
    public Hysteresis {
        Objects.requireNonNull(largest, "largest");
        points = List.copyOf(points);
    }

    static Finding<Hysteresis> of(List<PointErrors> points) {
        PointErrors worst = null;
        for (PointErrors p : points) {
            if (p.hasBothDirections() && (worst == null || figure(p) > figure(worst))) {
                worst = p;
            }
        }
        return worst == null ? Finding.notDetermined("no point was read both upscale and downscale")
            : Finding.of(new Hysteresis(worst.hysteresis().orElseThrow(), worst.position(), points));
    }

    private static double figure(PointErrors p) {
        return p.hysteresis().orElseThrow().value();
    }

    @Override
    public String toString() {
        return NumberText.fixed(largest.value(), 3) + " % of span, at " + NumberText.plain(position, 4)
            + " %";
    }
}
