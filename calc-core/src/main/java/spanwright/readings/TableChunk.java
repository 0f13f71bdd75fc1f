package spanwright.readings;

import java.io.EOFException;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicBoolean;

/**
 * Reads the rows of one part of a plain file straight from its bytes into columns. Not thread safe; each part
 * has its own.
 */
final class TableChunk {
    /** Notes beyond this number are counted, not listed: the text of each cell is kept all the same. */
    static final int MOST_NOTES = 10_000;
    private static final int BLOCK = 1 << 20;
    private static final int LONGEST_LINE = 1 << 24;

    private final byte delimiter;
    private final List<ColumnBuilder> builders;
    private final ColumnBuilder[] columns;
    private final DecimalBytes parser;
    private final List<Note> notes = new ArrayList<>();
    private final List<Comment> comments = new ArrayList<>();
    private int[] lines = new int[1024];
    private int rows;
    private int line;
    private long moreNotes;

    /** Something about a cell, its line counted from the start of the part. */
    record Note(Fault fault, int line, int column, String written) { }

    /** A line that begins with #. */
    record Comment(int line, String text) { }

    /** A cell that stops the reading, its line counted from the start of the part. */
    static final class Stop extends RuntimeException {
        private static final long serialVersionUID = 1L;

        private final transient Note note;

        Stop(Note note, String says) {
            super(says, null, false, false);
            this.note = note;
        }

        Note note() {
            return note;
        }
    }

    TableChunk(char delimiter, List<ColumnBuilder> columns) {
        this.delimiter = (byte) delimiter;
        this.builders = List.copyOf(columns);
        this.columns = columns.toArray(ColumnBuilder[]::new);
        this.parser = new DecimalBytes(columns.get(0).sign());
    }

    /** Makes room for so many rows, so that nothing is copied while they are read. */
    void expect(int rowCount) {
        lines = new int[rowCount];
        builders.forEach(b -> b.expect(rowCount));
    }

    /**
     * Reads the bytes from one position to another, which is behind a line end or the end of the file.
     *
     * @param stop set by another thread when this one shall end
     */
    void read(FileChannel file, long from, long to, AtomicBoolean stop) throws IOException {
        byte[] block = new byte[(int) Math.min(BLOCK, to - from)];
        int filled = 0;
        long at = from;
        while (at < to) {
            if (stop.get() || Thread.currentThread().isInterrupted()) {
                throw new CancellationException("reading was interrupted");
            }
            final int want = (int) Math.min(block.length - filled, to - at);
            fill(file, ByteBuffer.wrap(block, filled, want), at);
            at += want;
            filled += want;
            final int done = wholeLines(block, filled, at == to);
            System.arraycopy(block, done, block, 0, filled - done);
            filled -= done;
            if (filled == block.length) {
                if (filled >= LONGEST_LINE) {
                    throw new Stop(new Note(Fault.NOT_A_TEXT, line + 1, 0, ""), "a line longer than 16 MB");
                }
                block = Arrays.copyOf(block, 2 * filled);
            }
        }
    }

    private static void fill(FileChannel file, ByteBuffer buffer, long from) throws IOException {
        long at = from;
        while (buffer.hasRemaining()) {
            final int n = file.read(buffer, at);
            if (n < 0) {
                throw new EOFException("the file became shorter while it was read");
            }
            at += n;
        }
    }

    /** Takes the lines that are complete, and the last one if nothing follows; returns where they end. */
    private int wholeLines(byte[] b, int filled, boolean last) {
        int end = filled;
        while (end > 0 && b[end - 1] != '\n') {
            end--;
        }
        int start = 0;
        while (start < end) {
            start = takeLine(b, start);
        }
        if (last && start < filled) {
            final byte[] rest = Arrays.copyOfRange(b, start, filled + 1);
            rest[rest.length - 1] = '\n';
            takeLine(rest, 0);
            return filled;
        }
        return start;
    }

    /** Takes one line, which ends within the array; returns where the next begins. */
    private int takeLine(byte[] b, int start) {
        line++;
        final byte first = b[start];
        if (first == '#' || first <= ' ' && first >= 0 || first == delimiter) {
            int end = start;
            while (b[end] != '\n') {
                if (isControl(b[end]) && b[end] != '\r') {
                    throw new ColumnBuilder.NotPlain();
                }
                end++;
            }
            if (first == '#') {
                comments.add(new Comment(line, ColumnBuilder.decode(b, start, end)));
                return end + 1;
            }
            if (isBlank(b, start, end)) {
                return end + 1;
            }
        }
        return row(b, start);
    }

    /** A byte that is in no text; the decoder says which and where. */
    private static boolean isControl(byte c) {
        return c < ' ' && c >= 0 && c != '\t' || c == 127;
    }

