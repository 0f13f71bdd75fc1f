package spanwright.kernel.jshell;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.jar.JarEntry;
import java.util.jar.JarOutputStream;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import spanwright.kernel.maven.LaidDown;

class DisplayInCellsTest {
    private static Cells cells;

    @BeforeAll
    static void open() {
        cells = new Cells("import java.util.*;", "import java.nio.file.*;",
            "import spanwright.kernel.display.*;",
            "import static spanwright.kernel.display.Display.*;");
    }

    @AfterAll
    static void close() {
        cells.close();
    }

    @Test
    void orderOfTextDisplaysAndClearsIsKept() {
        assertThat(cells.shown("System.out.print(\"a\"); System.out.println(1); System.err.println(\"e\");\n"
            + "display(2, \"two\"); System.out.println(\"b\"); clearOutput(true); page(\"long\");\n"
            + "updateDisplay(3, \"two\"); System.out.printf(\"%d%n\", 4);")).isEmpty();
        assertThat(cells.output.events).containsExactly("stdout a1\n", "stderr e\n", "display two 2",
            "stdout b\n",
            "clear true", "page long", "update two 3", "stdout 4" + System.lineSeparator());
    }

    @Test
    void handleUpdatesInPlaceAndIsNotShownItself() {
        assertThat(cells.shown("var h = display(\"x\"); h.update(\"y\"); h")).isEmpty();
        assertThat(cells.output.events).hasSize(2);
        final String id = cells.output.events.get(0).split(" ")[1];
        assertThat(cells.output.events).containsExactly("display " + id + " x", "update " + id + " y");
        assertThat(cells.shown("display(1)")).isEmpty();
    }

    @Test
    void manyLinesArriveAsFewMessages() {
        cells.run("for (int i = 0; i < 100_000; i++) System.out.println(i);");
        assertThat(cells.output.out.toString().lines().count()).isEqualTo(100_000);
        assertThat(cells.output.events.size()).isLessThan(100);
    }

    @Test
    void endlessOutputIsCutWithANote() {
        cells.run("String block = \"x\".repeat(1_000_000); for (int i = 0; i < 60; i++) "
            + "System.out.print(block);");
        assertThat(cells.output.out.length()).isBetween(50_000_000, 50_000_200);
        assertThat(cells.output.out.toString()).endsWith(
            "[output of this cell is cut here, after 50000000 characters]\n");
    }

    @Test
    void bytesAndCharactersOfAllKindsArrive() {
        cells.run("byte[] b = \"\u00b0C \u03a9 \ud83d\udd27\".getBytes(\"UTF-8\"); for (byte x : b) "
            + "System.out.write(x);\n"
            + "System.out.append('c').append(\"d\").print(new char[] {'e'}); System.out.flush();");
        assertThat(cells.output.out).hasToString("\u00b0C \u03a9 \ud83d\udd27cde");
    }

    @Test
    void lateThreadsWriteToTheirOwnCell() throws InterruptedException {
        cells.run("new Thread(() -> { try { Thread.sleep(200); } catch (InterruptedException e) { }"
            + " System.out.println(\"late\"); }).start();");
        final RecordedOutput first = cells.output;
        cells.run("Thread.sleep(500); System.out.println(\"second\");");
        assertThat(first.out).hasToString("late\n");
        assertThat(cells.output.out).hasToString("second\n");
    }

    @Test
    void parallelStreamsWriteToTheRunningCell() {
        cells.run("java.util.stream.IntStream.range(0, 50).parallel().forEach(i -> System.out.println(i));");
        cells.run("java.util.stream.IntStream.range(0, 50).parallel().forEach(i -> System.out.println(i));");
        assertThat(cells.output.out.toString().lines().count()).isEqualTo(50);
    }

