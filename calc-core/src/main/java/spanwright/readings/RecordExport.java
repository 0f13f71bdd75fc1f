package spanwright.readings;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import spanwright.quantity.NumberText;
import tech.tablesaw.api.DoubleColumn;
import tech.tablesaw.api.IntColumn;
import tech.tablesaw.api.StringColumn;
import tech.tablesaw.api.Table;

/**
 * The runs of a record as rows: as a notebook table with the place of each reading, and in the form of a
 * record that can be read again. Units are those of the ranges, decimals those of the readings.
 */
final class RecordExport {
    private RecordExport() { }

    /** One row per reading; the text of the cells beside the numbers, and where they stand. */
    static Table table(String file, List<RunRecord> runs) {
        final Table t = Table.create(file, StringColumn.create("channel"), StringColumn.create("serial"),
            StringColumn.create("phase"), DoubleColumn.create("ambient (\u00b0C)"), IntColumn.create("cycle"),
            StringColumn.create("direction"), DoubleColumn.create("point (%)"),
            DoubleColumn.create("applied"),
            StringColumn.create("applied as written"), StringColumn.create("applied unit"),
            DoubleColumn.create("indicated"), StringColumn.create("indicated as written"),
            StringColumn.create("indicated unit"), StringColumn.create("use"),
            StringColumn.create("applied at"),
            StringColumn.create("indicated at"));
        for (RunRecord r : runs) {
            r.run().readings().forEach(x -> row(t, r.run(), x, r.plateau().contains(x) ? "plateau" : ""));
            r.clamped().forEach(x -> row(t, r.run(), x, "clamped, not used"));
        }
        return t;
    }

    private static void row(Table t, CalibrationRun run, Reading r, String use) {
        t.stringColumn(0).append(run.channel());
        t.stringColumn(1).append(run.serial());
        t.stringColumn(2).append(run.phase().toString());
        append(t.doubleColumn(3), run.conditions().ambient().map(a -> a.value()));
        t.intColumn(4).append(r.cycle());
        t.stringColumn(5).append(r.direction().toString());
        append(t.doubleColumn(6), r.nominalPercent().isPresent() ? Optional.of(r.nominalPercent()
            .getAsDouble())
            : Optional.empty());
        t.doubleColumn(7).append(r.applied().value());
        t.stringColumn(8).append(r.applied().written());
        t.stringColumn(9).append(run.input().symbol());
        t.doubleColumn(10).append(r.indicated().value());
        t.stringColumn(11).append(r.indicated().written());
        t.stringColumn(12).append(run.output().symbol());
        t.stringColumn(13).append(use);
        t.stringColumn(14).append(r.applied().cell().toString());
        t.stringColumn(15).append(r.indicated().cell().toString());
    }

    private static void append(DoubleColumn column, Optional<Double> value) {
        if (value.isPresent()) {
            column.append(value.get());
        } else {
            column.appendMissing();
        }
    }

    /** The rows of a record file that holds the runs. */
    static List<List<String>> rows(List<RunRecord> runs) {
        final List<List<String>> out = new ArrayList<>();
        Map<String, String> before = Map.of();
        for (RunRecord r : runs) {
            final Map<String, String> lines = lines(r);
            for (String key : before.keySet()) {
                lines.putIfAbsent(key, "n/a");
            }
            lines.forEach((k, v) -> out.add(List.of(k, v)));
            r.header().standards().forEach(s -> out.add(List.of("Standard", standard(s))));
            out.add(List.of("Cycle", "Point (%)", "Direction", "Applied (" + r.run().input().symbol() + ")",
                "Indicated (" + r.run().output().symbol() + ")"));
            r.run().readings().forEach(x -> out.add(reading(x)));
            r.clamped().forEach(x -> out.add(reading(x)));
            before = lines;
        }
        return out;
    }

    private static Map<String, String> lines(RunRecord r) {
        final CalibrationRun run = r.run();
        final Map<String, String> lines = new LinkedHashMap<>();
        lines.put("Tag", run.channel());
        r.header().lines().forEach((k, v) -> lines.put(capital(k), v));
        lines.put("Tag", run.channel());
        lines.put("Serial", run.serial());
        lines.put("Input range", run.input().lower() + " to " + run.input().upper() + " " + run.input()
            .symbol());
        lines.put("Output range", run.output().lower() + " to " + run.output().upper() + " "
            + run.output().symbol());
        lines.put("Transfer", run.transfer().toString());
        lines.put("Phase", run.phase().toString());
        lines.remove("Adjusted");
        run.conditions().ambient().ifPresent(a -> lines.put("Ambient", a.value() + " degC"));
        return lines;
    }

    private static String capital(String key) {
        return key.substring(0, 1).toUpperCase(Locale.ROOT) + key.substring(1);
    }

    private static String standard(Standard s) {
        return s.id() + (s.certificate().isEmpty() ? "" : "; certificate " + s.certificate())
            + s.certified().map(d -> "; certified " + d).orElse("") + s.due().map(d -> "; due " + d)
            .orElse("")
            + (s.expandedU().isPresent() ? "; U " + s.expandedU().getAsDouble() + " " + s.unit() : "")
            + (s.coverageFactor().isPresent() ? "; k " + s.coverageFactor().getAsDouble() : "");
    }

    private static List<String> reading(Reading r) {
        return List.of(String.valueOf(r.cycle()), r.nominalPercent().isPresent()
            ? NumberText.plain(r.nominalPercent().getAsDouble(), 15).replace(NumberText.MINUS, '-') : "",
            r.direction().toString(), decimals(r.applied()), decimals(r.indicated()));
    }

    /** The number with the decimals of its resolution, and more only where it has more. */
    static String decimals(Entry e) {
        final BigDecimal value = BigDecimal.valueOf(e.value());
        final int shown = (int) Math.round(-Math.log10(e.resolution()));
        final int own = value.stripTrailingZeros().scale();
        return value.setScale(Math.max(Math.max(shown, own), 0)).toPlainString();
    }
}
