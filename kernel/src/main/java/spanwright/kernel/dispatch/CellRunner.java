package spanwright.kernel.dispatch;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import spanwright.kernel.display.MimeBundle;
import spanwright.kernel.interpreter.Cell;
import spanwright.kernel.interpreter.Interpreter;
import spanwright.kernel.interpreter.Outcome;
import spanwright.kernel.message.Event;
import spanwright.kernel.message.Failure;
import spanwright.kernel.message.Json;
import spanwright.kernel.message.Reply;
import spanwright.kernel.message.Request;

/**
 * Runs cells and counts them. All but {@link #running} and {@link #count} belongs to the thread that runs
 * cells.
 */
final class CellRunner {
    /** How long after a failure requests that were sent in one go with it may still arrive. */
    private static final int BURST_MILLIS = 20;

    /** What waits behind the running cell. */
    interface Backlog {
        /** Number of the execute_request that arrived last. */
        long latest();
    }

    /** A request to run a cell; numbered as it arrived. */
    record Turn(Origin origin, Request.Execute request, long number) { }

    private final Interpreter interpreter;
    private final PublishedOutput.Shared shared;
    private final HistoryStore history;
    private final Backlog backlog;
    private volatile Optional<Turn> running = Optional.empty();
    private volatile int count;
    private long abortedUpTo;

    CellRunner(Interpreter interpreter, PublishedOutput.Shared shared, HistoryStore history,
               Backlog backlog) {
        this.interpreter = interpreter;
        this.shared = shared;
        this.history = history;
        this.backlog = backlog;
    }

    /** The cell that runs now. */
    Optional<Turn> running() {
        return running;
    }

    /** The number of the last cell. */
    int count() {
        return count;
    }

    /** Runs a cell and replies. */
    void run(Turn turn) {
        final ObjectNode metadata = Json.object()
            .put("started", OffsetDateTime.now(ZoneOffset.UTC).toString());
        final Reply reply;
        if (turn.number() <= abortedUpTo) {
            reply = new Reply.ExecuteAborted(count);
        } else {
            running = Optional.of(turn);
            try {
                reply = evaluate(turn);
            } finally {
                running = Optional.empty();
            }
        }
        shared.publisher().reply(turn.origin(), reply, metadata);
    }

    private Reply evaluate(Turn turn) {
        final Request.Execute request = turn.request();
        final Origin origin = turn.origin();
        if (request.storeHistory()) {
            count++;
        }
        if (!request.silent()) {
            shared.publisher().publish(origin, new Event.ExecuteInput(request.code(), count));
        }
        final PublishedOutput output =
            new PublishedOutput(shared, origin, request.silent(), request.allowStdin());
        final Outcome outcome = outcome(request, output);
        output.flush();
        final Optional<MimeBundle> shown =
            outcome instanceof Outcome.Value value ? value.shown() : Optional.empty();
        if (request.storeHistory()) {
            history.add(count, request.code(),
                shown.map(b -> b.data().get(MimeBundle.TEXT)).map(String::valueOf));
        }
        final Optional<Failure> failure = failure(outcome);
        if (failure.isPresent()) {
            return failed(request, origin, failure.get());
        }
        if (!request.silent()) {
            shown.ifPresent(b -> shared.publisher().publish(origin,
                new Event.ExecuteResult(count, b.data(), b.metadata())));
        }
        return new Reply.Executed(count, output.pages(), expressions(request, origin));
    }

    private Outcome outcome(Request.Execute request, PublishedOutput output) {
        if (request.code().isBlank()) {
            return new Outcome.Value(Optional.empty());
        }
        final String label = request.storeHistory() ? "cell [" + count + "]" : "uncounted cell";
        return interpreter.evaluate(new Cell(request.code(), label), output);
    }

    private Reply failed(Request.Execute request, Origin origin, Failure failure) {
        if (!request.silent()) {
            shared.publisher().publish(origin, new Event.Error(failure));
        }
        if (request.stopOnError()) {
            abortWhatWaits();
        }
        return new Reply.ExecuteFailed(count, failure);
    }

    /**
     * Everything that arrived before the reply is aborted, nothing that a client sends after it saw the
     * reply. If something waits, the rest of the same burst may still be on its way.
     */
    private void abortWhatWaits() {
        final long own = running.map(Turn::number).orElse(0L);
        if (backlog.latest() > own) {
            try {
                Thread.sleep(BURST_MILLIS);
            } catch (InterruptedException e) {
                // An interrupt that came too late for the cell: the cell has failed already.
                Thread.interrupted();
            }
        }
        abortedUpTo = backlog.latest();
    }

    private Map<String, ObjectNode> expressions(Request.Execute request, Origin origin) {
        final Map<String, ObjectNode> results = new LinkedHashMap<>();
        request.userExpressions().forEach((name, expression) -> {
            final PublishedOutput unseen = new PublishedOutput(shared, origin, true, false);
            final Outcome outcome =
                interpreter.evaluate(new Cell(expression, "user expression '" + name + "'"), unseen);
            results.put(name, failure(outcome)
                .map(f -> new Reply.Failed("execute_reply", f).json())
                .orElseGet(() -> value(((Outcome.Value) outcome).shown())));
        });
        return results;
    }

    private static ObjectNode value(Optional<MimeBundle> shown) {
        final ObjectNode json = Json.object().put("status", "ok");
        json.set("data", Json.of(shown.map(MimeBundle::data).orElse(Map.of())));
        json.set("metadata", Json.of(shown.map(MimeBundle::metadata).orElse(Map.of())));
        return json;
    }

    private static Optional<Failure> failure(Outcome outcome) {
        final Outcome.ErrorReport error;
        if (outcome instanceof Outcome.UserThrew threw) {
            error = threw.error();
        } else if (outcome instanceof Outcome.Interrupted stopped) {
            error = stopped.error();
        } else if (outcome instanceof Outcome.EngineLost lost) {
            error = lost.error();
        } else {
            return Optional.empty();
        }
        return Optional.of(new Failure(error.name(), error.message(), error.traceback()));
    }
}
