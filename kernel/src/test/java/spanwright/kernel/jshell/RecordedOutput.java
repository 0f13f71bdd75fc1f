package spanwright.kernel.jshell;

import java.io.IOException;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import spanwright.kernel.display.CellOutput;
import spanwright.kernel.display.MimeBundle;

/** Keeps what a cell writes. */
final class RecordedOutput implements CellOutput {
    final StringBuffer out = new StringBuffer();
    final StringBuffer err = new StringBuffer();
    final List<String> events = new ArrayList<>();
    final Deque<String> answers = new ArrayDeque<>();

    @Override
    public void write(Stream stream, String text) {
        (stream == Stream.STDOUT ? out : err).append(text);
        add(stream.protocolName() + " " + text);
    }

    private synchronized void add(String event) {
        events.add(event);
    }

    @Override
    public void display(MimeBundle bundle, Optional<String> displayId) {
        add("display " + displayId.orElse("-") + " " + bundle.data().get(MimeBundle.TEXT));
    }

    @Override
    public void updateDisplay(MimeBundle bundle, String displayId) {
        add("update " + displayId + " " + bundle.data().get(MimeBundle.TEXT));
    }

    @Override
    public void clear(boolean wait) {
        add("clear " + wait);
    }

    @Override
    public void page(MimeBundle bundle) {
        add("page " + bundle.data().get(MimeBundle.TEXT));
    }

    @Override
    public Optional<String> readLine(String prompt, boolean password) throws IOException {
        add("ask " + prompt + " " + password);
        if (answers.isEmpty()) {
            throw new IOException("nobody can be asked here");
        }
        return Optional.of(answers.remove());
    }
}
