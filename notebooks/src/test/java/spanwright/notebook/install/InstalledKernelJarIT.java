package spanwright.notebook.install;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import spanwright.kernel.wire.ConnectionFile;

/** What {@code install} leaves behind, started as a Jupyter client would start it. */
class InstalledKernelJarIT {
    private static final Path JAR = Path.of(System.getProperty("spanwright.jar"));
    private static final Path JAVA = Path.of(System.getProperty("java.home"), "bin", "java");

    @TempDir
    static Path prefix;
    private static Path folder;
    private static JsonNode spec;

    @BeforeAll
    static void install() throws Exception {
        final Path log = prefix.resolve("install.log");
        final Process install = new ProcessBuilder(JAVA.toString(), "-jar", JAR.toString(), "install",
            "--prefix", prefix.toString()).redirectErrorStream(true).redirectOutput(log.toFile()).start();
        assertThat(install.waitFor(300, TimeUnit.SECONDS)).isTrue();
        assertThat(install.exitValue()).as(Files.readString(log)).isZero();
        assertThat(log).content().doesNotContain("no class archive");
        folder = prefix.resolve("share/jupyter/kernels/spanwright");
        spec = new ObjectMapper().readTree(folder.resolve("kernel.json").toFile());
    }

    private static List<String> command(Path connectionFile, String... more) {
        final List<String> words = new ArrayList<>();
        spec.get("argv").forEach(word ->
            words.add(word.asText().replace("{connection_file}", connectionFile.toString())));
        words.addAll(1, List.of(more));
        return words;
    }

    @Test
    void theDescriptionNamesAJavaAndAJarOfItsOwn() {
        assertThat(spec.get("language").asText()).isEqualTo("java");
        assertThat(spec.get("display_name").asText()).isEqualTo("Java (Spanwright)");
        assertThat(spec.get("interrupt_mode").asText()).isEqualTo("message");
        assertThat(Path.of(spec.get("argv").get(0).asText())).isAbsolute().isExecutable();
        assertThat(command(Path.of("c"))).contains(folder.resolve("spanwright.jar").toString())
            .noneMatch(word -> word.contains(JAR.getParent().toString()));
        assertThat(folder.resolve("spanwright.jar")).hasSameBinaryContentAs(JAR);
    }

    @Test
    void theClassArchiveIsInUseWhenTheKernelRuns() throws Exception {
        final Path connectionFile = prefix.resolve("connection.json");
        final Path classes = prefix.resolve("classes.log");
        ConnectionFile.local(UUID.randomUUID().toString()).write(connectionFile);
        // The flags that silence Java come first in the list; the log that is asked for here must come after
        // them.
        final List<String> command = command(connectionFile);
        command.add(command.indexOf("-jar"), "-Xlog:class+load:file=" + classes);
        final Process kernel = new ProcessBuilder(command).redirectErrorStream(true)
            .redirectOutput(prefix.resolve("kernel.log").toFile()).start();
        try {
            new TrainingSession(ClassArchive.listening(kernel, connectionFile)).run(kernel);
            assertThat(kernel.waitFor(60, TimeUnit.SECONDS)).isTrue();
        } finally {
            kernel.destroyForcibly();
        }
        final List<String> loaded = Files.readAllLines(classes);
        assertThat(share(loaded, " com.sun.tools.javac.")).as("the compiler's classes").isGreaterThan(0.9);
        assertThat(share(loaded, " spanwright.kernel.")).as("the kernel's classes").isGreaterThan(0.8);
    }

    /** How much of the classes with such a name came from the archive; those that lambdas make never do. */
    private static double share(List<String> loaded, String name) {
        final List<String> named = loaded.stream()
            .filter(line -> line.contains(name) && !line.contains("$$Lambda")).toList();
        assertThat(named).hasSizeGreaterThan(20);
        return named.stream().filter(line -> line.contains("source: shared objects file")).count()
            / (double) named.size();
    }

    @Test
    void installingAgainWhileAKernelRunsLeavesItAlive() throws Exception {
        final Path connectionFile = prefix.resolve("alive.json");
        ConnectionFile.local(UUID.randomUUID().toString()).write(connectionFile);
        final Process kernel = new ProcessBuilder(command(connectionFile)).redirectErrorStream(true)
            .redirectOutput(prefix.resolve("alive.log").toFile()).start();
        try {
            final ConnectionFile connection = ClassArchive.listening(kernel, connectionFile);
            KernelSpec.copyJar(JAR, folder);
            new TrainingSession(connection).run(kernel);
            assertThat(kernel.waitFor(60, TimeUnit.SECONDS)).isTrue();
            assertThat(kernel.exitValue()).isZero();
        } finally {
            kernel.destroyForcibly();
        }
    }
}
