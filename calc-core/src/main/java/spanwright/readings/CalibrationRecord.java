package spanwright.readings;

import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tech.tablesaw.api.Table;

/**
 * A calibration record as it was read: its runs, and everything that was repaired, asked, flagged or refused
 * on the way. Immutable.
 */
public final class CalibrationRecord {
    private static final int MOST_SHOWN = 20;

    private final RecordReading settings;
    private final String file;
    private final RecordCopy copy;
    private final List<RunRecord> runs;
    private final List<RecordFinding> findings;
    private final List<String> understood;
    private final RowAccount account;

    CalibrationRecord(RecordReading settings, RecordCopy copy, List<RunRecord> runs,
        List<RecordFinding> findings,
                      List<String> understood, RowAccount account) {
        this.settings = settings;
        this.file = RecordReader.name(settings.file());
        this.copy = copy;
        this.runs = List.copyOf(runs);
        this.findings = List.copyOf(findings);
        this.understood = List.copyOf(understood);
        this.account = account;
    }

    /** Name of the file. */
    public String file() {
        return file;
    }

    /** Tags of the channels, in the order of the record. */
    public List<String> channels() {
        return runs.stream().map(r -> r.run().channel()).distinct().toList();
    }

    /**
     * All runs, in the order of the record.
     *
     * @throws ReadingsFormatException if a question about a run is open
     */
    public List<CalibrationRun> runs() {
        runs.forEach(r -> refuseOpenQuestion(r.run().channel()));
        refuseOpenQuestion("");
        return runs.stream().map(RunRecord::run).toList();
    }

    /**
     * The runs of one channel, in the order of the record.
     *
     * @throws IllegalArgumentException if the record has no such channel
     * @throws ReadingsFormatException  if a question about the channel is open
     */
    public List<CalibrationRun> runs(String channel) {
        return runRecords(channel).stream().map(RunRecord::run).toList();
    }

    /**
     * The only run of a channel.
     *
     * @throws IllegalArgumentException if the record has no such channel, or several runs of it
     * @throws ReadingsFormatException  if a question about the channel is open
     */
    public CalibrationRun run(String channel) {
        return only(channel, runs(channel));
    }

    /**
     * The only run of a channel in a phase; one that was not adjusted is both as found and as left.
     *
     * @throws IllegalArgumentException if there is none, or there are several
     * @throws ReadingsFormatException  if a question about the channel is open
     */
    public CalibrationRun run(String channel, Phase phase) {
        return only(channel + " " + phase, runs(channel).stream().filter(r -> r.phase() == phase
            || r.phase() == Phase.NOT_ADJUSTED).toList());
    }

    /**
     * The runs of a channel with their header, absent and clamped readings.
     *
     * @throws IllegalArgumentException if the record has no such channel
     * @throws ReadingsFormatException  if a question about the channel is open
     */
    public List<RunRecord> runRecords(String channel) {
        Objects.requireNonNull(channel, "channel");
        refuseOpenQuestion("");
        final List<RunRecord> own = runs.stream().filter(r -> r.run().channel().equals(channel)).toList();
        if (own.isEmpty()) {
            throw new IllegalArgumentException(file + " has no channel \"" + channel + "\", only "
                + channels());
        }
        refuseOpenQuestion(channel);
        return own;
    }

    /** Everything that was found, in the order in which it was found. */
    public List<RecordFinding> findings() {
        return findings;
    }

    /** What was found of one outcome. */
    public List<RecordFinding> findings(Outcome outcome) {
        return findings.stream().filter(f -> f.outcome() == outcome).toList();
    }

    /** What was read after a change. */
    public List<RecordFinding> repairs() {
        return findings(Outcome.REPAIRED);
    }

    /** What is asked; {@link #accepting} answers with yes. */
    public List<RecordFinding> questions() {
        return findings(Outcome.ASKED);
    }

    /** What a person should look at. */
    public List<RecordFinding> flags() {
        return findings(Outcome.FLAGGED);
    }

    /** How the file was understood: separators, decimal sign, columns. */
    public List<String> understood() {
        return understood;
    }

    /** Where every row went. */
    public RowAccount account() {
        return account;
    }

    /** Reads the record again, doing what it proposes for a question. */
    public CalibrationRecord accepting(Fault question) {
        return settings.accepting(question).read();
    }

    /** Reads the record again as written; the question stays as a flag. */
    public CalibrationRecord declining(Fault question) {
        return settings.declining(question).read();
    }

    /**
     * One row per reading, clamped and absent ones too, as a notebook table: numbers in the unit of the
     * range, the text of each cell and where it stands, when it was taken, and what was flagged about it.
     *
     * @throws ReadingsFormatException if a question about a run is open
     */
    public Table toTable() {
        runs();
        return RecordExport.table(file, runs, findings);
    }

    /**
     * Writes the record again as CSV in UTF-8, without loss: every cell as it was written and at its place,
     * with header lines, absent readings, times, remarks and comments. What the call said is put in and
     * listed in comments at the end, so that the written record reads the same without it; only the answer
     * about a comma that may separate thousands must be given again. A cell that a spreadsheet would run as a
     * formula gets an apostrophe in front, which the reader takes off and lists.
     *
     * @throws ReadingsFormatException      if a question about a run is open
     * @throws java.io.UncheckedIOException if the file cannot be written
     */
    public void writeCsv(Path target) {
        runs();
        TableExport.csv(target, copy.rows(), copy.decimal());
    }

    /**
     * As {@link #writeCsv}, as an XLSX workbook: formulas stay text, numbers keep the decimals they show.
     *
     * @throws ReadingsFormatException      if a question about a run is open
     * @throws java.io.UncheckedIOException if the file cannot be written
     */
    public void writeXlsx(Path target) {
        runs();
        TableExport.xlsx(target, "record", copy.rows());
    }

    /** All runs, whatever is asked about them. */
    List<RunRecord> allRuns() {
        return runs;
    }

    private CalibrationRun only(String what, List<CalibrationRun> found) {
        if (found.size() == 1) {
            return found.get(0);
        }
        throw new IllegalArgumentException(file + " has " + found.size() + " runs of " + what + ": "
            + runs.stream().map(r -> describe(r.run())).collect(Collectors.joining("; ")));
    }

    private static String describe(CalibrationRun run) {
        return run.channel() + " " + run.phase() + run.conditions().ambient().map(a -> " at " + a).orElse("")
            + ", " + run.readings().size() + " readings";
    }

    private void refuseOpenQuestion(String channel) {
        questions().stream().filter(f -> f.isOpenQuestion() && f.channel().equals(channel)
            && !settings.declines(f.fault())).findFirst()
            .ifPresent(f -> {
                throw new ReadingsFormatException(f, findings);
            });
    }

    @Override
    public String toString() {
        final Stream<String> head = Stream.of(file + ": " + runs.size() + " runs of " + channels().size()
            + " channels; " + account);
        final Stream<String> body = Stream.concat(runs.stream().map(r -> "  " + describe(r.run())),
            understood.stream().map(u -> "  understood: " + u));
        final Stream<String> found = findings.stream().limit(MOST_SHOWN).map(f -> "  " + f.outcome() + ": "
            + f);
        final Stream<String> rest = findings.size() <= MOST_SHOWN ? Stream.of()
            : Stream.of("  and " + (findings.size() - MOST_SHOWN) + " more, see findings()");
        return Stream.of(head, body, found, rest).flatMap(s -> s).collect(Collectors.joining("\n"));
    }
}
