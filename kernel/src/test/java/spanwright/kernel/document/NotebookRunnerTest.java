package spanwright.kernel.document;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static spanwright.kernel.document.ScriptedInterpreter.NOTHING;
import static spanwright.kernel.document.ScriptedInterpreter.threw;
import static spanwright.kernel.document.ScriptedInterpreter.value;

import java.io.IOException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.TimeUnit;
import java.util.function.BiFunction;
import org.assertj.core.api.InstanceOfAssertFactories;
import org.junit.jupiter.api.Test;
import spanwright.kernel.display.CellOutput;
import spanwright.kernel.display.CellOutput.Stream;
import spanwright.kernel.display.MimeBundle;
import spanwright.kernel.interpreter.Outcome;

class NotebookRunnerTest {
    private ScriptedInterpreter interpreter;

    private RunResult run(BiFunction<String, CellOutput, Outcome> script, RunOptions options,
        String... sources) {
        return run(script, options, notebook(sources));
    }

    private RunResult run(BiFunction<String, CellOutput, Outcome> script, RunOptions options,
        Notebook notebook) {
        interpreter = new ScriptedInterpreter(script);
        final RunResult result =
            new NotebookRunner(() -> interpreter).run(notebook, "x.ipynb", options, RunListener.NONE);
        NbformatSchema.assertValid(NotebookFile.text(result.notebook()));
        return result;
    }

    private static Notebook notebook(String... sources) {
        final List<NotebookCell> cells = new ArrayList<>();
        for (int i = 0; i < sources.length; i++) {
            cells.add(sources[i].startsWith("#") ? NotebookCell.markdown("c" + i, sources[i])
                : NotebookCell.code("c" + i, sources[i])
                    .executed(List.of(new SavedOutput.Text(Stream.STDOUT, "old")), OptionalInt.of(99)));
        }
        return new Notebook(cells, Map.of());
    }

    private static List<SavedOutput> outputs(RunResult result, int cell) {
        return result.notebook().cells().get(cell).outputs();
    }

    @Test
    void runsCodeCellsInOrderAndNumbersThem() {
        final RunResult result = run((code, out) -> value(MimeBundle.text("<" + code + ">")),
            RunOptions.DEFAULT,
            "# text", "a", "", "b");
        assertThat(interpreter.evaluated).extracting(c -> c.label() + c.code())
            .containsExactly("cell [1]a", "cell [2]b");
        assertThat(outputs(result, 1)).containsExactly(new SavedOutput.Result(MimeBundle.text("<a>")));
        assertThat(result.notebook().cells()).extracting(NotebookCell::executionCount).containsExactly(
            OptionalInt.empty(), OptionalInt.of(1), OptionalInt.empty(), OptionalInt.of(2));
        assertThat(result.notebook().metadata().get("language_info")).asInstanceOf(
            InstanceOfAssertFactories.MAP).containsEntry("version", "17.0.1");
        assertThat(result.passed()).isTrue();
        assertThat(interpreter.warm).isTrue();
        assertThat(interpreter.closed).isTrue();
    }

    @Test
    void neighbouringPiecesOfOneStreamAreOneOutput() {
        final RunResult result = run((code, out) -> {
            out.write(Stream.STDOUT, "a");
            out.write(Stream.STDOUT, "b\n");
            out.write(Stream.STDERR, "c");
            out.write(Stream.STDOUT, "");
            out.write(Stream.STDERR, "d");
            out.display(MimeBundle.text("shown"), Optional.empty());
            out.write(Stream.STDERR, "e");
            return value(MimeBundle.text("end"));
        }, RunOptions.DEFAULT, "x");
        assertThat(outputs(result, 0)).containsExactly(
            new SavedOutput.Text(Stream.STDOUT, "ab\n"), new SavedOutput.Text(Stream.STDERR, "cd"),
            new SavedOutput.Shown(MimeBundle.text("shown")), new SavedOutput.Text(Stream.STDERR, "e"),
            new SavedOutput.Result(MimeBundle.text("end")));
    }

    @Test
    void anUpdateReachesEarlierCellsEverywhereTheIdStands() {
        final RunResult result = run((code, out) -> {
            if (code.equals("show")) {
                out.display(MimeBundle.text("old"), Optional.of("p"));
                out.display(MimeBundle.text("other"), Optional.of("q"));
            } else {
                out.updateDisplay(MimeBundle.text("new"), "p");
            }
            return NOTHING;
        }, RunOptions.DEFAULT, "show", "show", "update");
        final var expected = List.of(
            new SavedOutput.Shown(MimeBundle.text("new")), new SavedOutput.Shown(MimeBundle.text("other")));
        assertThat(outputs(result, 0)).isEqualTo(expected);
        assertThat(outputs(result, 1)).isEqualTo(expected);
        assertThat(outputs(result, 2)).isEmpty();
    }

