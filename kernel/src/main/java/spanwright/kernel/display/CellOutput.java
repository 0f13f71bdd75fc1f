package spanwright.kernel.display;

import java.util.Optional;

/**
 * What a running cell writes to, whoever shows it: a Jupyter front end or a notebook that is run headless.
 * Implementations may be called from any thread.
 */
public interface CellOutput {
    /** The two text streams of a cell. */
    enum Stream {
        /** Standard output. */
        STDOUT("stdout"),
        /** Standard error. */
        STDERR("stderr");

        private final String protocolName;

        Stream(String protocolName) {
            this.protocolName = protocolName;
        }

        /** The name in the Jupyter protocol and in notebook files. */
        public String protocolName() {
            return protocolName;
        }
    }

    /** Appends text to a stream. */
    void write(Stream stream, String text);

    /**
     * Shows a value.
     *
     * @param displayId name under which it can be updated later, empty if it never is
     */
    void display(MimeBundle bundle, Optional<String> displayId);

    /** Replaces what was shown under a display id, everywhere it stands. */
    void updateDisplay(MimeBundle bundle, String displayId);

    /**
     * Removes the output of the cell.
     *
     * @param wait whether to wait until the next output, which avoids flicker
     */
    void clear(boolean wait);

    /**
     * Adds a page for the pager of the front end (protocol: payload with source "page").
     *
     * @param bundle what to page through
     */
    void page(MimeBundle bundle);

    /**
     * Asks the person at the front end for a line.
     *
     * @param prompt   text before the line
     * @param password whether the line must not be echoed
     * @return the line without its end; empty at the end of input
     * @throws java.io.IOException if nobody can be asked (headless, or the request does not allow it)
     * @throws InterruptedException if the cell was interrupted meanwhile
     */
    Optional<String> readLine(String prompt, boolean password)
        throws java.io.IOException, InterruptedException;

    /** The comms of the session; empty where there is no front end. */
    default Optional<Comms> comms() {
        return Optional.empty();
    }
}
