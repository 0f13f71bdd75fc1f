package spanwright.kernel.dispatch;

import java.util.Optional;
import spanwright.kernel.interpreter.Completeness;
import spanwright.kernel.interpreter.Completions;
import spanwright.kernel.interpreter.Inspection;
import spanwright.kernel.interpreter.Interpreter;
import spanwright.kernel.message.Header;
import spanwright.kernel.message.Reply;
import spanwright.kernel.message.Request;

/** Answers questions about code that do not run it; works while a cell runs. Stateless. */
final class CodeAssist {
    private final Interpreter interpreter;

    CodeAssist(Interpreter interpreter) {
        this.interpreter = interpreter;
    }

    Reply complete(Header header, Request.Complete request) {
        final Cursor cursor = new Cursor(request.code(), header.countsCodePoints());
        final Completions found = interpreter.complete(request.code(), cursor.toIndex(request.cursor()));
        return new Reply.Complete(
            found.items().stream()
                .map(i -> new Reply.Complete.Item(i.text(), i.type(), i.signature())).toList(),
            cursor.toPosition(found.start()), cursor.toPosition(found.end()));
    }

    Reply inspect(Header header, Request.Inspect request) {
        final Cursor cursor = new Cursor(request.code(), header.countsCodePoints());
        final Optional<Inspection> found =
            interpreter.inspect(request.code(), cursor.toIndex(request.cursor()), request.detail());
        return new Reply.Inspect(found.map(i -> i.bundle().data()),
            found.map(i -> i.bundle().metadata()).orElse(java.util.Map.of()));
    }

    Reply isComplete(Request.IsComplete request) {
        final Completeness found = interpreter.completeness(request.code());
        final boolean more = found.status() == Completeness.Status.INCOMPLETE;
        return new Reply.IsComplete(found.status().protocolName(),
            more ? Optional.of(found.indent()) : Optional.empty());
    }
}
