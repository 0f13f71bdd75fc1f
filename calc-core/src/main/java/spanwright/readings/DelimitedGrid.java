package spanwright.readings;

import de.siegmar.fastcsv.reader.CommentStrategy;
import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import de.siegmar.fastcsv.reader.FieldMismatchStrategy;
import java.util.ArrayList;
import java.util.List;

/** Separates the cells of a text file by comma, semicolon or tab, strictly and by position. */
final class DelimitedGrid {
    private static final int LONGEST_CELL = 1 << 20;

    private DelimitedGrid() { }

    /**
     * The cells of a text.
     *
     * @throws ReadingsFormatException if it is empty or its quotation marks do not match
     */
    static Grid of(TextFile source, String file) {
        return of(source, file, delimiter(source.text()));
    }

    /** As {@link #of(TextFile, String)}, with the separator of a larger part of the file. */
    static Grid of(TextFile source, String file, char delimiter) {
        final List<GridRow> rows = new ArrayList<>();
        final List<RecordFinding> findings = new ArrayList<>(source.findings());
        int line = 1;
        try (CsvReader<CsvRecord> reader = reader(delimiter).ofCsvRecord(source.text())) {
            for (CsvRecord r : reader) {
                line = (int) r.getStartingLineNumber();
                final GridRow row = row(r, file, findings);
                refuseLineEnds(row, file);
                if (!row.isBlank() || r.isComment()) {
                    rows.add(row);
                }
            }
        } catch (CsvParseException e) {
            throw new ReadingsFormatException(RecordFinding.of(Fault.BROKEN_QUOTE,
                new CellAddress(file, "", line, 1), "", "at or after this line a quoted cell is not closed"
                    + " by one quotation mark, or text follows it"));
        } catch (java.io.IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
        if (rows.isEmpty()) {
            throw new ReadingsFormatException(RecordFinding.of(Fault.EMPTY_FILE,
                new CellAddress(file, "", 1, 1), "",
                "the file is empty: a row of column names and at least one row of readings are needed"));
        }
        return new Grid(file, "", word(delimiter), rows, findings);
    }

    /** A row; the apostrophe that keeps a spreadsheet from running a cell is taken off and listed. */
    private static GridRow row(CsvRecord r, String file, List<RecordFinding> findings) {
        final int line = (int) r.getStartingLineNumber();
        final List<GridCell> cells = new ArrayList<>();
        for (String field : r.getFields()) {
            final String text = r.isComment() ? field : TableExport.original(field);
            if (!text.equals(field)) {
                findings.add(RecordFinding.of(Fault.CHARACTER, new CellAddress(file, "", line, cells.size()
                    + 1), field, "apostrophe taken off that keeps a spreadsheet from running \"" + text
                    + "\""));
            }
            cells.add(GridCell.text(text));
        }
        return new GridRow(line, r.isComment(), cells);
    }

    /**
     * Tab or semicolon if at least half of the lines hold one and the first has no comma instead; else comma.
     */
    static char delimiter(String text) {
        int lines = 0;
        int tabs = 0;
        int semicolons = 0;
        String first = "";
        int from = 0;
        while (from < text.length() && lines < 1000) {
            int to = text.indexOf('\n', from);
            to = to < 0 ? text.length() : to;
            final String line = text.substring(from, to);
            from = to + 1;
            if (line.isBlank() || line.startsWith("#")) {
                continue;
            }
            first = lines++ == 0 ? line : first;
            tabs += line.indexOf('\t') >= 0 ? 1 : 0;
            semicolons += line.indexOf(';') >= 0 ? 1 : 0;
        }
        if (2 * tabs >= Math.max(1, lines) && (first.indexOf('\t') >= 0 || first.indexOf(',') < 0)) {
            return '\t';
        }
        final boolean semicolon = 2 * semicolons >= Math.max(1, lines)
            && (first.indexOf(';') >= 0 || first.indexOf(',') < 0);
        return semicolon ? ';' : ',';
    }

    private static CsvReader.CsvReaderBuilder reader(char delimiter) {
        return CsvReader.builder().fieldSeparator(delimiter).commentStrategy(CommentStrategy.READ)
            .skipEmptyLines(true).extraFieldStrategy(FieldMismatchStrategy.IGNORE)
            .missingFieldStrategy(FieldMismatchStrategy.IGNORE)
            .maxBufferSize(LONGEST_CELL);
    }

    private static void refuseLineEnds(GridRow row, String file) {
        for (int i = 0; i < row.cells().size() && !row.comment(); i++) {
            final String text = row.cells().get(i).text();
            if (text.indexOf('\n') >= 0 || text.indexOf('\r') >= 0) {
                throw new ReadingsFormatException(RecordFinding.of(Fault.BROKEN_QUOTE,
                    new CellAddress(file, "", row.number(), i + 1), text,
                    "the quoted cell that begins here runs over a line end: a quotation mark is missing"));
            }
        }
    }

    private static String word(char delimiter) {
        return switch (delimiter) {
            case '\t' -> "tab";
            case ';' -> "semicolon";
            default -> "comma";
        };
    }
}
