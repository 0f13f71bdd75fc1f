package spanwright.kernel.display;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** What a cell can ask of the session it runs in. */
public final class Session {
    private Session() { }

    /**
     * Adds jar files, or folders of classes, to the class path of the session. They can be imported from the
     * next statement on, also in the same cell.
     *
     * @param paths existing files or folders
     * @throws IllegalArgumentException if one does not exist
     * @throws IllegalStateException    if called outside a cell
     */
    public static void addJars(Path... paths) {
        for (Path p : paths) {
            if (!Files.exists(p)) {
                throw new IllegalArgumentException("no such jar or folder: " + p.toAbsolutePath());
            }
        }
        CellScope.required().session().addToClassPath(List.of(paths));
    }
}