    @Test
    void inputComesFromTheFrontEnd() {
        final RecordedOutput output = new RecordedOutput();
        output.answers.addAll(List.of("Ada", "secret", "12 34", "rest"));
        cells.run("System.out.print(\"hi\"); String who = input(\"name? \"); String pw = "
            + "password(\"key? \");\n"
            + "Scanner sc = new Scanner(System.in); int p = sc.nextInt(); int q = sc.nextInt(); "
                + "sc.nextLine();"
            + " String line = sc.nextLine();", output);
        assertThat(output.events).startsWith("stdout hi", "ask name?  false", "ask key?  true", "ask  false");
        assertThat(cells.value("who + pw + (p + q) + line")).isEqualTo("Adasecret46rest");
        assertThat(cells.error("input(\"name? \")").message()).contains("name?").contains(
            "nobody can be asked");
    }

    @Test
    void progressMovesInPlaceAndEndsFull() {
        cells.run("try (Progress p = progress(\"fitting\", 3)) { for (int i = 0; i < 3; i++) { "
            + "Thread.sleep(60); p.step(); } }");
        assertThat(cells.output.events.get(0)).startsWith("display ").contains("fitting: 0 of 3");
        assertThat(cells.output.events.get(cells.output.events.size() - 1)).startsWith("update ")
            .contains("[########################] fitting: 3 of 3");
        assertThat(cells.error("progress(\"none\", 0)").message()).contains("0 steps; at least 1");
    }

    @Test
    void valuesThatCannotBeShownAreToldAndDoNotFailTheCell() {
        assertThat(cells.value(
            "new Object() { public String toString() { throw new IllegalStateException(\"no\"); } }"))
            .contains("toString failed").contains("no");
        assertThat(cells.value("class Own { }\nnew Own()")).startsWith("Own@");
        assertThat(cells.value("html(\"<b>x</b>\")")).isEqualTo("<b>x</b>");
        assertThat(cells.value("List<Object> self = new ArrayList<>(); self.add(self); self")).isEqualTo(
            "[(this again)]");
    }

    @Test
    void jarsAreAddedByAPlainCallAndCanBeUsedInTheSameCell(@TempDir Path dir) throws Exception {
        final Path jar = jar(dir);
        assertThat(cells.value("Session.addJars(Path.of(\"" + jar.toString().replace("\\", "\\\\") + "\"));\n"
            + "import tools.Probe;\nnew Probe().name()")).isEqualTo("probe");
        assertThat(cells.error("Session.addJars(Path.of(\"missing.jar\"));").message()).contains(
            "no such jar")
            .contains("missing.jar");
    }

    @Test
    void jarsOfTheMavenRepositoryComeWithWhatTheyNeed(@TempDir Path dir) throws Exception {
        new LaidDown(dir).jar("driver", "1.0", "bus:2.1").jar("bus", "2.1");
        System.setProperty("maven.repo.local", dir.toString());
        try {
            assertThat(cells.value("Session.addMaven(\"org.example.fen:driver:1.0\");\n"
                + "import fen.*;\nDriver.name() + \" \" + Bus.name()"))
                    .isEqualTo("driver-1.0.jar bus-2.1.jar");
            assertThat(cells.error("Session.addMaven(\"org.example.fen:driver:1.1\");").message()).contains(
                "driver-1.1.pom", "-Dartifact=org.example.fen:driver:1.1 -Dmaven.repo.local=" + dir);
        } finally {
            System.clearProperty("maven.repo.local");
        }
    }

    private static Path jar(Path dir) throws Exception {
        final Path source = Files.createDirectories(dir.resolve("tools")).resolve("Probe.java");
        Files.writeString(source,
            "package tools; public class Probe { public String name() { return \"probe\"; } }");
        assertThat(ToolProvider.getSystemJavaCompiler().run(null, null, null, source.toString())).isZero();
        final Path jar = dir.resolve("probe.jar");
        try (JarOutputStream out = new JarOutputStream(Files.newOutputStream(jar))) {
            out.putNextEntry(new JarEntry("tools/Probe.class"));
            out.write(Files.readAllBytes(dir.resolve("tools/Probe.class")));
        }
        return jar;
    }
}