    private boolean isBlank(byte[] b, int from, int to) {
        int i = from;
        while (i < to && (b[i] == ' ' || b[i] == delimiter || b[i] == '\t' || b[i] == '\r')) {
            i++;
        }
        return i == to;
    }

    private int row(byte[] b, int from) {
        int column = 0;
        int start = from;
        while (true) {
            final int end = column < columns.length && !columns[column].isText()
                ? number(columns[column], column, b, start) : text(column, b, start);
            column++;
            if (b[end] != delimiter) {
                endRow(column, line);
                return b[end] == '\n' ? end + 1 : end + 2;
            }
            start = end + 1;
        }
    }

    /** Adds the cell that begins here, a number if it is a plain one; returns where it ends. */
    private int number(ColumnBuilder builder, int column, byte[] b, int start) {
        final double value = parser.read(b, start);
        if (value == value) {
            final int end = parser.end();
            final byte c = b[end];
            if (c == delimiter || c == '\n' || c == '\r' && b[end + 1] == '\n') {
                builder.addPlain(value, parser.decimals());
                return end;
            }
        }
        return text(column, b, start);
    }

    private int text(int column, byte[] b, int start) {
        int end = start;
        byte c = b[end];
        while (c != delimiter && c != '\n' && !(c == '\r' && b[end + 1] == '\n')) {
            if (c == '"' || isControl(c)) {
                throw new ColumnBuilder.NotPlain();
            }
            c = b[++end];
        }
        if (b[start] == '\'' && apostrophe(column, b, start, end)) {
            return end;
        }
        cell(column, b, start, end);
        return end;
    }

    /** Takes off the apostrophe that keeps a spreadsheet from running a cell, and lists it. */
    private boolean apostrophe(int column, byte[] b, int from, int to) {
        final String written = ColumnBuilder.decode(b, from, to);
        final byte[] own = TableExport.original(written).getBytes(StandardCharsets.UTF_8);
        if (own.length == to - from) {
            return false;
        }
        cell(column, own, 0, own.length);
        note(Fault.CHARACTER, column, b, from, to);
        return true;
    }

    private void cell(int column, byte[] b, int from, int to) {
        if (column >= columns.length) {
            if (from < to) {
                throw new Stop(new Note(Fault.RAGGED_ROW, line, column, ColumnBuilder.decode(b, from, to)),
                    "more cells than the " + columns.length + " column names");
            }
            return;
        }
        try {
            if (!columns[column].add(b, from, to)) {
                note(columns[column].noted(), column, b, from, to);
            }
        } catch (ColumnBuilder.Refused e) {
            throw new Stop(new Note(e.fault(), line, column, ColumnBuilder.decode(b, from, to)),
                e.getMessage());
        }
    }

    private void note(Fault fault, int column, byte[] b, int from, int to) {
        if (notes.size() < MOST_NOTES) {
            notes.add(new Note(fault, line, column, ColumnBuilder.decode(b, from, to)));
        } else {
            moreNotes++;
        }
    }

    private void endRow(int cells, int rowLine) {
        if (cells < columns.length) {
            throw new Stop(new Note(Fault.RAGGED_ROW, rowLine, cells - 1, ""), "the row ends after " + cells
                + " of " + columns.length + " cells");
        }
        if (rows == lines.length) {
            lines = Arrays.copyOf(lines, rows + (rows >> 1));
        }
        lines[rows++] = rowLine;
    }

    /**
     * Adds a row whose cells were separated elsewhere.
     *
     * @param least cells that the row has at least: a workbook does not store empty ones at its end
     */
    void addRow(GridRow row, int least) {
        line = row.number();
        for (int i = 0; i < row.cells().size(); i++) {
            final byte[] text = (row.cells().get(i).text() + "\n").getBytes(StandardCharsets.UTF_8);
            final int length = text.length - 1;
            final boolean numeric = i < columns.length && !columns[i].isText();
            final double value = numeric ? parser.read(text, 0) : Double.NaN;
            if (value == value && parser.end() == length) {
                columns[i].addPlain(value, parser.decimals());
            } else {
                cell(i, text, 0, length);
            }
        }
        for (int i = row.cells().size(); i < least; i++) {
            cell(i, new byte[0], 0, 0);
        }
        endRow(Math.max(least, row.cells().size()), line);
    }

    List<ColumnBuilder> columns() {
        return builders;
    }

    List<Note> notes() {
        return notes;
    }

    long moreNotes() {
        return moreNotes;
    }

    List<Comment> comments() {
        return comments;
    }

    /** Lines of the part. */
    int lineCount() {
        return line;
    }

    int rows() {
        return rows;
    }

    /** Line of a row, counted from the start of the part. */
    int line(int row) {
        return lines[row];
    }
}
