package spanwright.kernel.display;

import java.io.IOException;
import java.io.InputStream;
import java.io.InterruptedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Objects;
import java.util.Optional;

/** System.in of all cells: asks the front end of the reading thread's cell for a line. */
final class CellInputStream extends InputStream {
    private final InputStream before;
    private byte[] line = new byte[0];
    private int next;

    CellInputStream(InputStream before) {
        this.before = before;
    }

    @Override
    public int read() throws IOException {
        final byte[] one = new byte[1];
        return read(one, 0, 1) < 0 ? -1 : one[0] & 0xff;
    }

    @Override
    public int read(byte[] b, int off, int len) throws IOException {
        Objects.checkFromIndexSize(off, len, b.length);
        final Optional<CellScope> scope = CellScope.current();
        if (scope.isEmpty()) {
            return before.read(b, off, len);
        }
        if (len == 0) {
            return 0;
        }
        if (available() == 0 && !fill(scope.get())) {
            return -1;
        }
        return take(b, off, len);
    }

    private synchronized int take(byte[] b, int off, int len) {
        final int n = Math.min(len, line.length - next);
        System.arraycopy(line, next, b, off, n);
        next += n;
        return n;
    }

    @Override
    public synchronized int available() {
        return line.length - next;
    }

    private boolean fill(CellScope scope) throws IOException {
        final Optional<String> answer;
        try {
            answer = scope.readLine("", false);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new InterruptedIOException("stopped while waiting for a line");
        }
        if (answer.isEmpty()) {
            return false;
        }
        synchronized (this) {
            line = (answer.get() + "\n").getBytes(StandardCharsets.UTF_8);
            next = 0;
        }
        return true;
    }
}
