package spanwright.readings;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.BiConsumer;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;

/**
 * Writes cells as CSV and XLSX so that nothing is lost and nothing is run: text that a spreadsheet would take
 * for a formula (it begins with = + - @ or a control character) gets an apostrophe in front in CSV, which the
 * reader takes off again, and stays text in a workbook. Numbers keep the digits that were written.
 */
final class TableExport {
    private static final int MOST_ROWS = 1_048_576;
    private static final int MOST_DIGITS = 15;

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

    static boolean isPlainNumber(String cell) {
        return cell.matches("[+-]?\\d+([.,]\\d+)?([eE][+-]?\\d{1,3})?");
    }

    /** Writes comments and rows as CSV in UTF-8. */
    static void csv(Path file, List<String> comments, Iterable<List<String>> rows) {
        try (Writer out = Files.newBufferedWriter(file, StandardCharsets.UTF_8);
            CsvWriter csv = CsvWriter.builder().lineDelimiter(LineDelimiter.LF).build(out)) {
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
                    throw new IllegalArgumentException("a sheet holds at most " + MOST_ROWS
                        + " rows: write CSV");
                }
                cells(ws, r++, row);
            }
        } catch (IOException e) {
            throw new UncheckedIOException("cannot write " + file + ": " + e.getMessage(), e);
        }
    }

    private static void cells(Worksheet ws, int r, List<String> row) {
        final BiConsumer<Integer, String> text = (c, t) -> ws.inlineString(r, c, t);
        for (int c = 0; c < row.size(); c++) {
            final String cell = row.get(c);
            // A spreadsheet keeps 15 digits and no leading zeros or plus signs: such a cell stays text.
            if (cell.matches("-?(0|[1-9]\\d*)(\\.\\d+)?") && cell.replaceAll("\\D", "")
            .length() <= MOST_DIGITS
                && !cell.matches("-0(\\.0*)?")) {
                final int decimals = cell.indexOf('.') < 0 ? 0 : cell.length() - cell.indexOf('.') - 1;
                ws.value(r, c, Double.valueOf(cell));
                ws.style(r, c).format(decimals == 0 ? "0" : "0." + "0".repeat(decimals)).set();
            } else if (!cell.isEmpty()) {
                text.accept(c, cell);
            }
        }
    }
}
