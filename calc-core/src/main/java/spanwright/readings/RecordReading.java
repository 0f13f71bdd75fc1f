package spanwright.readings;

import java.nio.file.Path;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import spanwright.quantity.Span;

/**
 * How a record is to be read: what the file does not say by itself, said in the call. Immutable; each method
 * gives a changed copy.
 *
 * <pre>{@code
 * var record = Readings.reading("bench.csv").input(Span.milliamps4to20()).output(Span.milliamps4to20())
 *     .column("Stim").as(ColumnRole.APPLIED, "mA").column("Resp").as(ColumnRole.INDICATED, "mA").read();
 * }</pre>
 */
public final class RecordReading {
    private final Path file;
    private final List<ColumnMapping> mappings;
    private final Set<Fault> accepted;
    private final Set<Fault> declined;
    private final Optional<Span> input;
    private final Optional<Span> output;
    private final Optional<DecimalSign> decimal;
    private final Optional<Boolean> dayFirst;
    private final Optional<ZoneId> zone;
    private final boolean leaveOut;

    private RecordReading(Draft d) {
        file = d.file;
        mappings = List.copyOf(d.mappings);
        accepted = Set.copyOf(d.accepted);
        declined = Set.copyOf(d.declined);
        input = d.input;
        output = d.output;
        decimal = d.decimal;
        dayFirst = d.dayFirst;
        zone = d.zone;
        leaveOut = d.leaveOut;
    }

    static RecordReading of(Path file) {
        return new RecordReading(new Draft(Objects.requireNonNull(file, "file")));
    }

    /** Begins to say what the column of a given head holds. */
    public ColumnMapping.Stage column(String head) {
        return new ColumnMapping.Stage(this, Objects.requireNonNull(head, "head"));
    }

    /** The input range, for a record that does not state it; a stated one wins. */
    public RecordReading input(Span range) {
        final Draft d = draft();
        d.input = Optional.of(range);
        return new RecordReading(d);
    }

    /** The output range, for a record that does not state it; a stated one wins. */
    public RecordReading output(Span range) {
        final Draft d = draft();
        d.output = Optional.of(range);
        return new RecordReading(d);
    }

    /** The decimal sign, where the file leaves it open. */
    public RecordReading decimal(DecimalSign sign) {
        final Draft d = draft();
        d.decimal = Optional.of(sign);
        return new RecordReading(d);
    }

    /** Dates such as 03/04/2026 are day, month, year. */
    public RecordReading dayFirst() {
        final Draft d = draft();
        d.dayFirst = Optional.of(true);
        return new RecordReading(d);
    }

    /** Dates such as 03/04/2026 are month, day, year. */
    public RecordReading monthFirst() {
        final Draft d = draft();
        d.dayFirst = Optional.of(false);
        return new RecordReading(d);
    }

    /** The time zone of times that state none. */
    public RecordReading zone(ZoneId place) {
        final Draft d = draft();
        d.zone = Optional.of(place);
        return new RecordReading(d);
    }

    /**
     * Answers a question with yes: what the reader proposes for this fault is done and listed.
     *
     * @throws IllegalArgumentException if the fault is no question
     */
    public RecordReading accepting(Fault question) {
        final Draft d = draft();
        d.accepted.add(asked(question));
        d.declined.remove(question);
        return new RecordReading(d);
    }

    /**
     * Answers a question with no: the record is read as written, and the question stays as a flag.
     *
     * @throws IllegalArgumentException if the fault is no question
     */
    public RecordReading declining(Fault question) {
        final Draft d = draft();
        d.declined.add(asked(question));
        d.accepted.remove(question);
        return new RecordReading(d);
    }

    /** Reads on where a row is refused: the row is left out and stays listed as refused. */
    public RecordReading leavingOutRefusedRows() {
        final Draft d = draft();
        d.leaveOut = true;
        return new RecordReading(d);
    }

    /**
     * Reads the record.
     *
     * @throws ReadingsFormatException      if anything in it is refused
     * @throws java.io.UncheckedIOException if the file cannot be opened
     */
    public CalibrationRecord read() {
        return RecordReader.read(this);
    }

    Path file() {
        return file;
    }

    boolean accepts(Fault question) {
        return accepted.contains(question);
    }

    boolean declines(Fault question) {
        return declined.contains(question);
    }

    Optional<Span> input() {
        return input;
    }

    Optional<Span> output() {
        return output;
    }

    Optional<DecimalSign> decimal() {
        return decimal;
    }

    Optional<Boolean> dayFirstOrMonthFirst() {
        return dayFirst;
    }

    Optional<ZoneId> zone() {
        return zone;
    }

    boolean leavesOutRefusedRows() {
        return leaveOut;
    }

    boolean hasMappings() {
        return !mappings.isEmpty();
    }

    /** What the call said of a column, by its head. */
    Optional<ColumnMeaning> mapped(int index, String head) {
        final String plain = Characters.plain(head);
        return mappings.stream().filter(m -> Characters.plain(m.head()).equals(plain)
            || Characters.plain(m.head()).equals(ColumnHead.withUnit(plain)[0])).findFirst()
            .map(m -> {
                final String[] own = ColumnHead.across(ColumnHead.withUnit(plain)[1]);
                final String[] said = ColumnHead.across(m.unit());
                final String[] unit = m.unit().isEmpty() ? own : said;
                return new ColumnMeaning(index, head, m.role(), unit[0], unit[1], m.phase(), m.direction(),
                    OptionalInt.empty());
            });
    }

    RecordReading with(ColumnMapping mapping) {
        final Draft d = draft();
        d.mappings.removeIf(m -> m.head().equals(mapping.head()));
        d.mappings.add(mapping);
        return new RecordReading(d);
    }

    private static Fault asked(Fault question) {
        if (question.outcome() == Outcome.ASKED) {
            return question;
        }
        throw new IllegalArgumentException(question.name() + " is " + question.outcome()
            + ", no question: only what the reader asks can be answered");
    }

    private Draft draft() {
        final Draft d = new Draft(file);
        d.mappings.addAll(mappings);
        d.accepted.addAll(accepted);
        d.declined.addAll(declined);
        d.input = input;
        d.output = output;
        d.decimal = decimal;
        d.dayFirst = dayFirst;
        d.zone = zone;
        d.leaveOut = leaveOut;
        return d;
    }

    /** The changeable form, so that each setting is copied in one place. */
    private static final class Draft {
        private final Path file;
        private final List<ColumnMapping> mappings = new ArrayList<>();
        private final Set<Fault> accepted = EnumSet.noneOf(Fault.class);
        private final Set<Fault> declined = EnumSet.noneOf(Fault.class);
        private Optional<Span> input = Optional.empty();
        private Optional<Span> output = Optional.empty();
        private Optional<DecimalSign> decimal = Optional.empty();
        private Optional<Boolean> dayFirst = Optional.empty();
        private Optional<ZoneId> zone = Optional.empty();
        private boolean leaveOut;

        private Draft(Path file) {
            this.file = file;
        }
    }
}
