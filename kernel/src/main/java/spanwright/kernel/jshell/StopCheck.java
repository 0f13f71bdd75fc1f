package spanwright.kernel.jshell;

import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.concurrent.ForkJoinWorkerThread;

/**
 * What the classes of cells call at the beginning of each method and before each backward jump, on JDKs that
 * weave such calls in. Public only because of that.
 */
public final class StopCheck {
    /** The class that the JDK's weaving calls. */
    static final String WOVEN_CLASS = "REPL.$Cancel$";
    private static volatile int stopping;
    private static volatile int pools;

    private StopCheck() { }

    /** Ends a cell from within. */
    static final class Stopped extends Error {
        private static final long serialVersionUID = 1L;

        Stopped() {
            super("stopped on request");
        }
    }

    /** Ends the calling thread's work if its cell is to be stopped. */
    public static void check() {
        if (stopping > 0) {
            checkGroup();
        }
    }

    /** Pool threads belong to no cell; what they run of a cell ends while a cell is being stopped. */
    private static void checkGroup() {
        final Thread current = Thread.currentThread();
        if (current instanceof ForkJoinWorkerThread && pools > 0
            || current.getThreadGroup() instanceof CellGroup g && g.isToStop()) {
            throw new Stopped();
        }
    }

    /** From now on calls look whether their cell is to be stopped; else they cost next to nothing. */
    static synchronized void arm() {
        stopping++;
        pools++;
    }

    /** Work that cells give to pools from now on is not that of the stopped cell. */
    static synchronized void disarmPools() {
        pools--;
    }

    /** One cell less is to be stopped. */
    static synchronized void disarm() {
        stopping--;
    }

    /**
     * The class file {@code REPL.$Cancel$}, whose method {@code stopCheck()} calls {@link #check()}. Class
     * file version 50, which needs no stack map. Layout: Java Virtual Machine Specification SE 17, chapter 4.
     */
    static byte[] wovenClass() {
        final ByteArrayOutputStream result = new ByteArrayOutputStream();
        try (DataOutputStream out = new DataOutputStream(result)) {
            out.writeInt(0xCAFEBABE);
            out.writeInt(50);
            out.writeShort(13);
            utf8(out, "REPL/$Cancel$");
            entry(out, 7, 1);
            utf8(out, "java/lang/Object");
            entry(out, 7, 3);
            utf8(out, "stopCheck");
            utf8(out, "()V");
            utf8(out, "Code");
            utf8(out, "spanwright/kernel/jshell/StopCheck");
            entry(out, 7, 8);
            utf8(out, "check");
            entry(out, 12, 10, 6);
            entry(out, 10, 9, 11);
            shorts(out, 0x0021, 2, 4, 0, 0, 1);
            shorts(out, 0x0009, 5, 6, 1, 7);
            out.writeInt(16);
            shorts(out, 0, 0);
            out.writeInt(4);
            out.writeByte(0xb8);
            out.writeShort(12);
            out.writeByte(0xb1);
            shorts(out, 0, 0, 0);
        } catch (IOException e) {
            throw new UncheckedIOException("in memory", e);
        }
        return result.toByteArray();
    }

    private static void utf8(DataOutputStream out, String s) throws IOException {
        out.writeByte(1);
        out.writeUTF(s);
    }

    private static void entry(DataOutputStream out, int tag, int... indices) throws IOException {
        out.writeByte(tag);
        shorts(out, indices);
    }

    private static void shorts(DataOutputStream out, int... values) throws IOException {
        for (int v : values) {
            out.writeShort(v);
        }
    }
}
