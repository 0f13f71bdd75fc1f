package spanwright.kernel.document;

/** Follows a run, for example to show progress. Called from the thread that runs the notebook. */
public interface RunListener {
    /** Follows nothing. */
    RunListener NONE = new RunListener() { };

    /**
     * A notebook starts.
     *
     * @param name      as the person knows it
     * @param codeCells how many cells can run
     */
    default void notebookStarted(String name, int codeCells) { }

    /**
     * A code cell starts.
     *
     * @param position from 1 to the number of code cells
     * @param source   its first line that is not empty
     */
    default void cellStarted(int position, String source) { }

    /** The notebook is done. */
    default void notebookEnded(RunResult result) { }
}
