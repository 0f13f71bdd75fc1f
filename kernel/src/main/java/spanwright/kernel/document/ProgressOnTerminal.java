package spanwright.kernel.document;

import java.io.PrintStream;
import java.util.Objects;
import me.tongfei.progressbar.ConsoleProgressBarConsumer;
import me.tongfei.progressbar.ProgressBar;
import me.tongfei.progressbar.ProgressBarBuilder;
import me.tongfei.progressbar.ProgressBarStyle;

/** Shows the progress of a run as one moving line for each notebook. */
public final class ProgressOnTerminal implements RunListener {
    private final PrintStream terminal;
    private final int columns;
    private ProgressBar bar;

    /**
     * On a terminal.
     *
     * @param terminal where to draw
     * @param columns  width of the terminal, at least 40
     */
    public ProgressOnTerminal(PrintStream terminal, int columns) {
        this.terminal = Objects.requireNonNull(terminal, "terminal");
        this.columns = Math.max(40, columns);
    }

    @Override
    public void notebookStarted(String name, int codeCells) {
        bar = new ProgressBarBuilder().setTaskName(name).setInitialMax(codeCells).setUnit(" cells", 1)
            .setStyle(ProgressBarStyle.ASCII).setUpdateIntervalMillis(100).hideEta()
            .setConsumer(new ConsoleProgressBarConsumer(terminal, columns)).build();
    }

    @Override
    public void cellStarted(int position, String source) {
        bar.stepTo(position - 1L);
        bar.setExtraMessage(source);
    }

    @Override
    public void notebookEnded(RunResult result) {
        bar.stepTo(result.cellsRun());
        bar.setExtraMessage(result.passed() ? "" : "failed");
        bar.close();
    }
}