    @Test
    void clearingRemovesAtOnceOrWaitsForTheNextOutput() {
        final RunResult result = run((code, out) -> {
            out.write(Stream.STDOUT, "gone");
            out.clear(code.equals("wait"));
            if (!code.equals("last")) {
                out.write(Stream.STDOUT, "kept");
            }
            out.clear(true);
            return NOTHING;
        }, RunOptions.DEFAULT, "now", "wait", "last");
        final var kept = List.of(new SavedOutput.Text(Stream.STDOUT, "kept"));
        assertThat(outputs(result, 0)).isEqualTo(kept);
        assertThat(outputs(result, 1)).isEqualTo(kept);
        assertThat(outputs(result, 2)).isEmpty();
    }

    @Test
    void aProgressBarLeavesItsLastStateOnly() {
        final RunResult result = run((code, out) -> {
            for (int i = 0; i <= 100; i++) {
                out.write(Stream.STDERR, "\r" + i + " %");
            }
            out.write(Stream.STDERR, "\ndone\n");
            return NOTHING;
        }, RunOptions.DEFAULT, "x");
        assertThat(outputs(result, 0)).containsExactly(new SavedOutput.Text(Stream.STDERR, "100 %\ndone\n"));
    }

    @Test
    void outputWithoutEndIsCutWithANotice() {
        final String block = "0123456789abcdef".repeat(1 << 16);
        final RunResult result = run((code, out) -> {
            for (int i = 0; i < 20; i++) {
                out.write(Stream.STDOUT, block);
            }
            return NOTHING;
        }, RunOptions.DEFAULT, "x");
        assertThat(outputs(result, 0)).hasSize(2);
        assertThat(((SavedOutput.Text) outputs(result, 0).get(0)).text()).hasSize(RecordedOutputs.TEXT_LIMIT);
        assertThat(((SavedOutput.Text) outputs(result, 0).get(1)).text())
            .contains((20L * block.length() - RecordedOutputs.TEXT_LIMIT) + " more characters");
    }

    @Test
    void stopsAtTheFirstErrorAndLeavesNoOldOutputBehind() {
        final RunResult result = run((code, out) -> code.equals("bad") ? threw("E", "too big", 3) : NOTHING,
            RunOptions.DEFAULT, "good", "# text", "bad", "after");
        assertThat(interpreter.evaluated).hasSize(2);
        assertThat(result.passed()).isFalse();
        assertThat(result.cellsRun()).isEqualTo(2);
        assertThat(result.failures()).singleElement()
            .hasToString("cell 3 [2], line 3: E: too big");
        assertThat(outputs(result, 2)).containsExactly(
            new SavedOutput.Failure("E", "too big", List.of("\u001b[31mE\u001b[0m: too big")));
        assertThat(outputs(result, 3)).isEmpty();
        assertThat(result.notebook().cells().get(3).executionCount()).isEmpty();
    }

    @Test
    void goesOnWhereAsked() {
        final RunResult result = run((code, out) -> code.equals("bad") ? threw("E", "m", 0) : NOTHING,
            RunOptions.DEFAULT.withKeepGoing(), "bad", "good", "bad");
        assertThat(interpreter.evaluated).hasSize(3);
        assertThat(result.failures()).extracting(RunResult.CellFailure::cell).containsExactly(1, 3);
    }

    @Test
    void anEngineThatIsLostEndsTheRunInAnyCase() {
        final RunResult result = run((code, out) -> new Outcome.EngineLost(
            new Outcome.ErrorReport("EngineLost", "out of memory", List.of(), 0, 0)),
            RunOptions.DEFAULT.withKeepGoing(), "a", "b");
        assertThat(interpreter.evaluated).hasSize(1);
        assertThat(result.failures()).hasSize(1);
    }

    @Test
    void anInterpreterThatThrowsIsReportedAsLost() {
        final RunResult result = run((code, out) -> {
            throw new IllegalStateException("broken");
        }, RunOptions.DEFAULT, "a", "b");
        assertThat(result.failures()).singleElement().satisfies(f -> {
            assertThat(f.name()).isEqualTo("SessionLost");
            assertThat(f.message()).contains("broken");
        });
    }

