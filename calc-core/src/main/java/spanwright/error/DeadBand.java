package spanwright.error;

import java.util.List;
import java.util.Objects;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;
import spanwright.quantity.PercentOfSpan;

/**
 * Largest reversal of the input that changes the output no more than its resolution, in the manner of IEC
 * 61298-2 (from memory); 43 CFR 3175 has no parallel.
 *
 * @param largest  the largest such reversal, percent of the input span
 * @param position where it was found, percent of the input span
 * @param reversals  all that were tried
 * @param resolution change of the output that counts as none
 */
public record DeadBand(PercentOfSpan largest, double position, List<Reversal> reversals,
                       PercentOfSpan resolution) {
    /**
     * One reversal of the input at a point.
     *
     * @param position      place on the scale, percent of the input span
     * @param inputPercent  size of the reversal, percent of the input span, above 0
     * @param outputPercent change of the output that followed, percent of the output span, of either sign
     */
    public record Reversal(double position, double inputPercent, double outputPercent) {
        /** Checks the components. */
        public Reversal {
            Checks.finite("position", position);
            Checks.positive("reversal of the input", inputPercent);
            Checks.finite("change of the output", outputPercent);
        }
    }

    /** Checks the components and copies the list. */
    public DeadBand {
        Objects.requireNonNull(largest, "largest");
        Checks.finite("position", position);
        reversals = List.copyOf(reversals);
        Objects.requireNonNull(resolution, "resolution");
    }

    /**
     * From reversals at three or more points of the scale, such as 10, 50 and 90 %.
     *
     * @param reversals         the reversals, small and larger ones at each point
     * @param resolutionPercent change of the output that counts as none, percent of span
     * @return not determined below three points, or where the largest reversal at a point still changed
     *             nothing
     */
    public static Finding<DeadBand> of(List<Reversal> reversals, double resolutionPercent) {
        Checks.notNegative("resolution", resolutionPercent);
        final List<Double> points = reversals.stream().map(Reversal::position).distinct().toList();
        if (points.size() < 3) {
            return Finding.notDetermined("a dead band needs reversals at three points; there are "
                + points.size());
        }
        double worst = 0;
        double worstAt = points.get(0);
        for (double point : points) {
            double still = 0;
            double moved = Double.MAX_VALUE;
            for (Reversal r : reversals) {
                if (r.position() == point && Math.abs(r.outputPercent()) <= resolutionPercent) {
                    still = Math.max(still, r.inputPercent());
                } else if (r.position() == point) {
                    moved = Math.min(moved, r.inputPercent());
                }
            }
            if (moved == Double.MAX_VALUE) {
                return Finding.notDetermined("at " + NumberText.plain(point, 4) + " % a reversal of "
                    + NumberText.plain(still, 4) + " % still changed nothing: try larger ones");
            }
            worstAt = still > worst ? point : worstAt;
            worst = Math.max(worst, still);
        }
        return Finding.of(new DeadBand(new PercentOfSpan(worst), worstAt, reversals,
            new PercentOfSpan(resolutionPercent)));
    }

    @Override
    public String toString() {
        return NumberText.plain(largest.value(), 3) + " % of span, at " + NumberText.plain(position, 4)
            + " %";
    }
}
