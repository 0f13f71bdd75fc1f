package spanwright.kernel.maven;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.jar.JarEntry;
import java.util.jar.JarOutputStream;
import javax.tools.ToolProvider;

/** A Maven repository that a test lays down: every jar has one class that says where it is from. */
public final class LaidDown {
    private final Path repository;

    public LaidDown(Path repository) {
        this.repository = repository;
    }

    /** A POM whose dependencies are given as XML, or as {@code artifact:version} of the same group. */
    public LaidDown pom(String artifact, String version, String... dependencies) throws IOException {
        final StringBuilder xml = new StringBuilder();
        for (String dependency : dependencies) {
            xml.append(dependency.startsWith("<") ? dependency : dependency(dependency, ""));
        }
        Files.writeString(Files.createDirectories(folder(artifact, version))
            .resolve(artifact + "-" + version + ".pom"), "<project><modelVersion>4.0.0</modelVersion>"
            + "<groupId>org.example.fen</groupId><artifactId>" + artifact + "</artifactId><version>" + version
            + "</version><dependencies>" + xml + "</dependencies></project>");
        return this;
    }

    static String dependency(String artifactAndVersion, String more) {
        final String[] parts = artifactAndVersion.split(":");
        return "<dependency><groupId>org.example.fen</groupId><artifactId>" + parts[0]
            + "</artifactId><version>"
            + parts[1] + "</version>" + more + "</dependency>";
    }

    /** A POM and a jar as another tool leaves them: fetched from a remote repository we know nothing of. */
    public LaidDown jar(String artifact, String version, String... dependencies) throws IOException {
        pom(artifact, version, dependencies);
        final String name = artifact + "-" + version;
        Files.writeString(folder(artifact, version).resolve("_remote.repositories"),
            name + ".jar>elsewhere=\n" + name + ".pom>elsewhere=\n");
        return file(artifact, version, name + ".jar");
    }

    /** A jar under any name; its class {@code fen.Artifact} has a {@code name()}. */
    public LaidDown file(String artifact, String version, String file) throws IOException {
        final Path work = Files.createTempDirectory("classes");
        final String type = Character.toUpperCase(artifact.charAt(0)) + artifact.substring(1);
        final Path source = work.resolve(type + ".java");
        Files.writeString(source, "package fen; public class " + type
            + " { public static String name() { return \"" + file + "\"; } }");
        assertThat(ToolProvider.getSystemJavaCompiler().run(null, null, null, source.toString())).isZero();
        try (JarOutputStream out = new JarOutputStream(Files.newOutputStream(
            folder(artifact, version).resolve(file)))) {
            out.putNextEntry(new JarEntry("fen/" + type + ".class"));
            out.write(Files.readAllBytes(work.resolve(type + ".class")));
        }
        return this;
    }

    Path folder(String artifact, String version) {
        return repository.resolve("org/example/fen").resolve(artifact).resolve(version);
    }
}
