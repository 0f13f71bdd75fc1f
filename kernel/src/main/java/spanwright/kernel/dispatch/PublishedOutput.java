package spanwright.kernel.dispatch;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import spanwright.kernel.display.CellOutput;
import spanwright.kernel.display.Comms;
import spanwright.kernel.display.MimeBundle;
import spanwright.kernel.message.Event;

/**
 * What a cell writes, published under the header of its request. Threads that the cell started keep this
 * output and so its header, also after the cell has ended.
 *
 * <p>Text is gathered and sent in pieces; everything leaves in the order it was written. Of updates of one
 * display that come faster than they are sent, the latest counts. What goes beyond the limits is dropped, and
 * a notice says so once.
 */
final class PublishedOutput implements CellOutput {
    /** Text is sent when this much has gathered. */
    static final int PIECE = 64 * 1024;
    /** Text after a pause this long is sent at once, what follows is gathered. */
    private static final long GATHER_NANOS = 30_000_000;

    /** What every output of one kernel shares. */
    record Shared(Publisher publisher, Flusher flusher, Questions questions, Comms comms,
                  OutputLimits limits) { }

    private static final class Pending {
        private final Optional<Stream> stream;
        private final StringBuilder text = new StringBuilder();
        private final String displayId;
        private MimeBundle bundle = new MimeBundle(Map.of(), Map.of());

        Pending(Optional<Stream> stream, String displayId) {
            this.stream = stream;
            this.displayId = displayId;
        }

        Event event() {
            return stream.<Event>map(s -> new Event.Stream(s.protocolName(), text.toString()))
                .orElseGet(() -> new Event.UpdateDisplayData(bundle.data(), bundle.metadata(), displayId));
        }
    }

    private final Shared shared;
    private final Origin origin;
    private final boolean silent;
    private final boolean mayAsk;
    private final List<Pending> pending = new ArrayList<>();
    private final List<Map<String, Object>> pages = new ArrayList<>();
    private int gathered;
    private long streamLeft;
    private long displayLeft;
    private boolean queued;
    private long lastSent = System.nanoTime() - GATHER_NANOS;

    PublishedOutput(Shared shared, Origin origin, boolean silent, boolean mayAsk) {
        this.shared = shared;
        this.origin = origin;
        this.silent = silent;
        this.mayAsk = mayAsk;
        this.streamLeft = shared.limits().streamCharacters();
        this.displayLeft = shared.limits().displayCharacters();
    }

    @Override
    public synchronized void write(Stream stream, String text) {
        if (silent || text.isEmpty() || streamLeft < 0) {
            return;
        }
        final int kept = (int) Math.min(text.length(), streamLeft);
        streamLeft -= kept;
        append(stream, text, kept);
        if (kept < text.length()) {
            streamLeft = -1;
            append(Stream.STDERR, notice("text", shared.limits().streamCharacters()));
        }
        if (gathered >= PIECE || System.nanoTime() - lastSent > GATHER_NANOS) {
            flush();
        } else {
            later();
        }
    }

    private static String notice(String what, long limit) {
        return "\n[more than " + limit + " characters of " + what
            + " from one cell: the rest is not sent; write it to a file instead]\n";
    }

    private void append(Stream stream, String text) {
        append(stream, text, text.length());
    }

    private void append(Stream stream, String text, int kept) {
        final int last = pending.size() - 1;
        Pending open = last < 0 ? null : pending.get(last);
        if (open == null || !open.stream.equals(Optional.of(stream))) {
            open = new Pending(Optional.of(stream), "");
            pending.add(open);
        }
        open.text.append(text, 0, kept);
        gathered += kept;
    }

    private void later() {
        if (!queued) {
            queued = true;
            shared.flusher().soon(this);
        }
    }

    /** Sends what has gathered. */
    synchronized void flush() {
        queued = false;
        for (final Pending p : pending) {
            shared.publisher().publish(origin, p.event());
        }
        pending.clear();
        gathered = 0;
        lastSent = System.nanoTime();
    }

    @Override
    public synchronized void display(MimeBundle bundle, Optional<String> displayId) {
        if (silent || !affords(bundle)) {
            return;
        }
        flush();
        shared.publisher().publish(origin,
            new Event.DisplayData(bundle.data(), bundle.metadata(), displayId));
    }

    @Override
    public synchronized void updateDisplay(MimeBundle bundle, String displayId) {
        if (silent) {
            return;
        }
        Pending update = null;
        for (final Pending p : pending) {
            update = p.stream.isEmpty() && p.displayId.equals(displayId) ? p : update;
        }
        if (update == null) {
            if (!affords(bundle)) {
                return;
            }
            update = new Pending(Optional.empty(), displayId);
            pending.add(update);
        }
        update.bundle = bundle;
        later();
    }

    /** Takes a bundle off what is left; says so once when nothing is. */
    private boolean affords(MimeBundle bundle) {
        if (displayLeft < 0) {
            return false;
        }
        for (final Object value : bundle.data().values()) {
            // Trees are rare and small beside pictures; their text is near enough to their JSON.
            displayLeft -= value instanceof String s ? s.length() : String.valueOf(value).length();
        }
        if (displayLeft < 0) {
            append(Stream.STDERR, notice("display data", shared.limits().displayCharacters()));
            later();
            return false;
        }
        return true;
    }

    @Override
    public synchronized void clear(boolean wait) {
        if (!silent) {
            flush();
            shared.publisher().publish(origin, new Event.ClearOutput(wait));
        }
    }

    @Override
    public synchronized void page(MimeBundle bundle) {
        pages.add(bundle.data());
    }

    @Override
    public Optional<Comms> comms() {
        return Optional.of(shared.comms());
    }

    /** What was given to the pager. */
    synchronized List<Map<String, Object>> pages() {
        return List.copyOf(pages);
    }

    @Override
    public Optional<String> readLine(String prompt, boolean password)
        throws IOException, InterruptedException {
        if (!mayAsk) {
            throw new IOException("this front end does not allow a cell to ask for input");
        }
        flush();
        return shared.questions().ask(origin, prompt, password);
    }
}
