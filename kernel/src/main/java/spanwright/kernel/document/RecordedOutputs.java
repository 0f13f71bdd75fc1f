package spanwright.kernel.document;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spanwright.kernel.display.CellOutput;
import spanwright.kernel.display.MimeBundle;

/**
 * Keeps what the cells of one notebook show, as nbformat stores it: neighbouring pieces of a stream are one,
 * an update reaches every place where its display id stands, in earlier cells too, and a cleared output is
 * gone.
 *
 * <p>Safe for use by several threads; a thread that a cell left running may still write to its cell.
 */
final class RecordedOutputs {
    /** Characters of text that one cell may write; what is beyond is counted, not kept. */
    static final int TEXT_LIMIT = 8 << 20;

    private final Object lock = new Object();
    private final List<OfCell> cells = new ArrayList<>();

    /** A new sink; one for each cell. */
    OfCell nextCell() {
        synchronized (lock) {
            final OfCell cell = new OfCell();
            cells.add(cell);
            return cell;
        }
    }

    /** One entry of a cell; only one of text and output is used. */
    private static final class Entry {
        private final CellOutput.Stream stream;
        private final StringBuilder text = new StringBuilder();
        private final Optional<String> displayId;
        private SavedOutput output;

        Entry(CellOutput.Stream stream) {
            this.stream = stream;
            this.displayId = Optional.empty();
        }

        Entry(SavedOutput output, Optional<String> displayId) {
            this.stream = null;
            this.output = output;
            this.displayId = displayId;
        }

        SavedOutput saved() {
            return stream == null ? output
                : new SavedOutput.Text(stream, TerminalText.settled(text.toString()));
        }
    }

    /** The sink of one cell. */
    final class OfCell implements CellOutput {
        private final List<Entry> entries = new ArrayList<>();
        private boolean clearBeforeNext;
        private long written;

        @Override
        public void write(Stream stream, String text) {
            synchronized (lock) {
                if (text.isEmpty()) {
                    return;
                }
                clearIfAsked();
                written += text.length();
                final int room = (int) Math.max(0, TEXT_LIMIT - (written - text.length()));
                if (room > 0) {
                    textEntry(stream).text.append(text, 0, Math.min(room, text.length()));
                }
            }
        }

        private Entry textEntry(Stream stream) {
            final Entry last = entries.isEmpty() ? null : entries.get(entries.size() - 1);
            if (last != null && last.stream == stream) {
                return last;
            }
            final Entry entry = new Entry(stream);
            entries.add(entry);
            return entry;
        }

        @Override
        public void display(MimeBundle bundle, Optional<String> displayId) {
            add(new SavedOutput.Shown(bundle), displayId);
        }

        /** Adds the value or the failure that ended the cell. */
        void add(SavedOutput output, Optional<String> displayId) {
            synchronized (lock) {
                clearIfAsked();
                entries.add(new Entry(output, displayId));
            }
        }

        @Override
        public void updateDisplay(MimeBundle bundle, String displayId) {
            synchronized (lock) {
                final Optional<String> id = Optional.of(displayId);
                cells.forEach(cell -> cell.entries.stream()
                    .filter(entry -> entry.displayId.equals(id))
                    .forEach(entry -> entry.output = new SavedOutput.Shown(bundle)));
            }
        }

        @Override
        public void clear(boolean wait) {
            synchronized (lock) {
                clearBeforeNext = wait;
                if (!wait) {
                    entries.clear();
                    written = 0;
                }
            }
        }

        private void clearIfAsked() {
            if (clearBeforeNext) {
                clear(false);
            }
        }

        /** There is no pager: the page is shown in place. */
        @Override
        public void page(MimeBundle bundle) {
            display(bundle, Optional.empty());
        }

        @Override
        public Optional<String> readLine(String prompt, boolean password) throws IOException {
            throw new IOException("nobody can be asked for \"" + prompt + "\" in a headless run");
        }

        /** What stands under the cell now. */
        List<SavedOutput> saved() {
            synchronized (lock) {
                final List<SavedOutput> all = new ArrayList<>();
                entries.forEach(entry -> all.add(entry.saved()));
                if (written > TEXT_LIMIT) {
                    all.add(new SavedOutput.Text(Stream.STDERR, "[" + (written - TEXT_LIMIT)
                        + " more characters of output left out; a cell may write " + TEXT_LIMIT + "]\n"));
                }
                return all;
            }
        }
    }
}
