package spanwright.kernel.jshell;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.assertj.core.api.Assertions;
import org.junit.jupiter.api.Test;
import spanwright.kernel.display.CellOutput;
import spanwright.kernel.display.MimeBundle;
import spanwright.kernel.display.Streams;
import spanwright.kernel.interpreter.Cell;

/** What cannot be caught in the process: a cell that ends it by other ways than System.exit. */
class ProcessEndTest {
    @Test
    void aCellThatEndsTheProcessIsToldBefore() throws Exception {
        final String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
        final Process p = new ProcessBuilder(java, "-cp", classPath(), Child.class.getName())
            .redirectErrorStream(true).start();
        final String text = new String(p.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(p.waitFor()).as(text).isEqualTo(3);
        assertThat(text).contains("printed before").contains("The Java process ends while this cell runs");
    }

    /** The places this test was loaded from: the kernel, the tests and their libraries. */
    private static String classPath() {
        return Stream.of(JShellInterpreter.class, ProcessEndTest.class, Assertions.class)
            .map(ProcessEndTest::place).distinct().collect(Collectors.joining(File.pathSeparator));
    }

    private static String place(Class<?> type) {
        return new File(type.getProtectionDomain().getCodeSource().getLocation().getPath()).getPath();
    }

    /** A process with one session and one cell. */
    static final class Child implements CellOutput {
        public static void main(String[] args) {
            final JShellInterpreter session = new JShellInterpreter(Prelude.ofImports(List.of(), "test"));
            session.evaluate(new Cell(
                "System.out.println(\"printed before\");\nRuntime.getRuntime().exit(3);",
                "cell [1]"), new Child());
        }

        @Override
        public void write(Stream stream, String text) {
            Streams.originalOut().print(text);
            Streams.originalOut().flush();
        }

        @Override
        public void display(MimeBundle bundle, Optional<String> displayId) {
            throw new UnsupportedOperationException();
        }

        @Override
        public void updateDisplay(MimeBundle bundle, String displayId) {
            throw new UnsupportedOperationException();
        }

        @Override
        public void clear(boolean wait) {
            throw new UnsupportedOperationException();
        }

        @Override
        public void page(MimeBundle bundle) {
            throw new UnsupportedOperationException();
        }

        @Override
        public Optional<String> readLine(String prompt, boolean password) {
            throw new UnsupportedOperationException();
        }
    }
}
