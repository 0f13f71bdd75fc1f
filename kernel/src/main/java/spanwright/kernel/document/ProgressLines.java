package spanwright.kernel.document;

import java.io.PrintStream;
import java.util.Locale;
import java.util.Objects;

/** Tells the progress of a run in lines, for a file or a log. */
public final class ProgressLines implements RunListener {
    private static final int WIDTH = 80;

    private final PrintStream out;
    private String name = "";
    private int codeCells;

    /** To a stream. */
    public ProgressLines(PrintStream out) {
        this.out = Objects.requireNonNull(out, "out");
    }

    @Override
    public void notebookStarted(String notebook, int cells) {
        name = notebook;
        codeCells = cells;
        out.println(name + ": " + cells + " cells");
    }

    @Override
    public void cellStarted(int position, String source) {
        out.println("  " + position + " of " + codeCells + "  " + clipped(source.strip()));
    }

    private static String clipped(String line) {
        return line.length() <= WIDTH ? line : line.substring(0, WIDTH - 3) + "...";
    }

    @Override
    public void notebookEnded(RunResult result) {
        out.printf(Locale.ROOT, "%s: %s after %.1f s%n", name, result.passed() ? "done" : "failed",
            result.elapsed().toMillis() / 1e3);
    }
}
