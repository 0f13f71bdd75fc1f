package spanwright.kernel.interpreter;

import java.util.Optional;
import spanwright.kernel.display.CellOutput;

/**
 * Runs cells of one session, one at a time. {@link #evaluate} is called from one thread only; {@link
 * #interrupt},
 * {@link #complete}, {@link #inspect} and {@link #completeness} may be called from another while a cell runs.
 *
 * <p>All offsets are UTF-16 indices into the code that was given.
 */
public interface Interpreter extends AutoCloseable {
    /**
     * Runs a cell to its end. Output goes to {@code output} while it runs, flushed before this returns; the
     * value of its last expression is in the outcome.
     *
     * @param cell   what to run
     * @param output where output goes
     */
    Outcome evaluate(Cell cell, CellOutput output);

    /** Stops the running cell as soon as possible; without effect if none runs. Variables survive. */
    void interrupt();

    /** What could stand at the cursor. */
    Completions complete(String code, int cursor);

    /**
     * What is known of the name at the cursor.
     *
     * @param detail 0 for signature, first sentence and value, 1 for all of it
     */
    Optional<Inspection> inspect(String code, int cursor, int detail);

    /** Whether the code can run as it stands. */
    Completeness completeness(String code);

    /** Name, version and banner for kernel_info_reply. */
    LanguageInfo language();

    /**
     * Does slow first-time work ahead of the first cell; safe to call from a background thread before any
     * cell.
     */
    void warmUp();

    @Override
    void close();
}
