package spanwright.kernel.wire;

import java.util.Iterator;
import java.util.LinkedHashSet;
import java.util.Set;
import spanwright.kernel.message.Bytes;

/**
 * Remembers signatures, so that a message that is sent again is refused. Bounded: the oldest tenth is
 * forgotten when it is full. Used by one thread only.
 */
public final class ReplayGuard {
    /** Signatures kept; at 64 characters each this is some 10 MB at most. */
    public static final int CAPACITY = 65_536;

    private final int capacity;
    private final Set<Bytes> seen = new LinkedHashSet<>();

    /** An empty guard of the usual size. */
    public ReplayGuard() {
        this(CAPACITY);
    }

    ReplayGuard(int capacity) {
        this.capacity = capacity;
    }

    /** Notes a signature; false if it was there already. */
    public boolean isNew(Bytes signature) {
        if (!seen.add(signature)) {
            return false;
        }
        if (seen.size() > capacity) {
            final Iterator<Bytes> oldest = seen.iterator();
            for (int i = 0; i < Math.max(1, capacity / 10); i++) {
                oldest.next();
                oldest.remove();
            }
        }
        return true;
    }

    int size() {
        return seen.size();
    }
}
