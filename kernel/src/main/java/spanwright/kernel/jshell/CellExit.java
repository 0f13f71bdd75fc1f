package spanwright.kernel.jshell;

/** Where {@code System.exit} of a cell leads to. Public only because the classes of cells call it. */
public final class CellExit {
    private CellExit() { }

    /** Thrown instead of ending the process. */
    static final class ExitRequested extends Error {
        private static final long serialVersionUID = 1L;

        ExitRequested(int status) {
            super("the cell called System.exit(" + status + "): the cell ends here, the session goes on");
        }
    }

    /** Ends the cell, not the process. */
    public static void exit(int status) {
        throw new ExitRequested(status);
    }
}
