package spanwright.kernel.display;

import java.nio.ByteBuffer;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * What is sent on a comm.
 *
 * @param data     maps, lists, strings, truth values and finite numbers
 * @param metadata beside the data, often empty
 * @param buffers  binary attachments, read-only
 */
public record CommMessage(Map<String, Object> data, Map<String, Object> metadata, List<ByteBuffer> buffers) {
    /** Copies the collections, keeping their order; what is in them stays as it is. */
    public CommMessage {
        data = Collections.unmodifiableMap(new LinkedHashMap<>(Objects.requireNonNull(data, "data")));
        metadata = Collections.unmodifiableMap(
            new LinkedHashMap<>(Objects.requireNonNull(metadata, "metadata")));
        buffers = buffers.stream().map(ByteBuffer::asReadOnlyBuffer).toList();
    }

    /** Data only. */
    public static CommMessage of(Map<String, Object> data) {
        return new CommMessage(data, Map.of(), List.of());
    }
}
