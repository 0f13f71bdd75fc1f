package spanwright.readings;

import java.util.ArrayList;
import java.util.List;

/**
 * Divides the rows of a chamber record into stays at one ambient temperature. A return to an earlier
 * temperature is a stay of its own, so that the non-return can be seen, unless the rows are sorted by point
 * and the temperatures alternate.
 */
final class AmbientSegments {
    private AmbientSegments() { }

    /** The number of the stay of each point, from 0. */
    static List<Integer> of(List<Point> points) {
        final List<Integer> stays = new ArrayList<>();
        final List<Double> levels = new ArrayList<>();
        final List<Integer> byLevel = new ArrayList<>();
        double first = Double.MAX_VALUE;
        int stay = -1;
        for (Point p : points) {
            final double t = p.ambient().map(Entry::value).orElse(first);
            if (stay < 0 || Math.abs(t - first) > RunAssembler.SAME_AMBIENT) {
                first = t;
                stay++;
            }
            stays.add(stay);
            byLevel.add(level(levels, t));
        }
        return stay + 1 > 3 * levels.size() ? byLevel : stays;
    }

    private static int level(List<Double> levels, double t) {
        for (int i = 0; i < levels.size(); i++) {
            if (Math.abs(levels.get(i) - t) <= RunAssembler.SAME_AMBIENT) {
                return i;
            }
        }
        levels.add(t);
        return levels.size() - 1;
    }
}
