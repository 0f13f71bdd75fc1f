package spanwright.kernel.message;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Objects;

/**
 * An error as replies and events carry it.
 *
 * @param name      class of the exception
 * @param message   one line
 * @param traceback lines, may hold ANSI colours
 */
public record Failure(String name, String message, List<String> traceback) {
    /** Copies the list. */
    public Failure {
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(message, "message");
        traceback = List.copyOf(traceback);
    }

    /** A failure of the kernel itself. */
    public static Failure of(Throwable thrown) {
        final String message = thrown.getMessage() == null ? "" : thrown.getMessage();
        return new Failure(thrown.getClass().getSimpleName(), message, List.of(thrown.toString()));
    }

    ObjectNode json() {
        final ObjectNode json = Json.object().put("ename", name).put("evalue", message);
        json.set("traceback", Json.of(traceback));
        return json;
    }
}
