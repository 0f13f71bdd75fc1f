package spanwright.notebook.install;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.TimeUnit;
import spanwright.kernel.wire.ConnectionFile;

/**
 * The classes that a kernel loads, kept ready in a file: an archive of class data on JDK 17 to 24 (JEP 350),
 * an ahead of time cache from JDK 25 on (JEP 483, JEP 514). It fits one build of Java and one jar; where it
 * does not fit, Java starts without it.
 *
 * @param file   the archive
 * @param cached whether this Java takes a cache rather than an archive
 */
public record ClassArchive(Path file, boolean cached) {
    private static final int FIRST_WITH_CACHE = 25;
    private static final int START_SECONDS = 60;
    private static final long TRAINING_SECONDS = 180;

    /** The archive that belongs to a jar, for the Java that runs now. */
    public static ClassArchive beside(Path jar) {
        final boolean cached = Runtime.version().feature() >= FIRST_WITH_CACHE;
        return new ClassArchive(jar.resolveSibling(cached ? "spanwright.aot" : "spanwright.jsa"), cached);
    }

    /** The flags that have Java use it. */
    public List<String> flags() {
        return List.of((cached ? "-XX:AOTCache=" : "-XX:SharedArchiveFile=") + file);
    }

    /**
     * Starts a kernel from the jar, drives it through a session and keeps what it loaded.
     *
     * @param java  words that start Java
     * @param flags that the kernel will run with
     * @param jar   at the place from which the kernel will run
     * @return why there is no archive; empty if there is one
     */
    public Optional<String> make(List<String> java, List<String> flags, Path jar)
            throws IOException, InterruptedException {
        final Path folder = Files.createTempDirectory("spanwright-training");
        final Path part = file.resolveSibling(file.getFileName() + ".part");
        final Path log = folder.resolve("kernel.log");
        final Path connectionFile = folder.resolve("connection.json");
        try {
            ConnectionFile.local(UUID.randomUUID().toString()).write(connectionFile);
            final List<String> command = new ArrayList<>(java);
            command.addAll(flags);
            command.add((cached ? "-XX:AOTCacheOutput=" : "-XX:ArchiveClassesAtExit=") + part);
            command.addAll(List.of("-jar", jar.toString(), "kernel", connectionFile.toString()));
            final Process kernel = new ProcessBuilder(command).directory(folder.toFile())
                .redirectErrorStream(true).redirectOutput(log.toFile()).start();
            try {
                new TrainingSession(listening(kernel, connectionFile)).run(kernel);
                if (!kernel.waitFor(TRAINING_SECONDS, TimeUnit.SECONDS) || !Files.exists(part)) {
                    return Optional.of("the kernel did not write it: " + Files.readString(log).strip());
                }
            } catch (IllegalStateException e) {
                return Optional.of(e.getMessage() + ": " + Files.readString(log).strip());
            } finally {
                kernel.destroyForcibly();
            }
            Files.move(part, file, StandardCopyOption.ATOMIC_MOVE);
            return Optional.empty();
        } finally {
            Files.deleteIfExists(part);
            Files.deleteIfExists(log);
            Files.deleteIfExists(connectionFile);
            Files.deleteIfExists(folder);
        }
    }

    /** Waits until the kernel has written the ports that it picked. */
    static ConnectionFile listening(Process kernel, Path connectionFile)
            throws IOException, InterruptedException {
        for (int i = 0; i < START_SECONDS * 20 && kernel.isAlive(); i++) {
            try {
                final ConnectionFile connection = ConnectionFile.read(connectionFile);
                if (connection.ports().shell() != 0) {
                    return connection;
                }
            } catch (NoSuchFileException e) {
                // While the kernel replaces the file, there may be none for a moment: look again.
            }
            Thread.sleep(50);
        }
        throw new IllegalStateException("the kernel did not start");
    }
}
