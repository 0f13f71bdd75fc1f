package spanwright.notebook;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import spanwright.kernel.document.Notebook;
import spanwright.kernel.document.NotebookFile;
import spanwright.kernel.document.NotebookPage;
import spanwright.kernel.document.NotebookRunner;
import spanwright.kernel.document.Parameter;
import spanwright.kernel.document.ProgressLines;
import spanwright.kernel.document.ProgressOnTerminal;
import spanwright.kernel.document.RunListener;
import spanwright.kernel.document.RunOptions;
import spanwright.kernel.document.RunResult;

/**
 * Runs notebooks of the working folder in turn, each in a session of its own, and writes what came of them.
 */
final class HeadlessRun {
    private static final DateTimeFormatter MINUTE =
        DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm 'UTC'", Locale.ROOT).withZone(ZoneOffset.UTC);

    private final NotebookRunner runner = new NotebookRunner(Sessions::open);
    private final Path out;
    private final RunOptions options;
    private final PrintStream verdicts;
    private final PrintStream progress;

    /**
     * A run.
     *
     * @param out       folder to write to, made if it is not there
     * @param settings  each {@code name=value}
     * @param timeLimit for each cell
     * @param keepGoing whether an error ends neither the notebook nor the run
     * @param verdicts  gets the headlines and the files that were written
     * @param progress  gets progress and errors
     */
    HeadlessRun(Path out, List<String> settings, Optional<Duration> timeLimit, boolean keepGoing,
                PrintStream verdicts, PrintStream progress) {
        this.out = out;
        this.options = new RunOptions(timeLimit, keepGoing, settings.stream().map(Parameter::parse).toList());
        this.verdicts = verdicts;
        this.progress = progress;
    }

    /** Runs them; returns whether every cell of every notebook ran to its end. */
    boolean all(List<Path> notebooks) throws IOException {
        boolean passed = true;
        for (Path notebook : notebooks) {
            final boolean fine = one(notebook);
            passed &= fine;
        }
        return passed;
    }

    private boolean one(Path file) throws IOException {
        final String name = file.getFileName().toString();
        final Notebook notebook = NotebookFile.read(file);
        final RunResult result = runner.run(notebook, name, options, listener());
        NotebookFile.write(result.notebook(), out.resolve(name));
        final Path page = out.resolve(name.replaceFirst("\\.ipynb$", "") + ".html");
        Files.writeString(page, NotebookPage.html(result, name, file.toAbsolutePath().getParent(),
            origin(name, result)));
        result.headlines().forEach(h -> verdicts.println(name + ": " + h.headline()));
        result.failures().forEach(f -> progress.println(name + ": " + f));
        verdicts.println(name + ": " + page);
        return result.passed();
    }

    private RunListener listener() {
        return System.console() == null ? new ProgressLines(progress)
            : new ProgressOnTerminal(progress, columns());
    }

    private static int columns() {
        final String columns = Optional.ofNullable(System.getenv("COLUMNS")).orElse("");
        return columns.matches("[0-9]{1,4}") ? Integer.parseInt(columns) : 100;
    }

    private static String origin(String name, RunResult result) {
        return String.format(Locale.ROOT,
            "Made from %s by Spanwright %s on Java %s, %s; %d cells ran in %.1f s.",
            name, Main.version(), Runtime.version(), MINUTE.format(Instant.now()), result.cellsRun(),
            result.elapsed().toMillis() / 1e3);
    }
}