    @Test
    void aCellOverTheLimitIsInterruptedAndNamed() {
        final RunResult result = run((code, out) -> {
            if (code.equals("fast")) {
                return NOTHING;
            }
            try {
                if (interpreter.interrupted.await(20, TimeUnit.SECONDS)) {
                    return new Outcome.Interrupted(
                        new Outcome.ErrorReport("Interrupted", "stopped", List.of("at line 1"), 1, 1));
                }
            } catch (InterruptedException e) {
                throw new AssertionError(e);
            }
            return NOTHING;
        }, RunOptions.DEFAULT.withTimeLimit(Duration.ofMillis(150)), "fast", "slow", "after");
        assertThat(result.failures()).singleElement()
            .hasToString("cell 2 [2]: TimeLimit: the cell ran longer than the limit of 0.15 s");
        assertThat(outputs(result, 1)).containsExactly(new SavedOutput.Failure("TimeLimit",
            "the cell ran longer than the limit of 0.15 s", List.of("at line 1")));
        assertThat(interpreter.evaluated).hasSize(2);
    }

    @Test
    void setValuesStandInACellAfterTheTaggedOneAndReplaceThoseOfAnEarlierRun() {
        final NotebookCell tagged = NotebookCell.code("p", "double target = 0.5;")
            .withMetadata("tags", List.of("parameters"));
        final Notebook notebook = new Notebook(List.of(tagged, NotebookCell.code("b", "use")), Map.of());
        final List<Parameter> values = List.of(Parameter.parse("target=1"),
            Parameter.parse("site=Kestrel Fen"));
        final RunResult once =
            run((code, out) -> NOTHING, RunOptions.DEFAULT.withParameters(values), notebook);
        assertThat(once.notebook().cells()).extracting(NotebookCell::source).containsExactly(
            "double target = 0.5;", "// Set for this run.\ntarget = 1;\nsite = \"Kestrel Fen\";", "use");
        final RunResult twice =
            run((code, out) -> NOTHING, RunOptions.DEFAULT.withParameters(values.subList(0, 1)),
                once.notebook());
        assertThat(twice.notebook().cells()).extracting(NotebookCell::source).containsExactly(
            "double target = 0.5;", "// Set for this run.\ntarget = 1;", "use");
    }

    @Test
    void valuesNeedExactlyOneTaggedCell() {
        final RunOptions options = RunOptions.DEFAULT.withParameters(List.of(Parameter.parse("a=1")));
        assertThatThrownBy(() -> run((code, out) -> NOTHING, options, "x"))
            .isInstanceOf(IllegalArgumentException.class)
            .hasMessage("x.ipynb has no code cells tagged \"parameters\"; exactly one is needed to set a");
    }

    @Test
    void aNotebookInAnotherLanguageIsRefused() {
        final Notebook python = notebook("x").withMetadata("language_info", Map.of("name", "python"));
        assertThatThrownBy(() -> run((code, out) -> NOTHING, RunOptions.DEFAULT, python))
            .hasMessage("x.ipynb is a notebook in python; only Java runs here");
    }

    @Test
    void headlinesAreCollectedInOrderWithTheirCells() {
        final RunResult result = run((code, out) -> {
            out.display(new Headline("Meets", code + " meets 0.50 % of span.").on(MimeBundle.text(code)),
                Optional.empty());
            return value(MimeBundle.text("plain"));
        }, RunOptions.DEFAULT, "a", "b");
        assertThat(result.headlines()).extracting(h -> h.cellId() + ": " + h.headline())
            .containsExactly("c0: Meets: a meets 0.50 % of span.", "c1: Meets: b meets 0.50 % of span.");
    }

    @Test
    void nobodyCanBeAsked() {
        run((code, out) -> {
            assertThatThrownBy(() -> out.readLine("name?", false)).isInstanceOf(IOException.class)
                .hasMessageContaining("name?");
            return NOTHING;
        }, RunOptions.DEFAULT, "x");
    }

    @Test
    void aPagerPageIsShownInPlace() {
        final RunResult result = run((code, out) -> {
            out.page(MimeBundle.text("help"));
            return NOTHING;
        }, RunOptions.DEFAULT, "x");
        assertThat(outputs(result, 0)).containsExactly(new SavedOutput.Shown(MimeBundle.text("help")));
    }
}
