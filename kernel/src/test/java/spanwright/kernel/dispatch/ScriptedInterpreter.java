package spanwright.kernel.dispatch;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import spanwright.kernel.display.CellOutput;
import spanwright.kernel.display.MimeBundle;
import spanwright.kernel.interpreter.Cell;
import spanwright.kernel.interpreter.Completeness;
import spanwright.kernel.interpreter.Completions;
import spanwright.kernel.interpreter.Inspection;
import spanwright.kernel.interpreter.Interpreter;
import spanwright.kernel.interpreter.LanguageInfo;
import spanwright.kernel.interpreter.Outcome;

/** The double of the engine: a cell is a list of lines, each a verb and a word. */
final class ScriptedInterpreter implements Interpreter {
    final CountDownLatch mayWarm = new CountDownLatch(1);
    private volatile Thread running;
    private volatile boolean stuck;

    ScriptedInterpreter() {
        this(true);
    }

    ScriptedInterpreter(boolean warmAtOnce) {
        if (warmAtOnce) {
            mayWarm.countDown();
        }
    }

    private static final class Failed extends RuntimeException {
        private static final long serialVersionUID = 1L;

        Failed(String message) {
            super(message);
        }
    }

    @Override
    public Outcome evaluate(Cell cell, CellOutput output) {
        running = Thread.currentThread();
        Optional<MimeBundle> shown = Optional.empty();
        try {
            for (final String line : cell.code().split("\n")) {
                final int space = line.indexOf(' ');
                final String verb = space < 0 ? line : line.substring(0, space);
                final Optional<MimeBundle> value =
                    step(verb, space < 0 ? "" : line.substring(space + 1), cell, output);
                shown = value.isPresent() ? value : shown;
            }
            return new Outcome.Value(shown);
        } catch (Failed e) {
            return new Outcome.UserThrew(new Outcome.ErrorReport("Failed", e.getMessage(),
                List.of(cell.label(), e.getMessage()), 1, 1));
        } catch (InterruptedException e) {
            return new Outcome.Interrupted(
                new Outcome.ErrorReport("Interrupted", "stopped", List.of("stopped"), 1, 1));
        } catch (IOException e) {
            return new Outcome.UserThrew(
                new Outcome.ErrorReport("IOException", e.getMessage(), List.of(e.getMessage()), 1, 1));
        } finally {
            running = null;
        }
    }

    private Optional<MimeBundle> step(String verb, String word, Cell cell, CellOutput output)
        throws InterruptedException, IOException {
        switch (verb) {
            case "out" -> output.write(CellOutput.Stream.STDOUT, word + "\n");
            case "err" -> output.write(CellOutput.Stream.STDERR, word + "\n");
            case "lines" -> {
                for (int i = 0; i < Integer.parseInt(word); i++) {
                    output.write(CellOutput.Stream.STDOUT, i + "\n");
                }
            }
            case "big" -> output.write(CellOutput.Stream.STDOUT, "x".repeat(Integer.parseInt(word)));
            case "show" -> output.display(MimeBundle.text(word), Optional.empty());
            case "display" -> output.display(MimeBundle.text(word), Optional.of(word));
            case "update" -> output.updateDisplay(MimeBundle.text("new " + word), word);
            case "clear" -> output.clear(word.equals("wait"));
            case "page" -> output.page(MimeBundle.text(word));
            case "ask" -> output.write(CellOutput.Stream.STDOUT,
                "answer " + output.readLine(word, false).orElse("END") + "\n");
            case "secret" -> output.write(CellOutput.Stream.STDOUT,
                "answer " + output.readLine(word, true).orElse("END") + "\n");
            case "sleep" -> Thread.sleep(Integer.parseInt(word));
            case "late" -> new Thread(() -> {
                try {
                    Thread.sleep(150);
                } catch (InterruptedException e) {
                    Thread.currentThread().interrupt();
                }
                output.write(CellOutput.Stream.STDOUT, word + "\n");
            }).start();
            case "comm" -> output.comms().orElseThrow().register(word, (comm, first) ->
                comm.onMessage(m -> comm.send(Map.of("echo", m.data(), "buffers", m.buffers().size()))));
            case "badcomm" -> output.comms().orElseThrow().register(word, (comm, first) ->
                comm.onMessage(m -> {
                    throw new IllegalStateException("handler broke");
                }));
            case "exit" -> System.exit(Integer.parseInt(word));
            case "stuck" -> stuck = true;
            case "linger" -> new Thread(() -> {
                while (true) {
                    Thread.onSpinWait();
                }
            }).start();
            case "boom" -> throw new IllegalStateException("engine bug");
            case "stackoverflow" -> throw new StackOverflowError("engine overflow");
            case "fail" -> throw new Failed(word);
            case "value" -> {
                return Optional.of(MimeBundle.text(word).with(MimeBundle.HTML, "<b>" + word + "</b>"));
            }
            case "json" -> {
                return Optional.of(MimeBundle.text(word).with("application/json",
                    Map.of("nan", Double.NaN, "inf", Double.POSITIVE_INFINITY, "list", List.of(1, "two"))));
            }
            case "label" -> {
                return Optional.of(MimeBundle.text(cell.label()));
            }
            default -> throw new Failed("cannot find symbol " + verb);
        }
        return Optional.empty();
    }

    @Override
    public void interrupt() {
        final Thread t = running;
        if (t != null) {
            t.interrupt();
        }
    }

    @Override
    public Completions complete(String code, int cursor) {
        return new Completions(List.of(new Completions.Item("print", "function", "(String text)"),
            new Completions.Item("private", "keyword", "")), Math.max(0, cursor - 2), cursor);
    }

    @Override
    public Optional<Inspection> inspect(String code, int cursor, int detail) {
        return code.startsWith("known")
            ? Optional.of(new Inspection(MimeBundle.text("at " + cursor + " detail " + detail)))
            : Optional.empty();
    }

    @Override
    public Completeness completeness(String code) {
        return code.endsWith("{") ? new Completeness(Completeness.Status.INCOMPLETE, "    ")
            : new Completeness(Completeness.Status.COMPLETE, "");
    }

    @Override
    public LanguageInfo language() {
        return new LanguageInfo("17.0.15", "a banner", "0.1.0");
    }

    @Override
    public void warmUp() {
        try {
            mayWarm.await(20, TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    @Override
    public void close() {
        while (stuck) {
            Thread.onSpinWait();
        }
    }
}
