package spanwright.readings;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import spanwright.quantity.Celsius;

/**
 * Groups the points of a record into runs: by channel, serial number, phase and ambient temperature, in the
 * order of the record. Not thread safe; used once for one record.
 */
final class RunAssembler {
    /** Ambient readings that stay this close to the first of a run, in kelvin, belong to it. */
    static final double SAME_AMBIENT = 1.5;

    private final List<Finding> findings;
    private final Map<Place, Draft> drafts = new LinkedHashMap<>();
    private int segment;

    /** What a run is told apart by. */
    private record Place(Point.Key key, Preamble preamble, int segment) { }

    /** A run that is being collected. */
    static final class Draft {
        private final Point.Key key;
        private final BlockHeader header;
        private final List<Point> points = new ArrayList<>();
        private final List<AbsentReading> absent = new ArrayList<>();

        private Draft(Point.Key key, BlockHeader header) {
            this.key = key;
            this.header = header;
        }
    }

    RunAssembler(List<Finding> findings) {
        this.findings = findings;
    }

    /** Adds the points and absent readings of one table. */
    void add(Preamble preamble, BlockHeader header, RowReader rows) {
        final List<Integer> segments = AmbientSegments.of(rows.points());
        final int base = segment;
        for (int i = 0; i < rows.points().size(); i++) {
            final Point p = rows.points().get(i);
            final boolean ownAmbient = p.ambient().isPresent();
            final int s = ownAmbient ? base + 1 + segments.get(i) : 0;
            segment = Math.max(segment, s);
            draft(new Place(p.key(), preamble, s), header).points.add(p);
        }
        for (RowReader.Absence a : rows.absences()) {
            drafts.values().stream().filter(d -> d.key.equals(a.key())).findFirst()
                .orElseGet(() -> draft(new Place(a.key(), preamble, 0), header)).absent.add(a.reading());
        }
    }

    private Draft draft(Place place, BlockHeader header) {
        return drafts.computeIfAbsent(place, p -> new Draft(p.key(), header));
    }

    /** The runs; a channel with absent readings only has none. */
    List<RunRecord> runs() {
        final List<RunRecord> out = new ArrayList<>();
        for (Draft d : drafts.values()) {
            if (!d.points.isEmpty()) {
                out.add(run(d));
            }
        }
        return out;
    }

    private RunRecord run(Draft d) {
        final BlockHeader h = d.header;
        final List<Reading> readings = new Traverse(h.input(), findings).settle(d.points);
        final CalibrationRun run = new CalibrationRun(d.key.channel(), d.key.serial(), phase(d), h.transfer(),
            h.input(), h.output(), h.tolerance(), conditions(d), readings);
        return new RunRecord(run, h.record(), List.of(), List.of(), d.absent);
    }

    private Phase phase(Draft d) {
        if (d.key.phase().isEmpty()) {
            findings.add(Finding.of(Fault.PHASE_MISSING, d.points.get(0).indicated().cell(), "",
                "neither as found nor as left is stated: taken as found").inChannel(d.key.channel()));
        }
        final Phase phase = d.key.phase().orElse(Phase.AS_FOUND);
        final boolean notAdjusted = d.header.record().adjusted().map(a -> !a).orElse(false);
        return phase == Phase.AS_FOUND && notAdjusted ? Phase.NOT_ADJUSTED : phase;
    }

    private static Conditions conditions(Draft d) {
        final OptionalDouble mean = d.points.stream().map(Point::ambient).filter(OptionalDouble::isPresent)
            .mapToDouble(OptionalDouble::getAsDouble).average();
        final Conditions c = d.header.conditions();
        return mean.isEmpty() ? c : new Conditions(Optional.of(new Celsius(mean.getAsDouble())),
            c.supplyVolts(),
            c.loadOhms());
    }
}
