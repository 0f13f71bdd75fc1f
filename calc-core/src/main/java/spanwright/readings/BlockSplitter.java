package spanwright.readings;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Finds the tables of a record and the header lines above each. A row is the head of a table if at least two
 * of its cells are known column names and one of them holds readings; a row whose first cell is a known key
 * is a header line. Not thread safe; used once for one grid.
 */
final class BlockSplitter {
    private final Grid grid;
    private final RecordReading settings;
    private final List<RecordFinding> findings = new ArrayList<>();
    private final List<Block> blocks = new ArrayList<>();
    private final Map<PreambleKey, Preamble.Value> lines = new EnumMap<>(PreambleKey.class);
    private final List<Preamble.Value> standards = new ArrayList<>();
    private Preamble preamble = Preamble.EMPTY;
    private Optional<GridRow> head = Optional.empty();
    private List<ColumnMeaning> columns = List.of();
    private List<GridRow> rows = new ArrayList<>();
    private int comments;
    private int headerRows;

    BlockSplitter(Grid grid, RecordReading settings) {
        this.grid = grid;
        this.settings = settings;
    }

    /**
     * The tables of the grid.
     *
     * @throws ReadingsFormatException if there is none
     */
    List<Block> split() {
        for (GridRow row : grid.rows()) {
            if (row.comment()) {
                comments++;
            } else {
                take(row);
            }
        }
        endTable();
        if (blocks.isEmpty()) {
            throw noTable();
        }
        return List.copyOf(blocks);
    }

    List<RecordFinding> findings() {
        return findings;
    }

    int comments() {
        return comments;
    }

    /** Header lines and rows of column names. */
    int headerRows() {
        return headerRows;
    }

    private void take(GridRow row) {
        final Optional<PreambleKey> key = Preamble.key(row);
        final boolean oneValue = key.isPresent() && row.lastFilled() <= 1;
        final List<ColumnMeaning> known = !oneValue && mayBeHead(row) ? columns(row) : List.of();
        if (isHead(known)) {
            endTable();
            headerRows++;
            preamble = preamble.with(lines, standards);
            lines.clear();
            standards.clear();
            head = Optional.of(row);
            columns = known;
            noteUnknown(row, known);
        } else if (key.isPresent() && row.lastFilled() <= mostCells(key.get())) {
            endTable();
            headerRows++;
            line(row, key.get());
        } else if (head.isPresent()) {
            rows.add(row);
        } else {
            headerRows++;
            findings.add(RecordFinding.of(Fault.NOT_UNDERSTOOD, grid.at(row, 0), row.cell(0).text(),
                "line \"" + row.cell(0).text() + "\" is no known header line and is not used"));
        }
    }

    /** A table row may begin with a word that is also a key; a header line then has one value only. */
    private int mostCells(PreambleKey key) {
        final boolean alsoColumn = head.isPresent() && switch (key) {
            case TAG, SERIAL, CHANNEL, AMBIENT, DATE, PHASE, REMARK -> true;
            default -> false;
        };
        return alsoColumn ? 1 : Integer.MAX_VALUE;
    }

    private void line(GridRow row, PreambleKey key) {
        final Preamble.Value value = Preamble.value(row, grid);
        if (key == PreambleKey.STANDARD) {
            standards.add(value);
            return;
        }
        final Preamble.Value before = lines.put(key, value);
        if (before != null && key != PreambleKey.REMARK && !before.text().equals(value.text())) {
            findings.add(RecordFinding.of(Fault.HEADER_UNREADABLE, value.cell(), value.text(), "\""
                + key.word()
                + "\" is \"" + value.text() + "\" here and \"" + before.text() + "\" at " + before.cell()
                + ": state it once"));
        }
    }

    private void endTable() {
        head.ifPresent(h -> blocks.add(new Block(preamble, h, columns, rows)));
        head = Optional.empty();
        rows = new ArrayList<>();
    }

    /** A row of readings has hardly a word in it: spares the understanding of every cell as a head. */
    private boolean mayBeHead(GridRow row) {
        if (settings.hasMappings()) {
            return true;
        }
        int words = 0;
        for (GridCell c : row.cells()) {
            final String text = c.text();
            words += !text.isEmpty() && "0123456789+-.".indexOf(text.charAt(0)) < 0 ? 1 : 0;
        }
        return words >= 2;
    }

    private List<ColumnMeaning> columns(GridRow row) {
        final List<ColumnMeaning> known = new ArrayList<>();
        for (int i = 0; i < row.cells().size(); i++) {
            final int index = i;
            final String text = row.cells().get(i).text();
            if (!text.isBlank()) {
                settings.mapped(index, text).or(() -> ColumnHead.understand(index, text))
                    .ifPresent(known::add);
            }
        }
        return known;
    }

    private static boolean isHead(List<ColumnMeaning> known) {
        final boolean readings = known.stream().anyMatch(c -> c.role() == ColumnRole.APPLIED
            || c.role() == ColumnRole.INDICATED);
        return readings && known.size() >= 2;
    }

    private void noteUnknown(GridRow row, List<ColumnMeaning> known) {
        for (int i = 0; i < row.cells().size(); i++) {
            final int index = i;
            if (!row.cells().get(i).isBlank() && known.stream().noneMatch(c -> c.index() == index)) {
                findings
                    .add(RecordFinding.of(Fault.NOT_UNDERSTOOD, grid.at(row, i), row.cells().get(i).text(),
                        "column \"" + row.cells().get(i).text() + "\" is not known and is not used"));
            }
        }
    }

    private ReadingsFormatException noTable() {
        final RecordFinding none = RecordFinding.of(Fault.HEADER_MISSING, grid.start(), "",
            "no row names the columns: a row"
            + " with at least an applied input and an indicated output is needed, such as"
            + " \"Applied (mA),Indicated (mA)\"");
        findings.add(0, none);
        return new ReadingsFormatException(none, findings);
    }
}
