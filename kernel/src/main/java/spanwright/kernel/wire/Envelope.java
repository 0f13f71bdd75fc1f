package spanwright.kernel.wire;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import spanwright.kernel.message.Bytes;
import spanwright.kernel.message.Content;
import spanwright.kernel.message.Header;
import spanwright.kernel.message.Json;
import spanwright.kernel.message.MalformedMessageException;
import spanwright.kernel.message.Message;

/**
 * Framing: {@code [idents...] <IDS|MSG> signature header parent_header metadata content [buffers...]}. Pure
 * functions of bytes, apart from the memory of signatures that the caller passes in.
 *
 * <p>Source: "Messaging in Jupyter", The Wire Protocol.
 */
public final class Envelope {
    private static final Bytes DELIMITER = Bytes.of("<IDS|MSG>");
    private static final int SIGNED = 4;
    private static final Bytes EMPTY_DICT = Bytes.of("{}");

    private Envelope() { }

    /**
     * Opens a received message. The signature is checked over the bytes as they came, before any of them is
     * read as JSON.
     *
     * @param frames all frames of the message
     * @param signer of this connection
     * @param guard  signatures seen before; the new one is added if it is right
     * @throws MalformedMessageException if the delimiter or a frame is missing, the signature is wrong or was
     *                                   seen before, or a part is not a JSON object with the fields it needs
     */
    public static Message open(List<Bytes> frames, Signer signer, ReplayGuard guard)
        throws MalformedMessageException {
        final int delimiter = frames.indexOf(DELIMITER);
        if (delimiter < 0) {
            throw new MalformedMessageException("no <IDS|MSG> among " + frames.size() + " frames");
        }
        final int first = delimiter + 2;
        if (frames.size() < first + SIGNED) {
            throw new MalformedMessageException("only " + (frames.size() - delimiter - 1)
                + " frames after <IDS|MSG>, 5 are needed");
        }
        final Bytes signature = frames.get(delimiter + 1);
        final List<Bytes> signed = frames.subList(first, first + SIGNED);
        if (!signer.accepts(signature, signed)) {
            throw new MalformedMessageException("wrong signature");
        }
        if (signer.signs() && !guard.isNew(signature)) {
            throw new MalformedMessageException("signature seen before: the message was sent again");
        }
        final Header header = Header.from(Json.readObject("header", signed.get(0)));
        Json.readObject("parent_header", signed.get(1));
        final ObjectNode metadata = Json.readObject("metadata", signed.get(2));
        final ObjectNode content = Json.readObject("content", signed.get(3));
        return new Message(frames.subList(0, delimiter), header, signed.get(0), metadata, content,
            frames.subList(first + SIGNED, frames.size()));
    }

    /**
     * Closes a message for sending.
     *
     * @param idents  return address, or the topic of what is published
     * @param parent  header of the request this belongs to, as it came; empty if there is none
     * @param session of this kernel
     */
    public static List<Bytes> close(List<Bytes> idents, Bytes parent, String session, Content content,
                                    ObjectNode metadata, List<Bytes> buffers, Signer signer) {
        final List<Bytes> signed = List.of(Json.write(Header.fresh(session, content.type()).json()),
            parent.size() == 0 ? EMPTY_DICT : parent, Json.write(metadata), Json.write(content.json()));
        final List<Bytes> frames = new ArrayList<>(idents.size() + SIGNED + 2 + buffers.size());
        frames.addAll(idents);
        frames.add(DELIMITER);
        frames.add(signer.sign(signed));
        frames.addAll(signed);
        frames.addAll(buffers);
        return frames;
    }
}
