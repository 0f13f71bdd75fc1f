package spanwright.readings;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import spanwright.quantity.Celsius;
import spanwright.quantity.Span;
import spanwright.quantity.Tolerance;
import spanwright.quantity.UnitSymbols;

/** Understands the header lines of one table. Each line that cannot be read is a finding at its cell. */
final class HeaderReader {
    private static final Pattern DAY_MONTH = Pattern.compile("(\\d{1,2})[-/. ]([A-Za-z]{3,9})[-/. ]?.*");
    private static final List<String> MONTHS = List.of("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug",
        "sep", "oct", "nov", "dec");

    private final RecordReading settings;
    private final HeaderText text;
    private final DecimalSign decimal;
    private final List<RecordFinding> findings;

    HeaderReader(RecordReading settings, DecimalSign decimal, List<RecordFinding> findings) {
        this.settings = settings;
        this.text = new HeaderText(decimal);
        this.decimal = decimal;
        this.findings = findings;
    }

    /** The header of a table, or nothing if a range is missing or cannot be read. */
    Optional<BlockHeader> read(Preamble p, CellAddress head) {
        final Optional<Span> input = range(p, PreambleKey.INPUT_RANGE, settings.input(), head);
        final Optional<Span> output = range(p, PreambleKey.OUTPUT_RANGE, settings.output(), head);
        if (input.isEmpty() || output.isEmpty()) {
            return Optional.empty();
        }
        final Optional<Tolerance> setting = tolerance(p, PreambleKey.SETTING_TOLERANCE, input.get(),
            output.get());
        return Optional.of(new BlockHeader(record(p, setting), transfer(p), input.get(), output.get(),
            value(p, PreambleKey.INPUT_SCALE, text::span), value(p, PreambleKey.OUTPUT_SCALE, text::span),
            tolerance(p, PreambleKey.TOLERANCE, input.get(), output.get()), conditions(p),
            value(p, PreambleKey.AMBIENT_LIMITS, text::span), phase(p)));
    }

    private RecordHeader record(Preamble p, Optional<Tolerance> setting) {
        final Map<String, String> lines = new TreeMap<>();
        final Map<String, CellAddress> cells = new TreeMap<>();
        p.values().forEach((k, v) -> {
            lines.put(k.word(), v.text());
            cells.put(k.word(), v.cell());
        });
        final Optional<RecordDate> date = p.find(PreambleKey.DATE).filter(v -> !text.isMissing(v.text()))
            .flatMap(v -> date(p, v, v.text()));
        final List<Standard> standards = new ArrayList<>();
        for (Preamble.Value line : p.standards()) {
            guarded(line, t -> StandardText.read(line, decimal, d -> day(p, line, d)))
                .ifPresent(standards::add);
        }
        final Optional<Boolean> adjusted = value(p, PreambleKey.ADJUSTED, HeaderReader::yesOrNo);
        return new RecordHeader(p.text(PreambleKey.TAG), p.text(PreambleKey.SERIAL),
            p.text(PreambleKey.CHANNEL), p.text(PreambleKey.TECHNICIAN), date, standards, setting, adjusted,
            lines, cells);
    }

    private Optional<LocalDate> day(Preamble p, Preamble.Value line, String dayText) {
        return date(p, line, dayText).map(RecordDate::day);
    }

    private Optional<RecordDate> date(Preamble p, Preamble.Value line, String dateText) {
        final Optional<ZoneId> place = settings.zone().or(() -> value(p, PreambleKey.ZONE, ZoneId::of));
        final DateText.Answer answer = new DateText(settings.dayFirstOrMonthFirst(), place).read(dateText);
        answer.fault().ifPresent(f -> findings.add(RecordFinding.of(f, line.cell(), dateText,
            answer.says())));
        return answer.date();
    }

    private Optional<Span> range(Preamble p, PreambleKey key, Optional<Span> said, CellAddress head) {
        final Optional<Preamble.Value> line = p.find(key);
        if (line.isEmpty()) {
            if (said.isEmpty()) {
                findings.add(RecordFinding.of(Fault.RANGE_MISSING, head, "", "no \"" + capital(key.word())
                    + "\" line above this table: it is needed, such as \"" + capital(key.word())
                    + ",4 to 20 mA\", or say it in the call"));
            }
            return said;
        }
        final Matcher date = DAY_MONTH.matcher(line.get().text());
        if (date.matches() && MONTHS.contains(first3(date.group(2)))) {
            return turnedDate(line.get(), date);
        }
        return guarded(line.get(), text::span);
    }

