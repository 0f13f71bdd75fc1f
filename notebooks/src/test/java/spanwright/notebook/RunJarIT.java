package spanwright.notebook;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.jar.JarEntry;
import java.util.jar.JarOutputStream;
import java.util.spi.ToolProvider;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The jar's {@code run}, as a person calls it. */
class RunJarIT {
    private static final Path JAR = Path.of(System.getProperty("spanwright.jar"));
    private static final Path JAVA = Path.of(System.getProperty("java.home"), "bin", "java");

    @TempDir
    Path folder;

    /** Status, standard output and standard error of a call. */
    private record Call(int status, String out, String err) { }

    private Call call(String... words) throws Exception {
        return call(List.of(), words);
    }

    private Call call(List<String> options, String... words) throws Exception {
        final List<String> command = new ArrayList<>(List.of(JAVA.toString()));
        command.addAll(options);
        command.addAll(List.of("-jar", JAR.toString()));
        command.addAll(List.of(words));
        final Path out = folder.resolve("out.log");
        final Path err = folder.resolve("err.log");
        final Process process = new ProcessBuilder(command).directory(folder.toFile())
            .redirectOutput(out.toFile()).redirectError(err.toFile()).start();
        assertThat(process.waitFor(120, TimeUnit.SECONDS)).isTrue();
        return new Call(process.exitValue(), Files.readString(out), Files.readString(err));
    }

    private void notebook(String file, String... cells) throws Exception {
        final List<Map<String, Object>> all = new ArrayList<>();
        for (String source : cells) {
            final Map<String, Object> metadata =
                source.startsWith("double target") ? Map.of("tags", List.of("parameters")) : Map.of();
            all.add(new HashMap<>(Map.of("cell_type", "code", "metadata", metadata, "source", source,
                "outputs", List.of(), "id", "c" + all.size())));
            all.get(all.size() - 1).put("execution_count", null);
        }
        final Path path = folder.resolve(file);
        Files.createDirectories(path.getParent());
        new ObjectMapper().writeValue(path.toFile(),
            Map.of("cells", all, "metadata", Map.of(), "nbformat", 4, "nbformat_minor", 5));
    }

    @Test
    void cellsFindFilesBesideTheirNotebookAndHeadlinesArePrinted() throws Exception {
        notebook("a/first.ipynb", "double target = 0.5;",
            "java.nio.file.Files.readString(java.nio.file.Path.of(\"data.txt\"))",
            "new spanwright.kernel.document.Headline(\"Meets\", \"target \" + target)"
                + ".on(spanwright.kernel.display.MimeBundle.text(\"t\"))");
        Files.writeString(folder.resolve("a/data.txt"), "of folder a");
        notebook("b/second.ipynb", "double target = 1;",
            "java.nio.file.Files.readString(java.nio.file.Path.of(\"data.txt\"))");
        Files.writeString(folder.resolve("b/data.txt"), "of folder b");
        final Call call = call("run", "a", "b/second.ipynb", "--set", "target=2", "--out", "done");
        assertThat(call.status()).as(call.err()).isZero();
        assertThat(call.out()).contains("first.ipynb: Meets: target 2.0");
        assertThat(folder.resolve("done/first.ipynb")).content().contains("of folder a");
        assertThat(folder.resolve("done/second.html")).content().contains("of folder b");
    }

    @Test
    void markupInARecordIsTextInTheReport() throws Exception {
        final Path faults = Path.of("").toAbsolutePath().getParent().resolve("test-data/faults");
        final String sound = Files.readString(faults.resolve("as-left-not-adjusted.csv"));
        final String script = "<script>alert(1)</script>";
        final String image = "<img src=x onerror=alert(1)>";
        Files.writeString(folder.resolve("r.csv"), sound.replace("LT-201", script).replace("KF-0417", image));
        Files.writeString(folder.resolve("s.csv"), sound.replace("8.006", script + image));
        notebook("x.ipynb", "var read = Readings.read(\"r.csv\");", "read", "Readings.check(\"s.csv\")",
            "System.out.println(\"" + script + "\");");
        final Call call = call("run", "x.ipynb");
        assertThat(call.status()).as(call.err()).isZero();
        assertThat(folder.resolve("reports/x.html")).content().contains("&lt;script&gt;alert(1)")
            .contains("&lt;img src=x onerror=alert(1)&gt;")
            .doesNotContain("<script>alert", "<img src=x");
    }

    /** Plain cells go past JShell; without the manifest entry of the jar they silently would not. */
    @Test
    void plainCellsAreCompiledInOnePass() throws Exception {
        // JShell numbers its classes from 1; those of the short way begin with a zero.
        notebook("x.ipynb", "new Throwable().getStackTrace()[0].getClassName().indexOf(\"$JShell$0\")");
        assertThat(call("run", "x.ipynb").status()).isZero();
        assertThat(folder.resolve("reports/x.ipynb")).content().contains("\"text/plain\" : \"5\"");
    }

