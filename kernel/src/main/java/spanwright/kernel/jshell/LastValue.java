package spanwright.kernel.jshell;

/** Where the value of a cell's last expression goes. Public only because the classes of cells call it. */
public final class LastValue {
    private LastValue() { }

    /** An expression that has a value. */
    public interface Valued {
        /** Computes it. */
        Object value() throws Throwable;
    }

    /** An expression that has none: a call of a void method. */
    public interface Unvalued {
        /** Does it. */
        void run() throws Throwable;
    }

    /** Shows a value. */
    public static void of(Object value) {
        if (Thread.currentThread().getThreadGroup() instanceof CellGroup g) {
            g.run().show(value);
        }
    }

    /** Computes and shows a value. */
    public static void from(Valued expression) throws Throwable {
        of(expression.value());
    }

    /** Runs a call that has no value. */
    public static void from(Unvalued expression) throws Throwable {
        expression.run();
    }
}
