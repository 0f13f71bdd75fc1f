package spanwright.kernel.dispatch;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.ByteBuffer;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import spanwright.kernel.display.CellOutput;
import spanwright.kernel.display.CommMessage;
import spanwright.kernel.display.Comms;
import spanwright.kernel.message.Bytes;
import spanwright.kernel.message.Event;
import spanwright.kernel.message.Json;
import spanwright.kernel.message.Message;
import spanwright.kernel.message.Reply;
import spanwright.kernel.message.Request;

/** Carries comm messages between the protocol and {@link Comms}. */
final class CommDesk implements Comms.Transport {
    private final Publisher publisher;
    private final Supplier<Origin> current;
    private final Comms comms = new Comms(this);

    /**
     * A desk without comms.
     *
     * @param current the request on whose behalf the calling thread works
     */
    CommDesk(Publisher publisher, Supplier<Origin> current) {
        this.publisher = publisher;
        this.current = current;
    }

    Comms comms() {
        return comms;
    }

    Reply info(Request.CommInfo request) {
        return new Reply.CommInfo(comms.targetsById().entrySet().stream()
            .filter(e -> request.target().map(e.getValue()::equals).orElse(true))
            .collect(Collectors.toMap(Map.Entry::getKey, Map.Entry::getValue)));
    }

    /** Hands a message of the front end on; what its handler throws is shown on stderr. */
    void deliver(Message message, Request request, CellOutput output) {
        try {
            if (request instanceof Request.CommOpen open) {
                comms.openedByFrontEnd(open.id(), open.target(), received(message, open.data()), output);
            } else if (request instanceof Request.CommMessage sent) {
                comms.sentByFrontEnd(sent.id(), received(message, sent.data()), output);
            } else if (request instanceof Request.CommClose close) {
                comms.closedByFrontEnd(close.id(), received(message, close.data()), output);
            }
        } catch (RuntimeException e) {
            final StringWriter trace = new StringWriter();
            e.printStackTrace(new PrintWriter(trace));
            output.write(CellOutput.Stream.STDERR, "a comm handler failed: " + trace);
        }
    }

    private static CommMessage received(Message message, ObjectNode data) {
        return new CommMessage(Json.plainMap(data), Json.plainMap(message.metadata()),
            message.buffers().stream().map(b -> ByteBuffer.wrap(b.shared())).toList());
    }

    @Override
    public void open(String id, String target, CommMessage first) {
        publish(new Event.CommOpen(id, target, first.data()), first);
    }

    @Override
    public void send(String id, CommMessage message) {
        publish(new Event.CommMessage(id, message.data()), message);
    }

    @Override
    public void close(String id, CommMessage last) {
        publish(new Event.CommClose(id, last.data()), last);
    }

    private void publish(Event event, CommMessage message) {
        final List<Bytes> buffers = message.buffers().stream().map(CommDesk::bytes).toList();
        publisher.publish(Optional.ofNullable(current.get()).orElse(Origin.NONE), event,
            (ObjectNode) Json.of(message.metadata()), buffers);
    }

    private static Bytes bytes(ByteBuffer buffer) {
        final byte[] copy = new byte[buffer.remaining()];
        buffer.duplicate().get(copy);
        return Bytes.owned(copy);
    }
}
