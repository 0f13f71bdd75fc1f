package spanwright.readings;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;

/**
 * The calibrations of one channel over time, joined from any number of records by its tag. A serial number or
 * channel number that changes is named: the device was exchanged, or somebody mixed two up.
 *
 * @param channel   the tag
 * @param entries   its calibrations, oldest first; those without a date come last, in the order of the files
 * @param conflicts what does not fit together
 */
public record TagHistory(String channel, List<Entry> entries, List<RecordFinding> conflicts) {
    private static final int FEWEST_POINTS = 3;

    /**
     * One calibration in the history.
     *
     * @param file   the file it comes from
     * @param record the run with its header
     */
    public record Entry(String file, RunRecord record) {
        /** Checks the components. */
        public Entry {
            Objects.requireNonNull(file, "file");
            Objects.requireNonNull(record, "record");
        }

        private LocalDate day() {
            return record.header().date().map(RecordDate::day).orElse(LocalDate.MAX);
        }

        private CellAddress cell() {
            return record.run().readings().get(0).indicated().cell();
        }
    }

    /** Checks the components and copies the lists. */
    public TagHistory {
        Objects.requireNonNull(channel, "channel");
        entries = List.copyOf(entries);
        conflicts = List.copyOf(conflicts);
    }

    /** The runs, oldest first. */
    public List<CalibrationRun> runs() {
        return entries.stream().map(e -> e.record().run()).toList();
    }

    /**
     * Joins the records by channel, in the order of the tags.
     *
     * @throws ReadingsFormatException if a question about one of the records is open
     */
    public static List<TagHistory> join(Collection<CalibrationRecord> records) {
        final Map<String, List<Entry>> byTag = new java.util.TreeMap<>();
        for (CalibrationRecord r : records) {
            for (String channel : r.channels()) {
                r.runRecords(channel).forEach(run -> byTag.computeIfAbsent(channel, c -> new ArrayList<>())
                    .add(new Entry(r.file(), run)));
            }
        }
        byTag.values().forEach(l -> l.sort(Comparator.comparing(Entry::day)));
        final List<TagHistory> out = new ArrayList<>();
        byTag
            .forEach((tag, entries) -> out.add(new TagHistory(tag, entries, conflicts(tag, entries, byTag))));
        return List.copyOf(out);
    }

    private static List<RecordFinding> conflicts(String tag, List<Entry> entries, Map<String,
        List<Entry>> all) {
        final List<RecordFinding> out = new ArrayList<>();
        for (int i = 1; i < entries.size(); i++) {
            differs("serial number", entries.get(i - 1), entries.get(i), e -> e.record().run().serial(), out);
            differs("channel number", entries.get(i - 1), entries.get(i),
                e -> e.record().header().channelNumber(), out);
            shifted(tag, entries, i, all, out);
        }
        return out;
    }

    private static void differs(String what, Entry before, Entry now,
                                java.util.function.Function<Entry, String> text, List<RecordFinding> out) {
        final String a = text.apply(before);
        final String b = text.apply(now);
        if (!a.isEmpty() && !b.isEmpty() && !a.equals(b)) {
            out.add(RecordFinding.of(Fault.IDENTITY_CONFLICT, now.cell(), b, what + " is \"" + b
                + "\", and \"" + a + "\" in " + before.file() + (sameButZeros(a, b)
                ? ": only zeros in front differ, which a spreadsheet drops" : ": exchanged, or mixed up"))
                .inChannel(now.record().run().channel()));
        }
    }

    private static boolean sameButZeros(String a, String b) {
        return a.replaceFirst("^0+", "").equals(b.replaceFirst("^0+", ""));
    }

    /**
     * Errors that repeat another channel's last errors much better than the channel's own: two channels were
     * mixed up.
     */
    private static void shifted(String tag, List<Entry> entries, int i, Map<String, List<Entry>> all,
                                List<RecordFinding> out) {
        final Map<Long, Double> now = errors(entries.get(i));
        final double own = distance(now, errors(entries.get(i - 1)));
        for (Map.Entry<String, List<Entry>> other : all.entrySet()) {
            final List<Entry> earlier = other.getValue().stream().filter(e ->
                e.day().isBefore(entries.get(i).day())).toList();
            if (other.getKey().equals(tag) || earlier.isEmpty()) {
                continue;
            }
            final Entry last = earlier.get(earlier.size() - 1);
            final double theirs = distance(now, errors(last));
            final double size = now.values().stream().mapToDouble(Math::abs).max().orElse(0);
            if (theirs < own / 5 && theirs < size / 3) {
                out.add(RecordFinding.of(Fault.CHANNEL_SHIFTED, entries.get(i).cell(), "",
                    "the errors repeat those of "
                    + other.getKey() + " in " + last.file() + " and not those of " + tag + " in "
                    + entries.get(i - 1).file() + ": were the channels mixed up?").inChannel(tag));
            }
        }
    }

    /** Mean error by point, in percent of span. */
    private static Map<Long, Double> errors(Entry e) {
        final CalibrationRun run = e.record().run();
        return run.readings().stream().collect(Collectors.groupingBy(r -> Math.round(run.input().percentAt(
            r.applied().value()) / 2), LinkedHashMap::new, Collectors.averagingDouble(r ->
                100 * (r.indicated().value() - run.expected(r)) / run.output().width())));
    }

    /** Root mean square of the differences at common points; infinite where there are too few. */
    private static double distance(Map<Long, Double> a, Map<Long, Double> b) {
        final double[] d = a.entrySet().stream().filter(e -> b.containsKey(e.getKey()))
            .mapToDouble(e -> e.getValue() - b.get(e.getKey())).toArray();
        return d.length < FEWEST_POINTS ? Double.POSITIVE_INFINITY
            : Math.sqrt(java.util.Arrays.stream(d).map(x -> x * x).average().orElseThrow());
    }

    @Override
    public String toString() {
        return channel + ": " + entries.stream().map(e -> e.record().header().date().map(Object::toString)
            .orElse("no date") + " " + e.record().run().phase() + " (" + e.file() + ")")
            .collect(Collectors.joining("; ")) + conflicts.stream().map(c -> "\n  " + c)
            .collect(Collectors.joining());
    }
}
