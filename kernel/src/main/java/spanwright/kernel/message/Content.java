package spanwright.kernel.message;

import com.fasterxml.jackson.databind.node.ObjectNode;

/** The content of a message this kernel sends. */
public sealed interface Content permits Reply, Event {
    /** The message type, for example "execute_reply". */
    String type();

    /** The content as JSON. */
    ObjectNode json();
}
