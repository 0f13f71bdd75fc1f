package spanwright.readings;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import spanwright.quantity.Span;

/**
 * The rows of a record as they were read, to be written again without loss: every cell with its text at its
 * place, absent readings, times, remarks and comments too. Only what the call said is put in, so that the
 * written record says it by itself: ranges, zone, column heads, the order of day and month, and the answers
 * to questions; each such change is listed in a comment behind the last row. A row that was left out becomes
 * a comment.
 *
 * <p>Not kept, and so asked again: whether commas that may separate thousands are decimal commas, and what
 * was declined. Filled while the record is read, and not changed later.
 */
final class RecordCopy {
    private static final Pattern NUMERIC_DATE = Pattern.compile(
        "(?<!\\d)\\d{1,2}[-/]\\d{1,2}[-/]\\d{4}(?!\\d)");

    private final Grid grid;
    private final RecordReading settings;
    private final DecimalSign decimal;
    private final Map<CellAddress, String> changes = new LinkedHashMap<>();
    private final Map<PreambleKey, String> before = new LinkedHashMap<>();
    private final Set<Integer> leftOut = new HashSet<>();
    private boolean first = true;

    RecordCopy(Grid grid, RecordReading settings, DecimalSign decimal) {
        this.grid = grid;
        this.settings = settings;
        this.decimal = decimal;
    }

    DecimalSign decimal() {
        return decimal;
    }

    /** Takes in what was understood of a table. */
    void table(Block block, BlockHeader header, ColumnPlan plan) {
        range(PreambleKey.INPUT_RANGE, block, header.input());
        range(PreambleKey.OUTPUT_RANGE, block, header.output());
        settings.zone().ifPresent(z -> zone(block, z));
        plan.columns().forEach(c -> head(block, c));
        block.preamble().find(PreambleKey.DATE).ifPresent(v -> change(v, plainDates(v.text())));
        block.preamble().standards().forEach(v -> change(v, plainDates(v.text())));
        plan.column(ColumnRole.TIME).ifPresent(c -> block.rows().forEach(r -> {
            final String text = r.cell(c.index()).text();
            change(grid.at(r, c.index()), text, plainDates(text));
        }));
        first = false;
    }

    /** Takes in a table that was refused as a whole. */
    void refused(Block block) {
        leftOut.add(block.head().number());
        block.rows().forEach(r -> leftOut.add(r.number()));
    }

    /** Takes in the runs: readings that were exchanged, and the rows that were refused. */
    void runs(List<RunRecord> runs, Collection<RecordFinding> findings) {
        runs.stream().flatMap(r -> r.run().readings().stream()).forEach(r -> {
            final CellAddress in = r.applied().cell();
            final CellAddress out = r.indicated().cell();
            if (in.row() != out.row()) {
                changes.put(new CellAddress(in.file(), in.sheet(), in.row(), out.column()),
                    r.indicated().written());
            }
        });
        findings.stream().filter(f -> f.outcome() == Outcome.REFUSED).forEach(f -> leftOut.add(f.cell()
            .row()));
    }

    /** The rows to write. */
    List<GridRow> rows() {
        final List<GridRow> out = new ArrayList<>();
        before.forEach((k, v) -> out.add(new GridRow(out.size() + 1, false, List.of(GridCell.text(capital(k
            .word())), GridCell.text(v)))));
        final int shift = out.size();
        for (GridRow row : grid.rows()) {
            final int number = row.number() + shift;
            out.add(leftOut.contains(row.number()) && !row.comment() ? comment(number, " refused: "
                + row.cells().stream().map(GridCell::text).collect(Collectors.joining(" | ")))
                : new GridRow(number, row.comment(), cells(row)));
        }
        int last = out.isEmpty() ? 0 : out.get(out.size() - 1).number();
        for (Map.Entry<CellAddress, String> c : changes.entrySet()) {
            out.add(comment(++last, " changed when written, as told in the call: row " + (c.getKey().row()
                + shift) + ", column " + c.getKey().column() + " now \"" + c.getValue() + "\", was \""
                + text(c.getKey()) + "\""));
        }
        return out;
    }

