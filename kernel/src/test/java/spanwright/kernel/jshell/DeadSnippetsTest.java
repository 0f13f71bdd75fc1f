package spanwright.kernel.jshell;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import jdk.jshell.JShell;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Run on each JDK we support: the tables that are emptied are JShell's own. */
class DeadSnippetsTest {
    private static String printed;

    @BeforeAll
    static void runWhereJShellIsOpen() throws IOException, InterruptedException {
        final Process process = new ProcessBuilder(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-XX:+UseSerialGC",
            "--add-opens", "jdk.jshell/jdk.jshell=ALL-UNNAMED", "-cp", classPath(),
            DeadSnippetsMain.class.getName()).redirectErrorStream(true).start();
        printed = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(process.waitFor(60, TimeUnit.SECONDS)).as(printed).isTrue();
        assertThat(process.exitValue()).as(printed).isZero();
    }

    private static String classPath() {
        return System.getProperty("surefire.test.class.path", System.getProperty("java.class.path"))
            + java.io.File.pathSeparator + String.join(java.io.File.pathSeparator,
            of(DeadSnippetsMain.class), of(DeadSnippets.class),
            of(com.fasterxml.jackson.databind.ObjectMapper.class),
                of(com.fasterxml.jackson.core.JsonFactory.class),
            of(com.fasterxml.jackson.annotation.JsonFormat.class), of(org.assertj.core.api.Assertions.class));
    }

    private static String of(Class<?> type) {
        return Path.of(java.net.URI.create(type.getProtectionDomain().getCodeSource().getLocation()
            .toString()))
            .toString();
    }

    @Test
    void keepsOnlyWhatLives() {
        assertThat(printed).contains("before 157\n", "after 8\n");
    }

    @Test
    void whatLivesStillWorks() {
        assertThat(printed).contains("plus(2) = 42\n", "p.x() = 3.0\n", "again = 49.0\n", "f(3) = 3\n",
            "f(3.0) = 1.5\n", "new AtomicInteger(7) = 7\n");
    }

    @Test
    void definitionsCanFailAndBeMadeAgain() {
        assertThat(printed).contains("again = 1.5\n", "plus(2) = 3\n");
    }

    @Test
    void aHandlerOfAForgottenCellFailsAtItsLine() {
        assertThat(printed).contains("at cell [2], line 3:  List.of(1).get(7));");
    }

    @Test
    void withoutAccessNothingIsForgotten() {
        try (JShell shell = JShell.create()) {
            assertThat(JShell.class.getModule().isOpen("jdk.jshell", DeadSnippets.class.getModule())
                || DeadSnippets.of(shell).isEmpty()).isTrue();
        }
    }
}
