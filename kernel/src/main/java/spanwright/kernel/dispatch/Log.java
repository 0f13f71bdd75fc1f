package spanwright.kernel.dispatch;

import java.io.PrintStream;
import java.util.Objects;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * The log of the server: the standard error of the process, taken before a session redirects it. Repeated
 * complaints about messages that were dropped are counted rather than printed without end.
 */
final class Log {
    private static final int DROPS_PRINTED = 20;

    private final PrintStream to;
    private final AtomicInteger drops = new AtomicInteger();

    Log(PrintStream to) {
        this.to = Objects.requireNonNull(to, "to");
    }

    void line(String text) {
        to.println("[spanwright] " + text);
        to.flush();
    }

    void failure(String what, Throwable thrown) {
        line(what + ": " + thrown);
        thrown.printStackTrace(to);
        to.flush();
    }

    /** A message that was dropped, and why. */
    void dropped(String why) {
        final int n = drops.incrementAndGet();
        if (n <= DROPS_PRINTED || n % 10_000 == 0) {
            line("message " + n + " dropped: " + why
                + (n == DROPS_PRINTED ? " (from here on only every 10000th is told)" : ""));
        }
    }

    int drops() {
        return drops.get();
    }
}
