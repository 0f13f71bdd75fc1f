package spanwright.readings;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;

/** Joins the parts of a table that were read side by side, with their lines, notes and comments. */
final class TableJoin {
    private final String file;
    private final TableLayout layout;
    private final int linesBefore;
    private final List<RecordFinding> findings = new ArrayList<>();
    private final List<String> comments = new ArrayList<>();
    private final Set<Integer> repaired = new HashSet<>();

    /**
     * Prepares the join.
     *
     * @param linesBefore lines of the file before the first part
     * @param mark        whether the file began with a byte order mark
     */
    TableJoin(String file, TableLayout layout, int linesBefore, boolean mark) {
        this.file = file;
        this.layout = layout;
        this.linesBefore = linesBefore;
        if (mark) {
            findings.add(RecordFinding.of(Fault.BYTE_ORDER_MARK, new CellAddress(file, "", 1, 1), "",
                "byte order mark of UTF-8 dropped"));
        }
        layout.decidedBy().ifPresent(f -> findings.add(RecordFinding.of(Fault.DECIMAL_COMMA, f.cell(),
            f.written(), "the decimal sign of this file is the comma: \"" + f.written() + "\"")));
    }

    /** The table of the parts, in the order of the file. */
    ReadingsTable join(List<TableChunk> parts, List<String> commentsBefore) {
        comments.addAll(commentsBefore);
        final int rows = parts.stream().mapToInt(TableChunk::rows).sum();
        final int[] lines = new int[rows];
        int at = 0;
        int before = linesBefore;
        for (TableChunk part : parts) {
            for (int i = 0; i < part.rows(); i++) {
                lines[at++] = before + part.line(i);
            }
            notes(part, before, "");
            part.comments().forEach(c -> comments.add(c.text().substring(1).strip()));
            before += part.lineCount();
        }
        return table(parts, lines, "");
    }

    /** The table of cells that were separated elsewhere; their rows know their lines. */
    ReadingsTable join(TableChunk part, Grid grid) {
        findings.addAll(0, grid.findings());
        grid.rows().stream().filter(GridRow::comment).forEach(r -> comments.add(r.cell(0).text()
            .replaceFirst("^#", "").strip()));
        final int[] lines = new int[part.rows()];
        for (int i = 0; i < lines.length; i++) {
            lines[i] = part.line(i);
        }
        notes(part, 0, grid.sheet());
        return table(List.of(part), lines, grid.sheet());
    }

    private ReadingsTable table(List<TableChunk> parts, int[] lines, String sheet) {
        final List<TableColumn> columns = IntStream.range(0, layout.heads().size()).parallel()
            .mapToObj(c -> TableColumn.join(layout.heads().get(c), parts.stream().map(p -> p.columns().get(c))
                .toList())).toList();
        final RowAccount account = new RowAccount(comments.size(), 1, lines.length - repaired.size(),
            repaired.size(), 0);
        return new ReadingsTable(file, sheet, columns, lines, comments, findings, account);
    }

    private void notes(TableChunk part, int before, String sheet) {
        for (TableChunk.Note n : part.notes()) {
            final CellAddress at = new CellAddress(file, sheet, before + n.line(), n.column() + 1);
            findings.add(RecordFinding.of(n.fault(), at, n.written(), "\"" + n.written() + "\": "
                + n.fault()));
            if (n.fault().outcome() == Outcome.REPAIRED) {
                repaired.add(before + n.line());
            }
        }
        if (part.moreNotes() > 0) {
            findings.add(RecordFinding.of(Fault.NOT_UNDERSTOOD, new CellAddress(file, sheet, before
                + part.lineCount(),
                1), "", part.moreNotes()
                + " further cells up to this line were absent or repaired; the text of"
                    + " each is kept as written"));
        }
    }
}