    @Test
    void aFailureIsNamedWithNotebookCellAndErrorAndTheStatusIsOne() throws Exception {
        notebook("x.ipynb", "int a = 1;", "a +\nmissing", "a");
        final Call call = call("run", "x.ipynb");
        assertThat(call.status()).isEqualTo(1);
        assertThat(call.err()).contains("x.ipynb: cell 2 [2], line 2: CompileError:").contains("missing");
        assertThat(folder.resolve("reports/x.html")).content().contains("CompileError");
    }

    @Test
    void aWrongCallIsToldInOneLine() throws Exception {
        notebook("x.ipynb", "1");
        for (String[] wrong : new String[][] {{"run", "none.ipynb"}, {"run", "x.ipynb", "--set", "nothing"},
            {"run", "x.ipynb", "--set", "a=1"}, {"run", "x.ipynb", "--time-limit", "-1"},
            {"run", "x.ipynb", "--out", "."}, {"run"}}) {
            final Call call = call(wrong);
            assertThat(call.status()).as(String.join(" ", wrong)).isEqualTo(1);
            assertThat(call.err().lines().filter(l ->
                l.startsWith("spanwright: "))).as(call.err()).hasSize(1);
            assertThat(call.err()).doesNotContain("\tat ");
        }
        assertThat(call("run", "--no-such-option").status()).isEqualTo(2);
    }

    @Test
    void jarsComeFromTheMavenRepositoryThatTheCallNames() throws Exception {
        inRepository("bus", "");
        inRepository("driver", "<dependency><groupId>fen</groupId><artifactId>bus</artifactId>"
            + "<version>1</version></dependency>");
        notebook("a/x.ipynb", "Session.addMaven(\"fen:driver:1\").size() + \" files\"",
            "fen.driver.Part.class + \" and \" + fen.bus.Part.class");
        final Call call = call(List.of("-Dmaven.repo.local=repository"), "run", "a/x.ipynb", "--out", "done");
        assertThat(call.status()).as(call.err()).isZero();
        assertThat(folder.resolve("done/x.ipynb")).content().contains("2 files",
            "class fen.driver.Part and class fen.bus.Part");
    }

    private void inRepository(String artifact, String dependencies) throws Exception {
        final Path place = Files.createDirectories(folder.resolve("repository/fen/" + artifact + "/1"));
        Files.writeString(place.resolve(artifact + "-1.pom"), "<project><modelVersion>4.0.0</modelVersion>"
            + "<groupId>fen</groupId><artifactId>" + artifact
                + "</artifactId><version>1</version><dependencies>"
            + dependencies + "</dependencies></project>");
        final Path source = Files.writeString(folder.resolve("Part.java"),
            "package fen." + artifact + "; public class Part { }");
        assertThat(ToolProvider.findFirst("javac").orElseThrow().run(System.out, System.err, "-d",
            folder.toString(),
            source.toString())).isZero();
        final String file = "fen/" + artifact + "/Part.class";
        try (JarOutputStream out = new JarOutputStream(Files.newOutputStream(
            place.resolve(artifact + "-1.jar")))) {
            out.putNextEntry(new JarEntry(file));
            out.write(Files.readAllBytes(folder.resolve(file)));
        }
    }

    @Test
    void anEndlessCellEndsAtItsLimit() throws Exception {
        notebook("x.ipynb", "int n = 0;", "while (true) { n++; }");
        final Call call = call("run", "x.ipynb", "--time-limit", "1");
        assertThat(call.status()).isEqualTo(1);
        assertThat(call.err()).contains(
            "x.ipynb: cell 2 [2]: TimeLimit: the cell ran longer than the limit of 1.0 s");
    }

    @Test
    void everyWorkedNotebookRunsAndItsChecksAgree() throws Exception {
        final Path notebooks = Path.of("").toAbsolutePath();
        try (Stream<Path> files = Files.list(notebooks)) {
            final List<String> words = new ArrayList<>(List.of("run", "--out", folder.resolve("out")
                .toString()));
            files.filter(f -> f.toString().endsWith(".ipynb")).sorted().forEach(f -> words.add(f.toString()));
            assertThat(words).hasSizeGreaterThanOrEqualTo(5);
            final Call call = call(words.toArray(String[]::new));
            assertThat(call.status()).as(call.err()).isZero();
            // Each comparison with published or hand-worked figures says how many agree.
            assertThat(call.out().lines().filter(l -> l.contains("figures agree"))).isNotEmpty()
                .allSatisfy(l -> assertThat(l)
                    .matches(".*: (\\d+) of \\1 figures agree with their sources\\."));
        }
    }

    @Test
    void checkSaysWhatTheReaderMakesOfEachSpoiledRecord() throws Exception {
        final Path faults = Path.of("").toAbsolutePath().getParent().resolve("test-data/faults");
        final Call call = call("check", faults.toString());
        assertThat(call.status()).as("some are refused").isEqualTo(1);
        try (Stream<Path> files = Files.list(faults)) {
            assertThat(files.map(f -> f.getFileName().toString()).filter(f -> f.matches(".*\\.(csv|xlsx)"))
                .toList())
                .allSatisfy(f -> assertThat(call.out()).contains(f));
        }
    }
}
