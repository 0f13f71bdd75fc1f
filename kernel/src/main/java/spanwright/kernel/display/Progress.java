package spanwright.kernel.display;

import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;

/**
 * How far a long computation is: one line that moves in place, as text and as HTML. Redrawn at most ten times
 * a second, and once more when it is closed. Safe for use by several threads.
 */
public final class Progress implements AutoCloseable {
    private static final long REDRAW_NANOS = 100_000_000;
    private static final int WIDTH = 24;

    private final String label;
    private final long total;
    private final CellScope scope;
    private final String id = UUID.randomUUID().toString();
    private final long began = System.nanoTime();
    private long done;
    private long drawn;
    private boolean closed;

    Progress(String label, long total) {
        if (total < 1) {
            throw new IllegalArgumentException("a progress of " + total + " steps; at least 1 is needed");
        }
        this.label = Objects.requireNonNull(label, "label");
        this.total = total;
        this.scope = CellScope.required();
        this.drawn = began;
        final MimeBundle first = bundle();
        scope.queue().post(o -> o.display(first, Optional.of(id)));
    }

    /** One step more is done. */
    public void step() {
        step(1);
    }

    /** Some steps more are done; never counts beyond the total. */
    public synchronized void step(long steps) {
        at(done + steps);
    }

    /** So many steps are done now. */
    public synchronized void at(long steps) {
        done = Math.max(0, Math.min(total, steps));
        final long now = System.nanoTime();
        if (!closed && now - drawn >= REDRAW_NANOS) {
            drawn = now;
            redraw();
        }
    }

    /** Draws it a last time, with the time it took. */
    @Override
    public synchronized void close() {
        if (!closed) {
            closed = true;
            redraw();
        }
    }

    private void redraw() {
        final MimeBundle bundle = bundle();
        scope.queue().post(o -> o.updateDisplay(bundle, id));
    }

    private MimeBundle bundle() {
        final String text = text();
        final String html = "<div class=\"spanwright-progress\"><progress max=\"" + total
            + "\" value=\"" + done + "\"></progress> "
            + escaped(text.substring(text.indexOf(']') + 2)) + "</div>";
        return new MimeBundle(Map.of(MimeBundle.TEXT, text), Map.of()).with(MimeBundle.HTML, html);
    }

    private String text() {
        final int full = (int) (WIDTH * done / total);
        final double seconds = (System.nanoTime() - began) / 1e9;
        final String time = closed || done == 0 || done == total
            ? String.format(Locale.ROOT, "%.1f s", seconds)
            : String.format(Locale.ROOT, "%.1f s, about %.0f s to go",
                seconds, seconds / done * (total - done));
        return "[" + "#".repeat(full) + ".".repeat(WIDTH - full) + "] " + label + ": " + done + " of " + total
            + " (" + time + ")";
    }

    private static String escaped(String s) {
        return s.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
    }
}
