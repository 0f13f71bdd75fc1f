package spanwright.kernel.jshell;

import jdk.jshell.SourceCodeAnalysis;
import jdk.jshell.SourceCodeAnalysis.CompletionInfo;
import spanwright.kernel.interpreter.Completeness;
import spanwright.kernel.interpreter.Completeness.Status;

/** Whether a cell can run as it stands, and how far to indent its next line. */
final class CompletenessCheck {
    private static final int STEP = 4;

    private CompletenessCheck() { }

    /** Judges each unit of the code; the first that is not complete decides. */
    static Completeness of(SourceCodeAnalysis analysis, String code) {
        String rest = code;
        while (true) {
            final CompletionInfo info = analysis.analyzeCompletion(rest);
            switch (info.completeness()) {
                case COMPLETE:
                    if (info.remaining().isBlank()) {
                        return new Completeness(Status.COMPLETE, "");
                    }
                    rest = info.remaining();
                    break;
                case COMPLETE_WITH_SEMI:
                    return isBareAnnotation(rest) ? incomplete(code) : new Completeness(Status.COMPLETE, "");
                case EMPTY:
                    return new Completeness(Status.COMPLETE, "");
                case DEFINITELY_INCOMPLETE, CONSIDERED_INCOMPLETE:
                    return incomplete(code);
                default:
                    return new Completeness(Status.INVALID, "");
            }
        }
    }

    /** The analysis takes an annotation without a declaration for a complete one. */
    private static boolean isBareAnnotation(String unit) {
        return JavaText.masked(unit).strip().matches("@[\\p{L}_$][\\p{L}\\p{N}_$.]*(\\s*\\([^)]*\\))?");
    }

    private static Completeness incomplete(String code) {
        final String text = JavaText.masked(code).stripTrailing();
        final String line = text.substring(text.lastIndexOf('\n') + 1);
        final String raw = code.substring(text.length() - line.length(), text.length());
        final int width = raw.length() - raw.stripLeading().length();
        final boolean opens = line.endsWith("{") || line.endsWith("(") || line.endsWith("[")
            || line.endsWith("->");
        return new Completeness(Status.INCOMPLETE, raw.substring(0, width) + (opens ? " ".repeat(STEP) : ""));
    }
}
