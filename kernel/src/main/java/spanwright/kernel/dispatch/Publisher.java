package spanwright.kernel.dispatch;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import spanwright.kernel.message.Bytes;
import spanwright.kernel.message.Content;
import spanwright.kernel.message.Event;
import spanwright.kernel.message.Json;
import spanwright.kernel.message.Reply;
import spanwright.kernel.wire.Channel;
import spanwright.kernel.wire.Envelope;
import spanwright.kernel.wire.Signer;

/** Signs and sends messages of this kernel, from any thread. */
final class Publisher {
    /** The way out; a double of it stands in tests. */
    interface Outlet {
        void send(Channel channel, List<Bytes> frames);
    }

    private final String session;
    private final Signer signer;
    private final Outlet outlet;

    Publisher(String session, Signer signer, Outlet outlet) {
        this.session = session;
        this.signer = signer;
        this.outlet = outlet;
    }

    void reply(Origin to, Reply reply) {
        reply(to, reply, Json.object());
    }

    void reply(Origin to, Reply reply, ObjectNode metadata) {
        send(to.channel(), to.idents(), to, reply, metadata, List.of());
    }

    void publish(Origin parent, Event event) {
        publish(parent, event, Json.object(), List.of());
    }

    void publish(Origin parent, Event event, ObjectNode metadata, List<Bytes> buffers) {
        send(Channel.IOPUB, List.of(Bytes.of(event.type())), parent, event, metadata, buffers);
    }

    /** A welcome goes out under the very topic that was subscribed to, so that the subscriber gets it. */
    void welcome(String topic) {
        send(Channel.IOPUB, List.of(Bytes.of(topic)), Origin.NONE, new Event.Welcome(topic), Json.object(),
            List.of());
    }

    /** Asks the client that sent the request; it uses one name on shell and stdin. */
    void ask(Origin of, Event.InputRequest question) {
        send(Channel.STDIN, of.idents(), of, question, Json.object(), List.of());
    }

    private void send(Channel channel, List<Bytes> idents, Origin parent, Content content,
                      ObjectNode metadata, List<Bytes> buffers) {
        outlet.send(channel,
            Envelope.close(idents, parent.header(), session, content, metadata, buffers, signer));
    }
}
