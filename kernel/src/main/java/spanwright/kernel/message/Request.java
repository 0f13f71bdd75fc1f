package spanwright.kernel.message;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/** What a client asks, by message type. Read with {@link #of}. */
public sealed interface Request {
    /** Who are you? */
    record KernelInfo() implements Request { }

    /**
     * Run this.
     *
     * @param code            the cell
     * @param silent          no output, no history, no count
     * @param storeHistory    whether to count and keep it; false if silent
     * @param userExpressions evaluated after the code, by name
     * @param allowStdin      whether the code may ask the person for a line
     * @param stopOnError     whether a failure aborts what is queued
     */
    record Execute(String code, boolean silent, boolean storeHistory, Map<String, String> userExpressions,
                   boolean allowStdin, boolean stopOnError) implements Request {
        /** Copies the map, keeping its order. */
        public Execute {
            userExpressions = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(userExpressions));
        }
    }

    /**
     * What could stand at the cursor?
     *
     * @param cursor in the unit of the sender's protocol version
     */
    record Complete(String code, int cursor) implements Request { }

    /**
     * What is this?
     *
     * @param cursor in the unit of the sender's protocol version
     * @param detail 0 or 1
     */
    record Inspect(String code, int cursor, int detail) implements Request { }

    /** Can this run as it stands? */
    record IsComplete(String code) implements Request { }

    /**
     * What ran before?
     *
     * @param access      which of the three ways
     * @param output      whether outputs are wanted too
     * @param session     for a range: number of a session, 0 for this one, negative counted back from it
     * @param start       for a range: first line
     * @param stop        for a range: line after the last, empty for the end
     * @param limit       for tail and search: at most so many, the latest
     * @param pattern     for a search: a glob
     * @param unique      for a search: each input only once
     */
    record History(Access access, boolean output, int session, int start, Optional<Integer> stop,
                   Optional<Integer> limit, String pattern, boolean unique) implements Request {
        /** How entries are picked. */
        public enum Access {
            /** The latest. */
            TAIL,
            /** Lines of one session. */
            RANGE,
            /** Those that match a pattern. */
            SEARCH
        }
    }

    /**
     * Which comms are open?
     *
     * @param target only those of this target
     */
    record CommInfo(Optional<String> target) implements Request { }

    /** A front end opens a comm. */
    record CommOpen(String id, String target, ObjectNode data) implements Request { }

    /** A front end sends on a comm. */
    record CommMessage(String id, ObjectNode data) implements Request { }

    /** A front end closes a comm. */
    record CommClose(String id, ObjectNode data) implements Request { }

    /** Which ports? */
    record Connect() implements Request { }

    /** Stop the running cell. */
    record Interrupt() implements Request { }

    /**
     * End.
     *
     * @param restart whether a new kernel follows
     */
    record Shutdown(boolean restart) implements Request { }

    /** How much memory and processor is used? */
    record Usage() implements Request { }

    /** What the person typed, in answer to an input_request. */
    record Input(String value) implements Request { }

    /** A type this kernel does not know: it is taken note of, not answered. */
    record Unknown(String type) implements Request { }

    /**
     * Reads a request.
     *
     * @throws MalformedMessageException if a field has the wrong type or a needed one is absent
     */
    static Request of(Message message) throws MalformedMessageException {
        return RequestReader.read(message.header().type(), message.content());
    }
}
