package spanwright.kernel.wire;

import java.util.List;
import spanwright.kernel.message.Bytes;

/** Who is told what arrives. Called on the thread that owns the sockets: it must return soon. */
public interface ChannelListener {
    /** A message arrived; nothing about it has been checked. */
    void received(Channel channel, List<Bytes> frames);

    /** A client subscribed to a topic; the empty topic stands for all. */
    void subscribed(String topic);

    /** Whether so many requests wait that no more should be taken from the shell channel for now. */
    boolean overloaded();

    /** The thread that owns the sockets has failed: nothing is received or sent any more. */
    void lost(Throwable why);
}
