package spanwright.kernel.display;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import spanwright.kernel.maven.MavenJars;

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

    /**
     * Adds jars of the user's Maven repository, with all they need at run time, to the class path of the
     * session. Nothing is fetched. The repository is the folder in the system property
     * {@code maven.repo.local}, else {@code localRepository} in {@code ~/.m2/settings.xml}, else
     * {@code ~/.m2/repository}. Name jars that shall agree on the versions of what they need in one call.
     *
     * @param coordinates each {@code group:artifact:version}, or
     *                    {@code group:artifact:extension:classifier:version}
     * @return the files added
     * @throws IllegalArgumentException if coordinates cannot be understood or a file is not in the repository
     * @throws IllegalStateException    if called outside a cell
     */
    public static List<Path> addMaven(String... coordinates) {
        final CellScope.SessionAccess session = CellScope.required().session();
        final List<Path> jars = MavenJars.ofUser().resolve(List.of(coordinates));
        session.addToClassPath(jars);
        return jars;
    }
}
