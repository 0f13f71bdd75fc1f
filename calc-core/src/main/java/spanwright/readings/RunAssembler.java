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

    private final RecordReading settings;
    private final String file;
    private final List<RecordFinding> findings;
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

    RunAssembler(RecordReading settings, List<RecordFinding> findings) {
        this.settings = settings;
        this.file = RecordReader.name(settings.file());
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
        for (CellReader.Absence a : rows.absences()) {
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
                run(d).ifPresent(out::add);
            }
        }
        PatternCheck.copies(out, findings);
        new PaperCheck(findings).fileName(file, out);
        return out;
    }

    private Optional<RunRecord> run(Draft d) {
        final BlockHeader h = d.header;
        final List<Reading> all = exchange(d, new Traverse(h.input(), findings).settle(d.points));
        final ClampCheck clamp = new ClampCheck(h, d.key.channel(), findings);
        final List<Reading> clamped = clamp.clamped(all);
        final List<Reading> readings = new ArrayList<>(all);
        readings.removeAll(clamped);
        final Phase phase = phase(d);
        if (readings.isEmpty()) {
            return Optional.empty();
        }
        final CalibrationRun run = new CalibrationRun(d.key.channel(), d.key.serial(), phase, h.transfer(),
            h.input(), h.output(), h.tolerance(), conditions(d), readings);
        final RunRecord record = new RunRecord(run, h.record(), clamped, clamp.plateau(readings), d.absent);
        new GridCheck(run, findings).check();
        PatternCheck.figures(run, findings);
        PatternCheck.farOff(run, findings);
        new PaperCheck(findings).run(record, h.ambientLimits());
        return Optional.of(record);
    }

    /** Asks about two readings that look exchanged, or exchanges them when told so. */
    private List<Reading> exchange(Draft d, List<Reading> readings) {
        final Optional<int[]> pair = SwapCheck.readings(readings, d.header);
        if (pair.isEmpty()) {
            return readings;
        }
        final int i = pair.get()[0];
        final int j = pair.get()[1];
        final Entry a = readings.get(i).indicated();
        final Entry b = readings.get(j).indicated();
        final String both = "\"" + a.written() + "\" at " + a.cell() + " and \"" + b.written() + "\" at "
            + b.cell();
        if (settings.accepts(Fault.READINGS_SWAPPED)) {
            findings.add(RecordFinding.of(Fault.ANSWERED, b.cell(), b.written(), both
                + " exchanged, as told in the"
                + " call").inChannel(d.key.channel()));
            return SwapCheck.exchanged(readings, i, j);
        }
        findings.add(RecordFinding.question(Fault.READINGS_SWAPPED, b.cell(), b.written(), both
            + " are far off as"
            + " they stand, and right when exchanged", "exchange the two readings")
            .inChannel(d.key.channel()));
        return readings;
    }

    private Phase phase(Draft d) {
        if (d.key.phase().isEmpty()) {
            findings.add(RecordFinding.of(Fault.PHASE_MISSING, d.points.get(0).indicated().cell(), "",
                "neither as found nor as left is stated: taken as found").inChannel(d.key.channel()));
        }
        final Phase phase = d.key.phase().orElse(Phase.AS_FOUND);
        final boolean notAdjusted = d.header.record().adjusted().map(a -> !a).orElse(false);
        return phase == Phase.AS_FOUND && notAdjusted ? Phase.NOT_ADJUSTED : phase;
    }

    private static Conditions conditions(Draft d) {
        final OptionalDouble mean = d.points.stream().flatMap(p -> p.ambient().stream())
            .mapToDouble(Entry::value).average();
        final Conditions c = d.header.conditions();
        return mean.isEmpty() ? c
            : new Conditions(Optional.of(new Celsius(mean.getAsDouble())), c.supplyVolts(), c.loadOhms());
    }
}
