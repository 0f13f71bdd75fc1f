package spanwright.kernel.document;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import spanwright.kernel.display.CellOutput.Stream;
import spanwright.kernel.display.MimeBundle;

/** What stands under a code cell: one of the four outputs of nbformat 4. */
public sealed interface SavedOutput {
    /**
     * Text written to standard output or standard error; neighbours of one stream are one.
     *
     * @param stream which of the two
     * @param text   what was written
     */
    record Text(Stream stream, String text) implements SavedOutput {
        /** Checks the components. */
        public Text {
            Objects.requireNonNull(stream, "stream");
            Objects.requireNonNull(text, "text");
        }
    }

    /**
     * A value shown by a call.
     *
     * @param bundle its representations
     */
    record Shown(MimeBundle bundle) implements SavedOutput {
        /** Checks the component. */
        public Shown {
            Objects.requireNonNull(bundle, "bundle");
        }
    }

    /**
     * The value of the last expression.
     *
     * @param bundle its representations
     */
    record Result(MimeBundle bundle) implements SavedOutput {
        /** Checks the component. */
        public Result {
            Objects.requireNonNull(bundle, "bundle");
        }
    }

    /**
     * What stopped the cell.
     *
     * @param name      class of the exception, or a word such as "CompileError"
     * @param message   what is wrong
     * @param traceback lines, may hold ANSI colours
     */
    record Failure(String name, String message, List<String> traceback) implements SavedOutput {
        /** Copies the list. */
        public Failure {
            Objects.requireNonNull(name, "name");
            Objects.requireNonNull(message, "message");
            traceback = List.copyOf(traceback);
        }
    }

    /** The representations of a value, empty for text and failures. */
    default Optional<MimeBundle> shownBundle() {
        if (this instanceof Shown s) {
            return Optional.of(s.bundle());
        }
        return this instanceof Result r ? Optional.of(r.bundle()) : Optional.empty();
    }
}
