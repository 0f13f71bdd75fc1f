package spanwright.readings;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.regex.Pattern;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;

/**
 * Writes cells as CSV and XLSX so that nothing is lost and nothing is run: text that a spreadsheet would take
 * for a formula (it begins with = + - @ or a control character) gets an apostrophe in front in CSV, which the
 * reader takes off again, and stays text in a workbook. Numbers keep the digits that were written.
 */
final class TableExport {
    private static final int SAMPLE = 1000;
    private static final int MOST_ROWS = 1_048_576;
    private static final int MOST_DIGITS = 15;
    private static final Pattern HARMLESS = Pattern.compile("-{1,3}|[+-]?(\\d+([.,]\\d*)?|[.,]\\d+)"
        + "([eE][+-]?\\d{1,3})?(\\s*[\\p{L}%\u00b0][\\p{L}\\d%\u00b0/., ]{0,40})?");

    private TableExport() { }

    /** Whether a spreadsheet would take a cell for a formula although it is no plain number. */
    static boolean isFormula(String cell) {
        return !cell.isEmpty() && "=+-@\t\r".indexOf(cell.charAt(0)) >= 0 && !isPlainNumber(cell);
    }

    /**
     * The cell made harmless for CSV; text that begins with apostrophes gets one more, so that it comes back.
     */
    static String neutral(String cell) {
        return isFormula(cell) || cell.startsWith("'") ? "'" + cell : cell;
    }

    /** The cell as it was before {@link #neutral}. */
    static String original(String cell) {
        final boolean ours = cell.length() > 1 && cell.charAt(0) == '\''
            && (isFormula(cell.substring(1)) || cell.charAt(1) == '\'');
        return ours || cell.equals("''") ? cell.substring(1) : cell;
    }

    /** A number, with a unit or not, or dashes: nothing in it can be run. */
    static boolean isPlainNumber(String cell) {
        return HARMLESS.matcher(cell).matches();
    }

    /**
     * Writes rows as CSV in UTF-8, each at the line of its number.
     *
     * @throws IllegalArgumentException if no separator would be found again
     */
    static void csv(Path file, List<GridRow> rows, DecimalSign decimal) {
        try {
            Files.writeString(file, text(rows, separator(rows, decimal)));
        } catch (IOException e) {
            throw new UncheckedIOException("cannot write " + file + ": " + e.getMessage(), e);
        }
    }

    /** A separator that the reader finds again, whatever stands in the cells. */
    private static char separator(List<GridRow> rows, DecimalSign decimal) {
        final List<Character> separators = decimal == DecimalSign.COMMA ? List.of(';', '\t')
            : List.of(',', ';', '\t');
        return separators.stream().filter(c -> DelimitedGrid.delimiter(text(rows, c)) == c).findFirst()
            .orElseThrow(() -> new IllegalArgumentException("the cells hold commas, semicolons and tabs in so"
                + " many rows that no separator would be found again: write XLSX"));
    }

    private static String text(List<GridRow> rows, char separator) {
        final StringWriter out = new StringWriter();
        int line = 1;
        // Without a buffer: blank lines and comments go past the CSV writer.
        final CsvWriter csv = CsvWriter.builder().lineDelimiter(LineDelimiter.LF).fieldSeparator(separator)
            .bufferSize(0).build(out);
        for (GridRow row : rows) {
            out.write("\n".repeat(Math.max(0, row.number() - line)));
            line = row.number() + 1;
            if (row.comment()) {
                out.write("#" + row.cell(0).text().replaceFirst("^#", "") + "\n");
            } else {
                csv.writeRecord(row.cells().stream().map(c -> neutral(c.text())).toArray(String[]::new));
            }
        }
        return out.toString();
    }

    /** Writes rows as a workbook with one sheet, each at the row of its number. */
    static void xlsx(Path file, String sheet, List<GridRow> rows) {
        if (!rows.isEmpty() && rows.get(rows.size() - 1).number() > MOST_ROWS) {
            throw tooLong();
        }
        try (OutputStream out = Files.newOutputStream(file); Workbook book = new Workbook(out, "Spanwright",
            "1.0")) {
            final Worksheet ws = book.newWorksheet(sheet);
            for (GridRow row : rows) {
                for (int c = 0; c < row.cells().size(); c++) {
                    final GridCell cell = row.cell(c);
                    cell(ws, row.number() - 1, c, row.comment() && !cell.text().startsWith("#") ? "#"
                        + cell.text() : cell.text(), cell.decimals());
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException("cannot write " + file + ": " + e.getMessage(), e);
        }
    }

    private static IllegalArgumentException tooLong() {
        return new IllegalArgumentException("a sheet holds at most " + MOST_ROWS + " rows: write CSV");
    }

    /**
     * Writes comments and rows as CSV in UTF-8.
     *
     * @throws IllegalArgumentException if no separator would be found again
     */
    static void csv(Path file, List<String> comments, Iterable<List<String>> rows, DecimalSign decimal) {
        final List<GridRow> first = new ArrayList<>();
        for (Iterator<List<String>> i = rows.iterator(); i.hasNext() && first.size() < SAMPLE;) {
            first.add(new GridRow(first.size() + 1, false, i.next().stream().map(GridCell::text).toList()));
        }
        final char separator = separator(first, decimal);
        try (Writer out = Files.newBufferedWriter(file, StandardCharsets.UTF_8);
            CsvWriter csv = CsvWriter.builder().lineDelimiter(LineDelimiter.LF).fieldSeparator(separator)
                .build(out)) {
            for (String c : comments) {
                out.write("# " + c.replaceAll("[\\r\\n]+", " ") + "\n");
            }
            for (List<String> row : rows) {
                csv.writeRecord(row.stream().map(TableExport::neutral).toArray(String[]::new));
            }
        } catch (IOException e) {
            throw new UncheckedIOException("cannot write " + file + ": " + e.getMessage(), e);
        }
    }

    /** Writes rows as a workbook with one sheet. */
    static void xlsx(Path file, String sheet, Iterable<List<String>> rows) {
        try (OutputStream out = Files.newOutputStream(file); Workbook book = new Workbook(out, "Spanwright",
            "1.0")) {
            final Worksheet ws = book.newWorksheet(sheet);
            int r = 0;
            for (List<String> row : rows) {
                if (r == MOST_ROWS) {
                    throw tooLong();
                }
                for (int c = 0; c < row.size(); c++) {
                    cell(ws, r, c, row.get(c), -1);
                }
                r++;
            }
        } catch (IOException e) {
            throw new UncheckedIOException("cannot write " + file + ": " + e.getMessage(), e);
        }
    }

    /**
     * A number with the decimals that are displayed, or with those of its text if {@code displayed} is -1.
     */
    private static void cell(Worksheet ws, int r, int c, String text, int displayed) {
        // A spreadsheet keeps 15 digits and no leading zeros or plus signs: such a cell stays text.
        if (text.matches("-?(0|[1-9]\\d*)(\\.\\d+)?") && text.replaceAll("\\D", "").length() <= MOST_DIGITS
            && !text.matches("-0(\\.0*)?")) {
            final int own = text.indexOf('.') < 0 ? 0 : text.length() - text.indexOf('.') - 1;
            final int decimals = displayed < 0 ? own : displayed;
            ws.value(r, c, Double.valueOf(text));
            ws.style(r, c).format(decimals == 0 ? "0" : "0." + "0".repeat(decimals)).set();
        } else if (!text.isEmpty()) {
            ws.inlineString(r, c, text);
        }
    }
}
