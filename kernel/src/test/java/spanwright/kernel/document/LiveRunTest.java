package spanwright.kernel.document;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import spanwright.kernel.display.CellOutput.Stream;
import spanwright.kernel.display.MimeBundle;
import spanwright.kernel.jshell.JShellInterpreter;
import spanwright.kernel.jshell.Prelude;

/** The runner with the engine that serves live sessions, on a notebook file. */
class LiveRunTest {
    private static final NotebookRunner RUNNER = new NotebookRunner(() ->
        new JShellInterpreter(
            Prelude.ofImports(List.of("import java.util.*;"), "0")));
    private static Notebook notebook;

    @BeforeAll
    static void read() throws Exception {
        notebook = NotebookFile.parse(NbformatSchema.resource("two-loops.ipynb"), "two-loops.ipynb");
    }

    private static RunResult run(RunOptions options) {
        final RunResult result = RUNNER.run(notebook, "two-loops.ipynb", options, RunListener.NONE);
        NbformatSchema.assertValid(NotebookFile.text(result.notebook()));
        return result;
    }

    private static String results(RunResult result) {
        return result.notebook().cells().stream().flatMap(c -> c.outputs().stream())
            .filter(SavedOutput.Result.class::isInstance)
            .map(o -> String.valueOf(o.shownBundle().orElseThrow().data().get(MimeBundle.TEXT)))
            .collect(Collectors.joining("; "));
    }

    @Test
    void runsToTheEndAndShowsValues() {
        final RunResult result = run(RunOptions.DEFAULT);
        assertThat(result.failures()).isEmpty();
        assertThat(results(result)).isEqualTo("0.25; 6");
        assertThat(result.notebook().cells().get(3).outputs())
            .contains(new SavedOutput.Text(Stream.STDOUT, "loop 101\nloop 102\n"));
    }

    @Test
    void setValuesReachTheCellsThatFollowAndKeepTheDeclaredType() {
        final RunResult result =
            run(RunOptions.DEFAULT.withParameters(List.of(Parameter.parse("targetPercent=1"))));
        assertThat(result.failures()).isEmpty();
        assertThat(results(result)).isEqualTo("0.5; 6");
    }

    @Test
    void aNameThatTheNotebookDoesNotDeclareStopsTheRun() {
        final RunResult result =
            run(RunOptions.DEFAULT.withParameters(List.of(Parameter.parse("tragetPercent=1"))));
        assertThat(result.failures()).singleElement().satisfies(f -> {
            assertThat(f.toString()).startsWith("cell 3 [2], line 2: CompileError").contains("tragetPercent");
        });
        assertThat(result.cellsRun()).isEqualTo(2);
    }

    @Test
    void anEndlessCellIsStoppedAndTheSessionGoesOn() {
        final Notebook endless = new Notebook(List.of(NotebookCell.code("a", "int kept = 5;"),
            NotebookCell.code("b", "while (true) { kept++; kept--; }"), NotebookCell.code("c", "kept")),
            notebook.metadata());
        final RunResult result = RUNNER.run(endless, "x", RunOptions.DEFAULT.withKeepGoing()
            .withTimeLimit(Duration.ofMillis(1500)), RunListener.NONE);
        assertThat(result.failures()).singleElement().hasToString(
            "cell 2 [2]: TimeLimit: the cell ran longer than the limit of 1.5 s");
        assertThat(results(result)).isEqualTo("5");
    }

    @Test
    void eachNotebookHasASessionOfItsOwn() {
        final Notebook declares = new Notebook(List.of(NotebookCell.code("a", "int secret = 5;")),
            notebook.metadata());
        final Notebook uses = new Notebook(List.of(NotebookCell.code("a", "secret")), notebook.metadata());
        assertThat(RUNNER.run(declares, "a", RunOptions.DEFAULT, RunListener.NONE).passed()).isTrue();
        assertThat(RUNNER.run(uses, "b", RunOptions.DEFAULT, RunListener.NONE).passed()).isFalse();
    }
}
