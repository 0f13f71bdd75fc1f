package spanwright.readings;

import java.util.List;

/**
 * A record that cannot be read as it stands. The message is one sentence with file, row, column, the value
 * and what is allowed; everything else that was found is in {@link #findings()}.
 */
public final class ReadingsFormatException extends IllegalArgumentException {
    private static final long serialVersionUID = 1L;

    private final transient List<RecordFinding> findings;

    ReadingsFormatException(RecordFinding first) {
        this(first, List.of(first));
    }

    ReadingsFormatException(RecordFinding first, List<RecordFinding> findings) {
        super(first.toString());
        this.findings = List.copyOf(findings);
    }

    /** Everything the reader found, in the order of the file; empty after the exception was serialised. */
    public List<RecordFinding> findings() {
        return findings == null ? List.of() : findings;
    }
}
