package spanwright.kernel.jshell;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Pattern;
import spanwright.kernel.display.GeneratedNames;
import spanwright.kernel.interpreter.Outcome.ErrorReport;

/**
 * What a cell threw, as a person reads it: one line that says what is wrong, the lines of cells it passed
 * through, the causes; frames of the engine left out, long traces cut.
 */
final class RuntimeErrors {
    private static final int FIRST = 20;
    private static final int LAST = 5;
    private static final int MAX_CAUSES = 10;
    private static final Pattern MODULES = Pattern.compile(" \\(.* (?:is|are) in (?:unnamed )?module .*\\)$");

    private final Origins origins;
    private final String label;
    private final List<String> lines = new ArrayList<>();
    private int line;

    private RuntimeErrors(Origins origins, String label) {
        this.origins = origins;
        this.label = label;
    }

    /**
     * A report.
     *
     * @param thrown what the cell threw
     * @param mapped the same as JShell sees it: its frames name snippets and their lines
     * @param label  of the cell that ran
     */
    static ErrorReport report(Throwable thrown, Throwable mapped, Origins origins, String label) {
        final RuntimeErrors errors = new RuntimeErrors(origins, label);
        errors.describe(thrown, mapped);
        return new ErrorReport(nameOf(thrown), messageOf(thrown), errors.lines, errors.line, 0);
    }

    /** The report of a cell that was stopped; says where. */
    static ErrorReport stopped(Throwable mapped, Origins origins, String label) {
        final RuntimeErrors errors = new RuntimeErrors(origins, label);
        final String message = "the cell was stopped on request; variables keep the values they have";
        errors.lines.add(Ansi.ERROR.of("Interrupted: " + message));
        if (mapped != null && isInCell(mapped)) {
            errors.frames(mapped.getStackTrace());
        }
        return new ErrorReport("Interrupted", message, errors.lines, errors.line, 0);
    }

    /** A forced stop has the trace of the thread that forced it, which says nothing. */
    private static boolean isInCell(Throwable mapped) {
        return Arrays.stream(mapped.getStackTrace())
            .anyMatch(f -> f.getFileName() != null && f.getFileName().startsWith("#"));
    }

    private void describe(Throwable thrown, Throwable mapped) {
        Throwable t = thrown;
        Throwable m = mapped;
        lines.add(Ansi.ERROR.of(headline(t)));
        frames(m == null ? t.getStackTrace() : m.getStackTrace());
        for (int i = 0; i < MAX_CAUSES && t.getCause() != null && t.getCause() != t; i++) {
            t = t.getCause();
            m = m == null ? null : m.getCause();
            lines.add(Ansi.ERROR.of("caused by " + headline(t)));
            frames(m == null ? t.getStackTrace() : m.getStackTrace());
        }
        for (Throwable s : thrown.getSuppressed()) {
            lines.add("suppressed: " + headline(s));
        }
    }

    private static String headline(Throwable t) {
        final String message = messageOf(t);
        return nameOf(t) + (message.isEmpty() ? "" : ": " + message);
    }

    /** Class without the package java.lang and without generated names. */
    static String nameOf(Throwable t) {
        final String name = GeneratedNames.strip(t.getClass().getName());
        return name.startsWith("java.lang.") && name.indexOf('.', 10) < 0 ? name.substring(10)
            : name.startsWith("spanwright.") ? t.getClass().getSimpleName() : name;
    }

    private static String messageOf(Throwable t) {
        try {
            final String message = GeneratedNames.strip(Objects.toString(t.getMessage(), ""));
            return t instanceof ClassCastException ? MODULES.matcher(message).replaceAll("") : message;
        } catch (RuntimeException e) {
            return "(its getMessage failed: " + e.getClass().getName() + ")";
        }
    }

    private void frames(StackTraceElement[] trace) {
        final List<String> shown = new ArrayList<>();
        for (StackTraceElement frame : trace) {
            if (frame.getClassName().equals(StopCheck.WOVEN_CLASS)) {
                shown.clear();
                continue;
            }
            if (frame.getClassName().startsWith("spanwright.kernel.jshell.")) {
                continue;
            }
            final Optional<String> own = cellFrame(frame);
            final String text =
                own.orElseGet(() -> Ansi.FAINT.of("    at " + GeneratedNames.strip(frame.toString())));
            shown.add(text);
        }
        if (shown.size() <= FIRST + LAST + 1) {
            lines.addAll(shown);
        } else {
            lines.addAll(shown.subList(0, FIRST));
            lines.add(Ansi.FAINT.of("    ... " + (shown.size() - FIRST - LAST) + " more"));
            lines.addAll(shown.subList(shown.size() - LAST, shown.size()));
        }
    }

    /** A frame in a cell; JShell gives it the file name "#" + id of the snippet, as long as it knows it. */
    private Optional<String> cellFrame(StackTraceElement frame) {
        final String file = frame.getFileName();
        final Optional<Origins.Place> known = file != null && file.startsWith("#")
            ? origins.of(file.substring(1)).map(o -> new Origins.Place(o, o.line(frame.getLineNumber())))
            : origins.of(frame);
        return known.map(p -> {
            if (line == 0 && p.origin().label().equals(label)) {
                line = p.line();
            }
            final String in = place(frame);
            return "    at " + Ansi.PLACE.of(p.origin().label() + ", line " + p.line())
                + (in.isEmpty() ? "" : " in " + in) + ":  " + p.origin().text(p.line());
        });
    }

    /** Class and method of a frame in a cell, empty for statements that stand in the cell itself. */
    private static String place(StackTraceElement frame) {
        final String type = GeneratedNames.strip(frame.getClassName());
        final String method = frame.getMethodName();
        final boolean top = method.isEmpty() || method.equals("do_it$") || method.startsWith("lambda$do_it$");
        return top ? "" : (type.isEmpty() || type.contains("$JShell$") ? "" : type.replace('$', '.') + ".")
            + (method.startsWith("lambda$") ? method.split("\\$")[1] : method) + "()";
    }
}
