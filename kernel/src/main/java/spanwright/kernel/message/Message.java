package spanwright.kernel.message;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Objects;

/**
 * A received message, its signature already checked.
 *
 * @param idents       return address: what came before the delimiter, to be echoed on the reply
 * @param header       the header, read
 * @param headerOctets the header as it came, to be sent back as the parent of everything that answers it
 * @param metadata     as it came
 * @param content      as it came
 * @param buffers      binary attachments
 */
public record Message(List<Bytes> idents, Header header, Bytes headerOctets, ObjectNode metadata,
                      ObjectNode content, List<Bytes> buffers) {
    /** Copies the lists. */
    public Message {
        idents = List.copyOf(idents);
        Objects.requireNonNull(header, "header");
        Objects.requireNonNull(headerOctets, "headerOctets");
        Objects.requireNonNull(metadata, "metadata");
        Objects.requireNonNull(content, "content");
        buffers = List.copyOf(buffers);
    }
}
