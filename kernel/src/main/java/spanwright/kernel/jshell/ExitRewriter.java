package spanwright.kernel.jshell;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/**
 * Directs {@code System.exit} in the classes of a cell to {@link CellExit}, so that a cell cannot end the
 * kernel by mistake. Only the constant pool changes: two entries are added at its end and the method
 * reference points to them, so no instruction moves. Layout: Java Virtual Machine Specification SE 17,
 * section 4.4.
 *
 * <p>Not covered: {@code Runtime.exit} and {@code halt}, and library code that calls System.exit.
 */
final class ExitRewriter {
    private static final String TARGET = "spanwright/kernel/jshell/CellExit";
    private static final byte[] NEEDLE = "java/lang/System".getBytes(StandardCharsets.UTF_8);
    private static final int POOL = 10;
    private static final int UTF8 = 1;
    private static final int CLASS = 7;
    private static final int METHOD = 10;
    private static final int NAME_AND_TYPE = 12;

    private final byte[] bytes;
    private final int[] at;
    private final int end;

    private ExitRewriter(byte[] bytes) {
        this.bytes = bytes;
        this.at = new int[u2(8)];
        int p = POOL;
        for (int i = 1; i < at.length; i++) {
            at[i] = p;
            final int tag = bytes[p];
            p += size(tag, p);
            if (tag == 5 || tag == 6) {
                i++;
            }
        }
        this.end = p;
    }

    /** The class, with calls of System.exit directed to {@link CellExit}; the same array if it has none. */
    static byte[] rewrite(byte[] classFile) {
        return contains(classFile, NEEDLE) ? new ExitRewriter(classFile).rewritten() : classFile;
    }

    private static boolean contains(byte[] all, byte[] part) {
        for (int i = 0; i + part.length <= all.length; i++) {
            if (Arrays.equals(all, i, i + part.length, part, 0, part.length)) {
                return true;
            }
        }
        return false;
    }

    private byte[] rewritten() {
        final int method = exitMethod();
        if (method == 0) {
            return bytes;
        }
        final ByteArrayOutputStream result = new ByteArrayOutputStream(bytes.length + 64);
        try (DataOutputStream out = new DataOutputStream(result)) {
            final byte[] head = Arrays.copyOf(bytes, end);
            putU2(head, 8, at.length + 2);
            putU2(head, at[method] + 1, at.length + 1);
            out.write(head);
            out.writeByte(UTF8);
            out.writeUTF(TARGET);
            out.writeByte(CLASS);
            out.writeShort(at.length);
            out.write(bytes, end, bytes.length - end);
        } catch (IOException e) {
            throw new UncheckedIOException("in memory", e);
        }
        return result.toByteArray();
    }

    /** Index of the reference to System.exit(int), 0 if there is none. */
    private int exitMethod() {
        for (int i = 1; i < at.length; i++) {
            if (at[i] != 0 && bytes[at[i]] == METHOD
                && utf8(u2(at[u2(at[i] + 1)] + 1)).equals("java/lang/System")) {
                final int nameAndType = at[u2(at[i] + 3)];
                if (bytes[nameAndType] == NAME_AND_TYPE && utf8(u2(nameAndType + 1)).equals("exit")) {
                    return i;
                }
            }
        }
        return 0;
    }

    private int size(int tag, int p) {
        switch (tag) {
            case UTF8:
                return 3 + u2(p + 1);
            case 3: case 4: case 9: case METHOD: case 11: case NAME_AND_TYPE: case 17: case 18:
                return 5;
            case 5: case 6:
                return 9;
            case 15:
                return 4;
            case CLASS: case 8: case 16: case 19: case 20:
                return 3;
            default:
                throw new IllegalArgumentException("constant pool tag " + tag + " at byte " + p);
        }
    }

    private int u2(int p) {
        return (bytes[p] & 0xff) << 8 | bytes[p + 1] & 0xff;
    }

    private static void putU2(byte[] b, int p, int value) {
        b[p] = (byte) (value >> 8);
        b[p + 1] = (byte) value;
    }

    private String utf8(int index) {
        try (DataInputStream in = new DataInputStream(
            new ByteArrayInputStream(bytes, at[index] + 1, bytes.length - at[index] - 1))) {
            return in.readUTF();
        } catch (IOException e) {
            throw new UncheckedIOException("in memory", e);
        }
    }
}
