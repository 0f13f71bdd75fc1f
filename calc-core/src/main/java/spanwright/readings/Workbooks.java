package spanwright.readings;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.dhatim.fastexcel.reader.Cell;
import org.dhatim.fastexcel.reader.CellType;
import org.dhatim.fastexcel.reader.ExcelReaderException;
import org.dhatim.fastexcel.reader.ReadableWorkbook;
import org.dhatim.fastexcel.reader.ReadingOptions;
import org.dhatim.fastexcel.reader.Row;
import org.dhatim.fastexcel.reader.Sheet;

/**
 * Reads XLSX workbooks row by row, without holding the workbook. A cell that displays a date is a date, also
 * where a spreadsheet made it one by itself; a number keeps the decimals that its cell displays.
 */
final class Workbooks {
    private static final Pattern DECIMALS = Pattern.compile("[0#?][.]([0?]+)");

    private Workbooks() { }

    /** Whether a file is a workbook, by its first bytes. */
    static boolean isWorkbook(Path file) throws IOException {
        try (InputStream in = Files.newInputStream(file)) {
            final byte[] head = in.readNBytes(4);
            return head.length == 4 && head[0] == 'P' && head[1] == 'K' && head[2] == 3 && head[3] == 4;
        }
    }

    /**
     * The cells of the first sheet that has any.
     *
     * @throws ReadingsFormatException if the workbook cannot be read or is empty
     */
    static Grid grid(Path file) {
        final List<GridRow> rows = new ArrayList<>();
        final String sheet = rows(file, rows::add);
        if (rows.isEmpty()) {
            throw new ReadingsFormatException(RecordFinding.of(Fault.EMPTY_FILE,
                new CellAddress(RecordReader.name(file), sheet, 1, 1), "", "the workbook is empty: a row of"
                    + " column names and at least one row of readings are needed"));
        }
        return new Grid(RecordReader.name(file), sheet, "cells of sheet \"" + sheet + "\"", rows, List.of());
    }

    /** Hands the rows of the first sheet that has any to a consumer; returns the name of the sheet. */
    static String rows(Path file, Consumer<GridRow> consumer) {
        final String name = RecordReader.name(file);
        try (ReadableWorkbook book = new ReadableWorkbook(file.toFile(), new ReadingOptions(true, true))) {
            final List<Sheet> sheets = book.getSheets().toList();
            for (Sheet sheet : sheets) {
                final int[] count = {0};
                try (Stream<Row> rows = sheet.openStream()) {
                    rows.forEach(r -> {
                        final GridRow row = row(r, name, sheet.getName());
                        if (!row.isBlank()) {
                            count[0]++;
                            consumer.accept(row);
                        }
                    });
                }
                if (count[0] > 0) {
                    return sheet.getName();
                }
            }
            return sheets.isEmpty() ? "" : sheets.get(0).getName();
        } catch (ExcelReaderException | IOException | UncheckedIOException | IllegalStateException e) {
            throw new ReadingsFormatException(RecordFinding.of(Fault.NOT_A_TEXT,
                new CellAddress(name, "", 1, 1), "", "the workbook cannot be read: " + e.getMessage()));
        }
    }

    private static GridRow row(Row row, String file, String sheet) {
        final List<GridCell> cells = new ArrayList<>();
        for (int i = 0; i < row.getCellCount(); i++) {
            final int column = i;
            cells.add(row.getOptionalCell(i).map(c -> cell(c, new CellAddress(file, sheet, row.getRowNum(),
                column + 1))).orElse(GridCell.EMPTY));
        }
        final boolean comment = !cells.isEmpty() && cells.get(0).text().startsWith("#")
            && cells.get(0).kind() == GridCell.Kind.TEXT && cells.stream().skip(1)
            .allMatch(GridCell::isBlank);
        return new GridRow(row.getRowNum(), comment, cells.isEmpty() ? List.of(GridCell.EMPTY) : cells);
    }

    private static GridCell cell(Cell cell, CellAddress at) {
        if (cell.getType() == CellType.ERROR) {
            return GridCell.text(cell.getRawValue() == null ? "#ERROR" : cell.getRawValue());
        }
        if (cell.getType() == CellType.EMPTY || cell.getValue() == null && cell.getRawValue() == null) {
            return GridCell.EMPTY;
        }
        final boolean number = cell.getType() == CellType.NUMBER || cell.getType() == CellType.FORMULA
            && isNumber(cell.getRawValue());
        if (!number) {
            return GridCell.text(cell.getText());
        }
        final String format = cell.getDataFormatString() == null ? "" : cell.getDataFormatString();
        if (isDate(format)) {
            return new GridCell(date(cell), GridCell.Kind.DATE, -1);
        }
        final int decimals = decimals(format);
        return new GridCell(displayed(cell.getRawValue(), decimals), GridCell.Kind.NUMBER, decimals);
    }

    private static boolean isNumber(String raw) {
        return raw != null && raw.matches("[+-]?\\d+(\\.\\d*)?([eE][+-]?\\d+)?");
    }

    /**
     * A stored 4.0119999999999996 is the double nearest to 4.012: the shortest text of that double, with the
     * zeros that its cell displays.
     */
    private static String displayed(String raw, int decimals) {
        final BigDecimal shortest;
        try {
            shortest = new BigDecimal(Double.toString(Double.parseDouble(raw))).stripTrailingZeros();
        } catch (NumberFormatException e) {
            return raw;
        }
        final boolean plain = Math.abs(shortest.scale()) <= CellContent.MOST_DIGITS;
        return plain ? shortest.setScale(Math.max(0, Math.max(shortest.scale(), decimals))).toPlainString()
            : shortest.toString();
    }

    private static String date(Cell cell) {
        final String text = cell.asDate().toString();
        return text.endsWith("T00:00") ? text.substring(0, text.length() - 6) : text;
    }

    /** Whether a number format displays a date or a time: it has a letter for one outside quoted text. */
    static boolean isDate(String format) {
        final String bare = format.toLowerCase(Locale.ROOT).replaceAll("\"[^\"]*\"|\\\\.|\\[[^]]*]", "");
        return !bare.contains("general") && bare.matches(".*[dmyhs].*");
    }

    /** Decimals that a number format displays; -1 if it does not fix them. */
    static int decimals(String format) {
        final Matcher m = DECIMALS.matcher(format);
        if (m.find()) {
            return m.group(1).length();
        }
        return format.matches("0|#,##0|0%") ? 0 : -1;
    }
}
