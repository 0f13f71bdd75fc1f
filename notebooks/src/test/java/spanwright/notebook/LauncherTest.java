package spanwright.notebook;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The shell launcher with a Java and a Maven that only say how they were called. */
class LauncherTest {
    @TempDir
    Path folder;
    private Path clone;
    private Path tools;

    private record Call(int status, String said) { }

    @BeforeEach
    void copy() throws Exception {
        clone = Files.createDirectories(folder.resolve("a clone"));
        tools = Files.createDirectories(folder.resolve("tools"));
        Files.copy(Path.of("../spanwright"), clone.resolve("spanwright"));
        for (String module : new String[] {"calc-core", "kernel", "notebooks"}) {
            Files.createDirectories(clone.resolve(module + "/src/main"));
            Files.writeString(clone.resolve(module + "/pom.xml"), "");
        }
        Files.writeString(clone.resolve("pom.xml"), "");
        java("17.0.1");
        tool("mvn", "echo \"mvn $*\"; mkdir -p notebooks/target; touch notebooks/target/spanwright.jar");
    }

    private void java(String version) throws Exception {
        tool("java", "if [ \"$1\" = -version ]; then echo 'openjdk version \"" + version
            + "\"' >&2; exit; fi\n"
            + "for a; do echo \"[$a]\"; done");
    }

    private void tool(String name, String script) throws Exception {
        final Path file = Files.writeString(tools.resolve(name), "#!/bin/sh\n" + script + "\n");
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rwxr-xr-x"));
    }

    private void jar(Instant changed) throws Exception {
        final Path jar = clone.resolve("notebooks/target/spanwright.jar");
        Files.createDirectories(jar.getParent());
        Files.writeString(jar, "");
        Files.setLastModifiedTime(jar, FileTime.from(changed));
    }

    private Call call(Path script, String... words) throws Exception {
        final var command = new ArrayList<>(List.of("/bin/sh", script.toString()));
        command.addAll(List.of(words));
        final ProcessBuilder builder = new ProcessBuilder(command).directory(folder.toFile())
            .redirectErrorStream(true).redirectOutput(folder.resolve("said").toFile());
        builder.environment().put("PATH", tools + ":" + essentials());
        builder.environment().remove("JAVA_HOME");
        builder.environment().remove("MAVEN_HOME");
        final Process process = builder.start();
        assertThat(process.waitFor(30, TimeUnit.SECONDS)).isTrue();
        return new Call(process.exitValue(), Files.readString(folder.resolve("said")));
    }

    /** The ordinary tools without whatever Java and Maven this machine has. */
    private Path essentials() throws Exception {
        final Path bin = Files.createDirectories(folder.resolve("bin"));
        for (String name : new String[] {"sh", "sed", "head", "find", "dirname", "readlink", "mkdir",
            "touch", "printf"}) {
            for (String from : new String[] {"/usr/bin/", "/bin/"}) {
                if (Files.exists(Path.of(from + name)) && !Files.exists(bin.resolve(name))) {
                    Files.createSymbolicLink(bin.resolve(name), Path.of(from + name));
                }
            }
        }
        return bin;
    }

    @Test
    void buildsWhenThereIsNoJarAndPassesTheWordsOn() throws Exception {
        final Call call = call(clone.resolve("spanwright"), "run", "a b.ipynb");
        assertThat(call.said()).contains("there is no jar yet; building it")
            .contains("mvn -q -B -DskipTests package")
            .contains("[" + clone.toRealPath() + "/notebooks/target/spanwright.jar]\n[run]\n[a b.ipynb]\n")
            .contains("[-Dspanwright.notebooks=" + clone.toRealPath() + "/notebooks]");
        assertThat(call.status()).isZero();
    }

    @Test
    void doesNotBuildWhenTheJarIsNewer() throws Exception {
        jar(Instant.now().plusSeconds(60));
        assertThat(call(clone.resolve("spanwright"),
            "--version").said()).doesNotContain("mvn").contains("[--version]");
    }

    @Test
    void buildsAgainWhenASourceIsNewerAndSaysWhich() throws Exception {
        jar(Instant.now().minusSeconds(3600));
        Files.writeString(clone.resolve("kernel/src/main/New.java"), "");
        for (String old : new String[] {"pom.xml", "calc-core/pom.xml", "kernel/pom.xml",
            "notebooks/pom.xml"}) {
            Files.setLastModifiedTime(clone.resolve(old), FileTime.from(Instant.now().minusSeconds(7200)));
        }
        assertThat(call(clone.resolve("spanwright")).said()).contains("New.java is newer than the jar")
            .contains("mvn -q");
    }

    @Test
    void followsASymbolicLinkToItsFolder() throws Exception {
        jar(Instant.now().plusSeconds(60));
        final Path link = Files.createSymbolicLink(tools.resolve("spanwright"), clone.resolve("spanwright"));
        assertThat(call(link).said()).contains("[" + clone.toRealPath()
            + "/notebooks/target/spanwright.jar]");
    }

    @Test
    void saysWhatIsMissingOrTooOld() throws Exception {
        java("11.0.2");
        assertThat(call(clone.resolve("spanwright"))).isEqualTo(new Call(2,
            "spanwright: " + tools + "/java is version 11.0.2; 17 or newer is needed\n"));
        java("1.8.0_392");
        assertThat(call(clone.resolve("spanwright")).said()).contains("is version 1.8.0_392; 17 or newer");
        java("25");
        Files.delete(tools.resolve("mvn"));
        assertThat(call(clone.resolve("spanwright")).said())
            .isEqualTo("spanwright: there is no jar yet, and no mvn found to build it."
                + " Install Maven 3.6.3 or newer\n");
        Files.delete(tools.resolve("java"));
        assertThat(call(clone.resolve("spanwright"))).isEqualTo(new Call(2,
            "spanwright: no java found. Install a JDK, version 17 or newer, or set JAVA_HOME\n"));
    }

    @Test
    void aBuildThatFailsEndsIt() throws Exception {
        tool("mvn", "exit 1");
        final Call call = call(clone.resolve("spanwright"));
        assertThat(call.status()).isEqualTo(2);
        assertThat(call.said()).endsWith("spanwright: the build failed\n");
    }
}
