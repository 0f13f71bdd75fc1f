package spanwright.kernel.jshell;

import java.io.IOException;
import java.util.Optional;
import spanwright.kernel.display.CellOutput;
import spanwright.kernel.display.MimeBundle;
import spanwright.kernel.display.Streams;

/** Output of the prelude: nobody looks at it, so text goes to the log of the process. */
final class PreludeOutput implements CellOutput {
    @Override
    public void write(Stream stream, String text) {
        Streams.originalErr().print(text);
    }

    @Override
    public void display(MimeBundle bundle, Optional<String> displayId) {
        write(Stream.STDOUT, bundle.data() + "\n");
    }

    @Override
    public void updateDisplay(MimeBundle bundle, String displayId) {
        display(bundle, Optional.of(displayId));
    }

    @Override
    public void clear(boolean wait) {
        // Nothing is shown, so there is nothing to remove.
    }

    @Override
    public void page(MimeBundle bundle) {
        display(bundle, Optional.empty());
    }

    @Override
    public Optional<String> readLine(String prompt, boolean password) throws IOException {
        throw new IOException("the prelude runs before anybody can be asked");
    }
}
