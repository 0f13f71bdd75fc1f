package spanwright.kernel.display;

import java.io.InputStream;
import java.io.PrintStream;

/**
 * System.out, System.err and System.in of the process, taken over once so that each cell gets its own.
 * Threads that belong to no cell keep the streams that were there before.
 */
public final class Streams {
    private static final PrintStream OUT = System.out;
    private static final PrintStream ERR = System.err;
    private static final InputStream IN = System.in;

    static {
        System.setOut(new CellPrintStream(CellOutput.Stream.STDOUT, OUT));
        System.setErr(new CellPrintStream(CellOutput.Stream.STDERR, ERR));
        System.setIn(new CellInputStream(IN));
    }

    private Streams() { }

    /** Takes the streams over; without effect after the first call. */
    public static void install() {
        if (OUT == System.out) {
            throw new IllegalStateException("the streams of the process could not be taken over");
        }
    }

    /** Standard output of the process itself. */
    public static PrintStream originalOut() {
        return OUT;
    }

    /** Standard error of the process itself. */
    public static PrintStream originalErr() {
        return ERR;
    }
}
