package spanwright.kernel.jshell;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import jdk.jshell.Diag;
import spanwright.kernel.display.GeneratedNames;
import spanwright.kernel.interpreter.Outcome.ErrorReport;

/** What the compiler says, with the line of the cell and a caret under the place. */
final class CompileErrors {
    /** Name of these errors in the protocol. */
    static final String NAME = "CompileError";

    private CompileErrors() { }

    /**
     * A complaint at a place of a cell.
     *
     * @param message one line
     * @param offset  in the cell
     */
    record Complaint(String message, int offset) { }

    /** The errors of a snippet that begins at an offset of the cell. */
    static List<Complaint> complaints(List<Diag> diagnostics, int start, int length) {
        final List<Complaint> found = new ArrayList<>();
        for (Diag d : diagnostics) {
            if (d.isError()) {
                final long at = d.getPosition() == Diag.NOPOS ? d.getStartPosition() : d.getPosition();
                found.add(new Complaint(oneLine(d.getMessage(Locale.ROOT)),
                    start + (int) Math.max(0, Math.min(at, length))));
            }
        }
        return found;
    }

    /** A report of all complaints, the first of which is the message. */
    static ErrorReport report(String label, String code, List<Complaint> complaints) {
        final Complaint first = complaints.get(0);
        final List<String> lines = new ArrayList<>();
        final Set<Complaint> distinct = new LinkedHashSet<>(complaints);
        for (Complaint c : distinct) {
            lines.add(Ansi.ERROR.of(NAME + ": " + c.message()));
            final int line = JavaText.lineOf(code, c.offset());
            final int column = JavaText.columnOf(code, c.offset());
            lines.add(Ansi.PLACE.of(label + ", line " + line + ", column " + column));
            final String text = JavaText.line(code, line);
            lines.add("    " + text);
            lines.add("    " + blankAs(text, column - 1) + Ansi.ERROR.of("^"));
        }
        return new ErrorReport(NAME, first.message(), lines, JavaText.lineOf(code, first.offset()),
            JavaText.columnOf(code, first.offset()));
    }

    /** White space as wide as the beginning of a line, tabs kept. */
    private static String blankAs(String text, int length) {
        final StringBuilder b = new StringBuilder();
        for (int i = 0; i < length; i++) {
            b.append(i < text.length() && text.charAt(i) == '\t' ? '\t' : ' ');
        }
        return b.toString();
    }

    /** The compiler's lines as one: what and, of symbol and location, the symbol. */
    static String oneLine(String message) {
        final StringBuilder b = new StringBuilder();
        for (String line : GeneratedNames.strip(message).split("\\R")) {
            final String text = line.strip();
            if (text.startsWith("symbol:")) {
                b.append(": ").append(text.substring("symbol:".length()).strip());
            } else if (!text.startsWith("location:") && !text.isEmpty()) {
                b.append(b.length() == 0 ? "" : "; ").append(text);
            }
        }
        return b.toString();
    }
}
