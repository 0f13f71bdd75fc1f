package spanwright.kernel.jshell;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Which cell each snippet came from, so that traces can name lines of cells. Keeps the latest few thousand.
 */
final class Origins {
    private static final int KEPT = 4000;

    /**
     * The class around a snippet, which has the snippet's id in its name, then a letter once it is replaced.
     */
    private static final Pattern WRAPPER = Pattern.compile("(REPL\\.\\$JShell\\$(\\d+)[A-Z]*).*");

    private final Map<String, Origin> bySnippet = new LinkedHashMap<>() {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Origin> eldest) {
            return size() > KEPT;
        }
    };

    /**
     * Where a snippet stands.
     *
     * @param label     of the cell
     * @param code      of the cell
     * @param firstLine line of the cell where the snippet begins, from 1
     * @param wrapper   name of the class that JShell has put around it
     * @param before    lines of that class before the snippet begins
     */
    record Origin(String label, String code, int firstLine, String wrapper, int before) {
        /** Line of the cell for a line of the snippet, both from 1. */
        int line(int snippetLine) {
            return firstLine + snippetLine - 1;
        }

        /** Text of a line of the cell. */
        String text(int line) {
            return JavaText.line(code, line).strip();
        }
    }

    /**
     * A line of a cell.
     *
     * @param origin the cell
     * @param line   from 1
     */
    record Place(Origin origin, int line) { }

    synchronized void put(String snippetId, Origin origin) {
        bySnippet.put(snippetId, origin);
    }

    synchronized Optional<Origin> of(String snippetId) {
        return Optional.ofNullable(bySnippet.get(snippetId));
    }

    /** Where a frame of a class comes from that JShell itself does not know any more. */
    Optional<Place> of(StackTraceElement frame) {
        final Matcher m = WRAPPER.matcher(frame.getClassName());
        return !m.matches() ? Optional.empty()
            : of(m.group(2)).filter(o -> o.wrapper().equals(m.group(1)))
            .map(o -> new Place(o, o.line(frame.getLineNumber() - o.before())));
    }
}