    private Optional<Span> turnedDate(Preamble.Value line, Matcher date) {
        final int month = 1 + MONTHS.indexOf(first3(date.group(2)));
        final int day = Integer.parseInt(date.group(1));
        final String range = Math.min(month, day) + " to " + Math.max(month, day) + " mA";
        if (settings.accepts(Fault.RANGE_TURNED_DATE) && month != day) {
            findings.add(RecordFinding.of(Fault.ANSWERED, line.cell(), line.text(), "\"" + line.text()
                + "\" read as the range " + range + ", as told in the call"));
            return Optional.of(text.span(range));
        }
        findings.add(RecordFinding.question(Fault.RANGE_TURNED_DATE, line.cell(), line.text(), "range \""
            + line.text() + "\" is a date: a spreadsheet makes one of 4-20", "read it as " + range));
        return Optional.empty();
    }

    private static String first3(String word) {
        return word.toLowerCase(Locale.ROOT).substring(0, 3);
    }

    private static String capital(String word) {
        return word.substring(0, 1).toUpperCase(Locale.ROOT) + word.substring(1);
    }

    private Optional<Tolerance> tolerance(Preamble p, PreambleKey key, Span input, Span output) {
        final Optional<Preamble.Value> line = p.find(key).filter(v -> !text.isMissing(v.text()));
        if (line.isEmpty()) {
            return Optional.empty();
        }
        final Optional<Optional<Tolerance>> read = guarded(line.get(), t -> text.tolerance(t,
            p.text(PreambleKey.TOLERANCE_BASIS), input, output));
        if (read.isPresent() && read.get().isEmpty()) {
            findings.add(RecordFinding.of(Fault.TOLERANCE_BASIS_MISSING, line.get().cell(), line.get().text(),
                "tolerance \"" + line.get().text() + "\" does not say of what, so there is no pass or fail:"
                    + " write \"% of span\", \"% of reading\", \"% of upper range value\" or a unit"));
        }
        return read.flatMap(t -> t);
    }

    private Conditions conditions(Preamble p) {
        final Optional<Celsius> ambient = value(p, PreambleKey.AMBIENT,
            t -> text.optionalQuantity(t, UnitSymbols.parse("degC"))).filter(OptionalDouble::isPresent)
            .map(a -> new Celsius(a.getAsDouble()));
        return new Conditions(ambient, number(p, PreambleKey.SUPPLY, "V"), number(p, PreambleKey.LOAD,
            "ohm"));
    }

    private OptionalDouble number(Preamble p, PreambleKey key, String unit) {
        return value(p, key, t -> text.optionalQuantity(t, UnitSymbols.parse(unit)))
            .orElse(OptionalDouble.empty());
    }

    private Transfer transfer(Preamble p) {
        return value(p, PreambleKey.TRANSFER, HeaderReader::transferOf).orElse(Transfer.LINEAR);
    }

    private static Transfer transferOf(String words) {
        return switch (words.toLowerCase(Locale.ROOT).replaceAll("[-_\\s]+", " ")) {
            case "linear", "lin", "proportional" -> Transfer.LINEAR;
            case "square root", "sqrt", "root", "square root extraction" -> Transfer.SQUARE_ROOT;
            default -> throw new IllegalArgumentException("transfer function \"" + words
                + "\" is not known: \"linear\" or \"square root\" is allowed");
        };
    }

    private static Boolean yesOrNo(String word) {
        return switch (word.toLowerCase(Locale.ROOT)) {
            case "yes", "y", "adjusted", "true" -> true;
            case "no", "n", "not adjusted", "none", "false" -> false;
            default -> throw new IllegalArgumentException("\"" + word + "\": \"yes\" or \"no\" is allowed");
        };
    }

    private Optional<Phase> phase(Preamble p) {
        return value(p, PreambleKey.PHASE, t -> PhaseWord.read(t).orElseThrow(() ->
            new IllegalArgumentException("phase \"" + t + "\" is not known: " + PhaseWord.ALLOWED)));
    }

    private <T> Optional<T> value(Preamble p, PreambleKey key, Function<String, T> read) {
        return p.find(key).flatMap(line -> guarded(line, read));
    }

    private <T> Optional<T> guarded(Preamble.Value line, Function<String, T> read) {
        try {
            return Optional.of(read.apply(line.text()));
        } catch (IllegalArgumentException | java.time.DateTimeException e) {
            findings.add(RecordFinding.of(Fault.HEADER_UNREADABLE, line.cell(), line.text(), e.getMessage()));
            return Optional.empty();
        }
    }
}