    private GridRow comment(int number, String text) {
        return new GridRow(number, true, List.of(GridCell.text(grid.sheet().isEmpty() ? text : "#" + text)));
    }

    private List<GridCell> cells(GridRow row) {
        final List<GridCell> out = new ArrayList<>(row.cells());
        for (int c = 0; c < out.size(); c++) {
            final String changed = changes.get(grid.at(row, c));
            if (changed != null) {
                out.set(c, GridCell.text(changed));
            }
        }
        return out;
    }

    private String text(CellAddress at) {
        return grid.rows().stream().filter(r -> r.number() == at.row()).findFirst()
            .map(r -> r.cell(at.column() - 1).text()).orElse("");
    }

    private void range(PreambleKey key, Block block, Span range) {
        final Optional<Preamble.Value> line = block.preamble().find(key);
        final String text = number(range.lower()) + " to " + number(range.upper()) + " " + range.symbol();
        if (line.isEmpty()) {
            before.put(key, text);
        } else if (!states(line.get().text(), range)) {
            change(line.get(), text);
        }
    }

    private boolean states(String text, Span range) {
        try {
            return new HeaderText(decimal).span(text).equals(range);
        } catch (IllegalArgumentException e) {
            return false;
        }
    }

    private void zone(Block block, ZoneId zone) {
        final Optional<Preamble.Value> line = block.preamble().find(PreambleKey.ZONE);
        if (line.isPresent()) {
            change(line.get(), zone.getId());
        } else if (first) {
            before.put(PreambleKey.ZONE, zone.getId());
        }
    }

    private void head(Block block, ColumnMeaning column) {
        final GridCell cell = block.head().cell(column.index());
        final boolean says = ColumnHead.understand(column.index(), cell.text()).map(m -> m.equals(column))
            .orElse(false);
        if (!says) {
            change(grid.at(block.head(), column.index()), cell.text(), head(column));
        }
    }

    /** A head in trade words that is understood as this column. */
    private static String head(ColumnMeaning c) {
        final String words = c.role().name().toLowerCase(Locale.ROOT)
            + c.phase().map(p -> " " + p).orElse("") + c.direction().map(d -> " " + d).orElse("")
            + (c.cycle().isPresent() ? " cycle " + c.cycle().getAsInt() : "");
        return capital(words) + (c.unit().isEmpty() ? "" : " (" + c.unit() + (c.ohms().isEmpty() ? ""
            : " across " + c.ohms() + " ohm") + ")");
    }

    /** The text with each date whose order only the call told written as year, month, day. */
    private String plainDates(String text) {
        if (settings.dayFirstOrMonthFirst().isEmpty()) {
            return text;
        }
        final DateText told = new DateText(settings.dayFirstOrMonthFirst(), Optional.empty());
        final DateText untold = new DateText(Optional.empty(), Optional.empty());
        return NUMERIC_DATE.matcher(text).replaceAll(m -> untold.read(m.group()).fault().isEmpty() ? m.group()
            : Matcher.quoteReplacement(told.read(m.group()).date().map(RecordDate::day)
                .map(LocalDate::toString).orElse(m.group())));
    }

    private void change(Preamble.Value line, String text) {
        if (line.text().equals(text)) {
            return;
        }
        final GridRow row = grid.rows().stream().filter(r -> r.number() == line.cell().row()).findFirst()
            .orElseThrow();
        final String key = row.cell(0).text();
        change(line.cell(), row.cell(line.cell().column() - 1).text(), line.cell().column() == 1
            ? key.substring(0, key.indexOf(':') + 1) + " " + text : text);
        for (int c = line.cell().column(); c <= row.lastFilled(); c++) {
            changes.put(grid.at(row, c), "");
        }
    }

    private void change(CellAddress at, String from, String to) {
        if (!from.equals(to)) {
            changes.put(at, to);
        }
    }

    private String number(double value) {
        return BigDecimal.valueOf(value).stripTrailingZeros().toPlainString().replace('.', decimal.sign());
    }

    private static String capital(String words) {
        return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    }
}
