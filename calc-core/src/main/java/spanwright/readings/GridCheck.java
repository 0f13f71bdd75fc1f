package spanwright.readings;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import spanwright.quantity.NumberText;

/**
 * Compares the traverses of a run with each other: missing traverses, missing points, points that stand
 * twice.
 */
final class GridCheck {
    private final CalibrationRun run;
    private final List<RecordFinding> findings;
    /** Readings by traverse, then by point. */
    private final Map<String, Map<Long, List<Reading>>> legs = new LinkedHashMap<>();
    private final SortedSet<Long> points = new TreeSet<>();
    private final Map<Long, Double> percentOf = new TreeMap<>();

    GridCheck(CalibrationRun run, List<RecordFinding> findings) {
        this.run = run;
        this.findings = findings;
        for (Reading r : run.readings()) {
            final long point = point(r);
            points.add(point);
            percentOf.putIfAbsent(point, percent(r));
            legs.computeIfAbsent(r.direction() + "scale, cycle " + r.cycle(), k -> new TreeMap<>())
                .computeIfAbsent(point, k -> new ArrayList<>()).add(r);
        }
    }

    void check() {
        final Reading first = run.readings().get(0);
        if (run.readings().stream().map(Reading::direction).distinct().count() == 1) {
            flag(Fault.LEG_MISSING, first, "every reading is " + first.direction()
                + "scale: hysteresis is not determined");
        }
        legs.forEach((name, leg) -> {
            missing(name, leg);
            leg.values().stream().filter(r -> r.size() > 1).forEach(this::twice);
        });
    }

    /** The ends may be read in one direction only. */
    private void missing(String name, Map<Long, List<Reading>> leg) {
        final boolean down = name.startsWith("down");
        final String lost = points.stream().filter(p -> !leg.containsKey(p))
            .filter(p -> !(down && (p.equals(points.last()) || p.equals(points.first()))))
            .map(p -> NumberText.plain(percentOf.get(p), 3) + " %")
            .collect(Collectors.joining(", "));
        if (!lost.isEmpty()) {
            flag(Fault.POINT_MISSING, leg.values().iterator().next().get(0), name + " has no reading at "
                + lost
                + ": what needs it is not determined");
        }
    }

    private void twice(List<Reading> same) {
        final Reading a = same.get(0);
        for (Reading b : same.subList(1, same.size())) {
            if (a.applied().written().equals(b.applied().written())
                && a.indicated().written().equals(b.indicated().written())) {
                flag(Fault.ROW_COPIED, b, "same point, direction and cycle as row " + a.indicated().cell()
                    .row()
                    + ", and the same readings: both are kept");
            } else {
                flag(Fault.POINT_TWICE, b, "same point, direction and cycle as row "
                    + a.indicated().cell().row() + ", with other readings: both are kept");
            }
        }
    }

    private long point(Reading r) {
        return Math.round(percent(r) / (2 * Traverse.SAME_POINT));
    }

    private double percent(Reading r) {
        return r.nominalPercent().orElseGet(() -> run.input().percentAt(r.applied().value()));
    }

    private void flag(Fault fault, Reading r, String says) {
        findings.add(RecordFinding.of(fault, r.indicated().cell(), r.indicated().written(), says)
            .inChannel(run.channel()));
    }
}
