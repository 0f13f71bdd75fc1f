package spanwright.kernel.dispatch;

import java.util.List;
import java.util.Objects;
import spanwright.kernel.message.Bytes;
import spanwright.kernel.message.Message;
import spanwright.kernel.wire.Channel;

/**
 * Where a request came from: what a reply, and everything published on its behalf, needs.
 *
 * @param channel it came on
 * @param idents  return address
 * @param header  its header as it came, the parent of all that answers it; empty if there is no request
 */
record Origin(Channel channel, List<Bytes> idents, Bytes header) {
    /** No request: what the kernel says by itself. */
    static final Origin NONE = new Origin(Channel.IOPUB, List.of(), Bytes.EMPTY);

    Origin {
        Objects.requireNonNull(channel, "channel");
        idents = List.copyOf(idents);
        Objects.requireNonNull(header, "header");
    }

    static Origin of(Channel channel, Message message) {
        return new Origin(channel, message.idents(), message.headerOctets());
    }
}
