package spanwright.kernel.maven;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The rules are those of Maven's "Introduction to the Dependency Mechanism". */
class MavenJarsTest {
    @TempDir
    Path repository;

    private List<String> names(String... coordinates) {
        return new MavenJars(repository).resolve(List.of(coordinates)).stream()
            .map(file -> file.getFileName().toString()).toList();
    }

    private LaidDown laidDown() {
        return new LaidDown(repository);
    }

    @Test
    void whatAJarNeedsAtRunTimeComesWithItAndNothingElse() throws Exception {
        laidDown().jar("driver", "1.0", "bus:2.1", LaidDown.dependency("logs:1", "<scope>runtime</scope>"),
            LaidDown.dependency("mock:1", "<scope>test</scope>"),
            LaidDown.dependency("servlet:1", "<scope>provided</scope>"),
            LaidDown.dependency("extra:1", "<optional>true</optional>"))
            .jar("bus", "2.1", "port:3").jar("port", "3").jar("logs", "1");
        final List<Path> before = everything();
        assertThat(names("org.example.fen:driver:1.0")).containsExactlyInAnyOrder("driver-1.0.jar",
            "bus-2.1.jar", "port-3.jar", "logs-1.jar");
        assertThat(everything()).isEqualTo(before);
    }

    private List<Path> everything() throws IOException {
        try (Stream<Path> files = Files.walk(repository)) {
            return files.sorted().toList();
        }
    }

    @Test
    void theNearestVersionWinsThenTheOneNamedFirst() throws Exception {
        laidDown().jar("driver", "1", "bus:1", "port:1").jar("bus", "1", "port:2").jar("port", "1")
            .jar("port", "2").jar("first", "1", "port:2").jar("second", "1", "port:1");
        assertThat(names("org.example.fen:driver:1")).containsExactlyInAnyOrder("driver-1.jar", "bus-1.jar",
            "port-1.jar");
        assertThat(names("org.example.fen:first:1", "org.example.fen:second:1"))
            .contains("port-2.jar").doesNotContain("port-1.jar");
        assertThat(names("org.example.fen:second:1", "org.example.fen:first:1"))
            .contains("port-1.jar").doesNotContain("port-2.jar");
    }

    @Test
    void extensionAndClassifierChooseTheFile() throws Exception {
        laidDown().jar("driver", "1", "bus:1").jar("bus", "1").file("driver", "1", "driver-1-linux.jar")
            .pom("all", "1", "bus:1");
        assertThat(names("org.example.fen:driver:jar:linux:1"))
            .containsExactlyInAnyOrder("driver-1-linux.jar",
            "bus-1.jar");
        assertThat(names("org.example.fen:all:pom:1")).containsExactly("bus-1.jar");
        assertThat(names()).isEmpty();
    }

    @Test
    void aFileThatIsNotThereIsNamedWithTheCommandThatFetchesIt() throws Exception {
        laidDown().jar("driver", "1", "bus:1").pom("bus", "1");
        final Path bus = new LaidDown(repository).folder("bus", "1").resolve("bus-1");
        assertThatThrownBy(() -> names("org.example.fen:driver:1"))
            .isInstanceOf(IllegalArgumentException.class)
            .hasMessage("not in the Maven repository: " + bus
                + ".jar; nothing is fetched from here, this does"
                + " it:\n  mvn dependency:get -Dartifact=org.example.fen:driver:1");
        Files.delete(Path.of(bus + ".pom"));
        assertThatThrownBy(() -> names("org.example.fen:driver:1")).hasMessageContaining(bus + ".pom;");
        assertThatThrownBy(() -> names("org.example.fen:driver:jar:arm:1"))
            .hasMessageContaining("-Dartifact=org.example.fen:driver:1:jar:arm");
        assertThatThrownBy(() -> names("org.example.fen:none:1")).hasMessageContaining("none-1.pom");
    }

    @Test
    void aParentThatIsNotThereIsToldAsItsDependenciesWouldBeLost() throws Exception {
        laidDown().jar("driver", "1");
        final Path pom = new LaidDown(repository).folder("driver", "1").resolve("driver-1.pom");
        Files.writeString(pom, Files.readString(pom).replace("<groupId>", "<parent><groupId>org.example.fen"
            + "</groupId><artifactId>family</artifactId><version>9</version></parent><groupId>"));
        assertThatThrownBy(() -> names("org.example.fen:driver:1"))
            .isInstanceOf(IllegalArgumentException.class)
            .hasMessageContaining("family").hasMessageContaining("mvn dependency:get");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "driver", "org.example:driver", "a:b:", "a:b:c:d:e:f", "a b:c:1", "a:b:[1,2)",
        "../x/y:b"})
    void coordinatesThatCannotBeReadAreQuoted(String coordinates) {
        assertThatThrownBy(() -> names(coordinates)).isInstanceOf(IllegalArgumentException.class)
            .hasMessageContaining("\"" + coordinates + "\": write group:artifact:version");
    }

    @Test
    void theFolderIsTheOneInTheUsersSettings() throws Exception {
        final Path settings = repository.resolve("settings.xml");
        assertThat(RepositoryFolder.inSettings(settings)).isEmpty();
        Files.writeString(settings, "<settings xmlns=\"http://maven.apache.org/SETTINGS/1.2.0\"><profiles>"
            + "<localRepository>/not/this</localRepository></profiles>"
            + "<localRepository> ${user.home}/jars </localRepository></settings>");
        assertThat(RepositoryFolder.inSettings(settings)).isEqualTo(Optional.of(
            Path.of(System.getProperty("user.home"), "jars")));
        Files.writeString(settings, "<settings><localRepository>");
        assertThatThrownBy(() -> RepositoryFolder.inSettings(settings))
            .isInstanceOf(IllegalArgumentException.class).hasMessageContaining(settings.toString());
    }
}
