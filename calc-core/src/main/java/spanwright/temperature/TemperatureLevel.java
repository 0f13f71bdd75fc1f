package spanwright.temperature;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Visits to one chamber temperature taken together, so that a fraction of a kelvin between two of them makes
 * no slope.
 *
 * @param degC  mean temperature of the visits
 * @param error mean error of the visits, percent of span
 * @param u     standard uncertainty of that mean from the readings
 */
record TemperatureLevel(double degC, double error, double u) {

    /** Sorts the points into levels, coldest first; a level is no wider than the tolerance. */
    static List<TemperatureLevel> of(List<ChamberPoint> points, double toleranceKelvin) {
        final List<ChamberPoint> sorted = points.stream()
            .sorted(Comparator.comparing(ChamberPoint::temperature)).toList();
        final List<TemperatureLevel> levels = new ArrayList<>();
        int from = 0;
        for (int i = 1; i <= sorted.size(); i++) {
            if (i == sorted.size() || sorted.get(i).temperature().value()
                    - sorted.get(from).temperature().value() > toleranceKelvin) {
                levels.add(mean(sorted.subList(from, i)));
                from = i;
            }
        }
        return List.copyOf(levels);
    }

    private static TemperatureLevel mean(List<ChamberPoint> visits) {
        final int n = visits.size();
        return new TemperatureLevel(
            visits.stream().mapToDouble(p -> p.temperature().value()).sum() / n,
            visits.stream().mapToDouble(p -> p.error().value()).sum() / n,
            Math.sqrt(visits.stream().mapToDouble(p -> p.error().u() * p.error().u()).sum()) / n);
    }
}
