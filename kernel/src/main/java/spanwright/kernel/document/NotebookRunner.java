package spanwright.kernel.document;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Supplier;
import spanwright.kernel.display.MimeBundle;
import spanwright.kernel.interpreter.Interpreter;

/**
 * Runs notebooks without a Jupyter server, each with an interpreter of its own. Stateless between runs; one
 * run at a time, because the interpreter redirects the standard streams of the process.
 */
public final class NotebookRunner {
    private final Supplier<? extends Interpreter> interpreters;

    /** With a source of fresh interpreters; the runner closes them. */
    public NotebookRunner(Supplier<? extends Interpreter> interpreters) {
        this.interpreters = Objects.requireNonNull(interpreters, "interpreters");
    }

    /**
     * Runs all code cells in order. Outputs in the notebook are replaced; a cell that does not run, because
     * an earlier one failed, loses its outputs, so that no old number stands beside new ones.
     *
     * @param notebook what to run; language Java or not stated
     * @param name     how the person knows it
     * @param options  limit, errors, values to set
     * @param listener is told of each cell
     * @throws IllegalArgumentException if the notebook is in another language, or values are to be set and it
     *     does not have exactly one cell tagged "parameters"
     * @throws IllegalStateException    if the interpreter does not start
     */
    public RunResult run(Notebook notebook, String name, RunOptions options, RunListener listener) {
        requireJava(notebook, name);
        final Notebook ready = ParameterCell.injected(notebook, name, options.parameters());
        try (Interpreter interpreter = interpreters.get();
             TimedSession session = new TimedSession(interpreter, options.timeLimit())) {
            final Run run = new Run(ready, session, options, listener);
            listener.notebookStarted(name, (int) ready.cells().stream().filter(NotebookCell::isCode).count());
            session.start();
            final RunResult result = run.all(interpreter.language().version());
            listener.notebookEnded(result);
            return result;
        }
    }

    private static void requireJava(Notebook notebook, String name) {
        notebook.language().filter(language -> !language.equals("java")).ifPresent(language -> {
            throw new IllegalArgumentException(name + " is a notebook in " + language
                + "; only Java runs here");
        });
    }

    /** One run, from first cell to last. */
    private static final class Run {
        private final Notebook notebook;
        private final TimedSession session;
        private final RunOptions options;
        private final RunListener listener;
        private final RecordedOutputs outputs = new RecordedOutputs();
        private final List<RunResult.CellFailure> failures = new ArrayList<>();
        private int count;

        Run(Notebook notebook, TimedSession session, RunOptions options, RunListener listener) {
            this.notebook = notebook;
            this.session = session;
            this.options = options;
            this.listener = listener;
        }

        RunResult all(String javaVersion) {
            final long start = System.nanoTime();
            final List<NotebookCell> cells = notebook.cells();
            final List<RecordedOutputs.OfCell> sinks = new ArrayList<>();
            final List<OptionalInt> counts = new ArrayList<>();
            boolean going = true;
            for (int i = 0; i < cells.size(); i++) {
                final NotebookCell cell = cells.get(i);
                final RecordedOutputs.OfCell sink = outputs.nextCell();
                sinks.add(sink);
                final boolean runs = going && cell.isCode() && !cell.source().isBlank();
                if (runs) {
                    going = cell(cell, i + 1, sink);
                }
                counts.add(runs ? OptionalInt.of(count) : OptionalInt.empty());
            }
            final Duration elapsed = Duration.ofNanos(System.nanoTime() - start);
            final List<NotebookCell> executed = new ArrayList<>();
            for (int i = 0; i < cells.size(); i++) {
                final NotebookCell cell = cells.get(i);
                executed.add(cell.isCode() ? cell.executed(sinks.get(i).saved(), counts.get(i)) : cell);
            }
            final Notebook done = notebook.withCells(executed).withMetadata("language_info",
                languageInfo(javaVersion));
            return new RunResult(done, headlines(executed), failures, count, elapsed);
        }

        /** Runs one cell; returns whether the next one may run. */
        private boolean cell(NotebookCell cell, int place, RecordedOutputs.OfCell sink) {
            count++;
            listener.cellStarted(count, cell.source().lines().filter(l ->
                !l.isBlank()).findFirst().orElse(""));
            final TimedSession.Ending ending = session.run(cell.source(), "cell [" + count + "]", sink);
            ending.shown().ifPresent(shown -> sink.add(new SavedOutput.Result(shown), Optional.empty()));
            ending.failure().ifPresent(failure -> {
                sink.add(failure, Optional.empty());
                failures.add(new RunResult.CellFailure(cell.id(), place, count, ending.line(), failure.name(),
                    failure.message()));
            });
            final boolean excused = options.keepGoing() || cell.hasTag("raises-exception");
            return ending.sessionUsable() && (ending.failure().isEmpty() || excused);
        }

        private static List<RunResult.CellHeadline> headlines(List<NotebookCell> cells) {
            final List<RunResult.CellHeadline> found = new ArrayList<>();
            for (NotebookCell cell : cells) {
                for (SavedOutput output : cell.outputs()) {
                    final Optional<MimeBundle> bundle = output.shownBundle();
                    bundle.flatMap(Headline::of).ifPresent(h ->
                        found.add(new RunResult.CellHeadline(cell.id(), h)));
                }
            }
            return found;
        }

        private static Map<String, Object> languageInfo(String version) {
            return Map.of("name", "java", "version", version, "mimetype", "text/x-java",
                "file_extension", ".java", "pygments_lexer", "java", "codemirror_mode", "text/x-java");
        }
    }
}
