package spanwright.kernel.dispatch;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import spanwright.kernel.message.Bytes;
import spanwright.kernel.message.Event;

/**
 * Questions to the person at a front end, one at a time. An answer counts if it comes from the client that
 * was asked, after it was asked.
 */
final class Questions {
    /** Protocol: this value means the end of input. */
    private static final String END_OF_INPUT = "\u0004";

    private record Asked(List<Bytes> idents, CompletableFuture<String> answer) { }

    private final Publisher publisher;
    private Optional<Asked> open = Optional.empty();

    Questions(Publisher publisher) {
        this.publisher = publisher;
    }

    /**
     * Asks, and waits for the answer.
     *
     * @return the line; empty at the end of input
     * @throws IOException          if another thread of the session is already asking
     * @throws InterruptedException if the thread, or the question, is interrupted meanwhile
     */
    Optional<String> ask(Origin origin, String prompt, boolean password)
        throws IOException, InterruptedException {
        final Asked asked = new Asked(origin.idents(), new CompletableFuture<>());
        synchronized (this) {
            if (open.isPresent()) {
                throw new IOException("another thread is already asking for input");
            }
            open = Optional.of(asked);
        }
        try {
            publisher.ask(origin, new Event.InputRequest(prompt, password));
            final String line = asked.answer.get();
            return line.equals(END_OF_INPUT) ? Optional.empty() : Optional.of(line);
        } catch (CancellationException e) {
            throw new InterruptedException("interrupted while asking for input");
        } catch (ExecutionException e) {
            throw new IOException("asking for input failed", e.getCause());
        } finally {
            synchronized (this) {
                open = Optional.empty();
            }
        }
    }

    /** An answer arrived; one that nobody asked for is ignored. */
    synchronized void answered(List<Bytes> idents, String value) {
        open.filter(q -> q.idents.equals(idents)).ifPresent(q -> q.answer.complete(value));
    }

    /** Gives up the open question, if there is one. */
    synchronized void interrupt() {
        open.ifPresent(q -> q.answer.cancel(false));
    }
}
