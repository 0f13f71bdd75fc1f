package spanwright.kernel.jshell;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.WeakHashMap;

/**
 * Lets a cell say so when the process ends under it. System.exit in a cell is caught before; what is left is
 * {@code Runtime.exit}, library code that exits, and a request from outside.
 */
final class EndNotice {
    private static final Set<JShellInterpreter> SESSIONS = Collections.newSetFromMap(new WeakHashMap<>());

    static {
        Runtime.getRuntime().addShutdownHook(new Thread(EndNotice::tell, "spanwright-end"));
    }

    private EndNotice() { }

    /** From now on the running cell of this session is told. */
    static void watch(JShellInterpreter session) {
        synchronized (SESSIONS) {
            SESSIONS.add(session);
        }
    }

    private static void tell() {
        final List<JShellInterpreter> sessions;
        synchronized (SESSIONS) {
            sessions = new ArrayList<>(SESSIONS);
        }
        sessions.forEach(JShellInterpreter::tellThatTheProcessEnds);
    }
}
