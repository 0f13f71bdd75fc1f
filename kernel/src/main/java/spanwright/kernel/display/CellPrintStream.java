package spanwright.kernel.display;

import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.Objects;
import java.util.Optional;

/**
 * System.out or System.err of all cells: text goes to the cell of the writing thread, and to the stream that
 * was there before if the thread belongs to no cell. Takes no lock of its own while text is made.
 */
final class CellPrintStream extends PrintStream {
    private final CellOutput.Stream stream;
    private final PrintStream before;
    private final ThreadLocal<Bytes> bytes = ThreadLocal.withInitial(Bytes::new);

    CellPrintStream(CellOutput.Stream stream, PrintStream before) {
        super(OutputStream.nullOutputStream(), false, StandardCharsets.UTF_8);
        this.stream = stream;
        this.before = before;
    }

    private void text(String s) {
        final Optional<CellScope> scope = CellScope.current();
        if (scope.isPresent()) {
            scope.get().write(stream, s);
        } else {
            before.print(s);
        }
    }

    /** Bytes of a character that is not yet complete, by thread. */
    private static final class Bytes {
        private final CharsetDecoder decoder = StandardCharsets.UTF_8.newDecoder()
            .onMalformedInput(CodingErrorAction.REPLACE).onUnmappableCharacter(CodingErrorAction.REPLACE);
        private ByteBuffer rest = ByteBuffer.allocate(0);

        String decode(byte[] b, int off, int len) {
            final ByteBuffer in = ByteBuffer.allocate(rest.remaining() + len);
            in.put(rest).put(b, off, len).flip();
            final CharBuffer out = CharBuffer.allocate(in.remaining() + 1);
            decoder.decode(in, out, false);
            rest = ByteBuffer.allocate(in.remaining()).put(in).flip();
            return out.flip().toString();
        }
    }

    @Override
    public void write(int b) {
        write(new byte[] {(byte) b}, 0, 1);
    }

    @Override
    public void write(byte[] buf, int off, int len) {
        Objects.checkFromIndexSize(off, len, buf.length);
        if (len > 0) {
            text(bytes.get().decode(buf, off, len));
        }
    }

    @Override
    public void write(byte[] buf) {
        write(buf, 0, buf.length);
    }

    @Override
    public void writeBytes(byte[] buf) {
        write(buf, 0, buf.length);
    }

    @Override
    public void flush() {
        if (CellScope.current().isEmpty()) {
            before.flush();
        }
    }

    @Override
    public void close() {
        flush();
    }

    @Override
    public void print(String s) {
        text(String.valueOf(s));
    }

    @Override
    public void print(boolean b) {
        text(String.valueOf(b));
    }

    @Override
    public void print(char c) {
        text(String.valueOf(c));
    }

    @Override
    public void print(int i) {
        text(String.valueOf(i));
    }

    @Override
    public void print(long l) {
        text(String.valueOf(l));
    }

    @Override
    public void print(float f) {
        text(String.valueOf(f));
    }

    @Override
    public void print(double d) {
        text(String.valueOf(d));
    }

    @Override
    public void print(char[] s) {
        text(String.valueOf(s));
    }

    @Override
    public void print(Object o) {
        text(String.valueOf(o));
    }

    @Override
    public void println() {
        text("\n");
    }

    @Override
    public void println(String s) {
        text(s + "\n");
    }

    @Override
    public void println(boolean b) {
        text(b + "\n");
    }

    @Override
    public void println(char c) {
        text(c + "\n");
    }

    @Override
    public void println(int i) {
        text(i + "\n");
    }

    @Override
    public void println(long l) {
        text(l + "\n");
    }

    @Override
    public void println(float f) {
        text(f + "\n");
    }

    @Override
    public void println(double d) {
        text(d + "\n");
    }

    @Override
    public void println(char[] s) {
        text(String.valueOf(s) + "\n");
    }

    @Override
    public void println(Object o) {
        text(o + "\n");
    }

    @Override
    public PrintStream format(String format, Object... args) {
        text(String.format(format, args));
        return this;
    }

    @Override
    public PrintStream format(java.util.Locale l, String format, Object... args) {
        text(String.format(l, format, args));
        return this;
    }

    @Override
    public PrintStream append(CharSequence s) {
        text(String.valueOf(s));
        return this;
    }

    @Override
    public PrintStream append(CharSequence s, int start, int end) {
        text(String.valueOf(s).substring(start, end));
        return this;
    }

    @Override
    public PrintStream append(char c) {
        text(String.valueOf(c));
        return this;
    }
}
