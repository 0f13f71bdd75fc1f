package spanwright.kernel.jshell;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * Which cell each snippet came from, so that traces can name lines of cells. Keeps the latest few thousand.
 */
final class Origins {
    private static final int KEPT = 4000;

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
     */
    record Origin(String label, String code, int firstLine) {
        /** Line of the cell for a line of the snippet, both from 1. */
        int line(int snippetLine) {
            return firstLine + snippetLine - 1;
        }

        /** Text of a line of the cell. */
        String text(int line) {
            return JavaText.line(code, line).strip();
        }
    }

    synchronized void put(String snippetId, Origin origin) {
        bySnippet.put(snippetId, origin);
    }

    synchronized Optional<Origin> of(String snippetId) {
        return Optional.ofNullable(bySnippet.get(snippetId));
    }
}
