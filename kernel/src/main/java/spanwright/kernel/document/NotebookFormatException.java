package spanwright.kernel.document;

import java.io.IOException;

/** A file is not a notebook that can be read; the message names the file, the cell and what is wrong. */
public final class NotebookFormatException extends IOException {
    private static final long serialVersionUID = 1L;

    /** With the whole message. */
    public NotebookFormatException(String message) {
        super(message);
    }

    /** With the whole message and the failure behind it. */
    public NotebookFormatException(String message, Throwable cause) {
        super(message, cause);
    }
}
