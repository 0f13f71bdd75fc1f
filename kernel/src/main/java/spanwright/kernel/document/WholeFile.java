package spanwright.kernel.document;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;

/** Writes a file by way of a neighbour that is then renamed. */
final class WholeFile {
    private WholeFile() { }

    static void write(Path file, String text) throws IOException {
        final Path folder = file.toAbsolutePath().getParent();
        Files.createDirectories(folder);
        final Path part = folder.resolve("." + file.getFileName() + "." + ProcessHandle.current().pid()
            + ".part");
        try {
            Files.writeString(part, text);
            Files.move(part, file, StandardCopyOption.ATOMIC_MOVE);
        } finally {
            Files.deleteIfExists(part);
        }
    }
}
