package spanwright.chart;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Keeps pictures for looking at, where {@code -Dspanwright.pictures} names a folder. */
final class Sight {
    private Sight() { }

    static Picture of(String name, Picture picture) {
        final String folder = System.getProperty("spanwright.pictures");
        if (folder != null) {
            try {
                Files.write(Path.of(folder, name + ".png"), picture.png());
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
        return picture;
    }
}
