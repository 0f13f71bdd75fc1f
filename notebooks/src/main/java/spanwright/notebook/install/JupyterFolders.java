package spanwright.notebook.install;

import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;

/**
 * Where Jupyter keeps the files of a user.
 *
 * <p>Source: "Common Directories and File Locations" in the Jupyter documentation, the data directory: the
 * environment variable JUPYTER_DATA_DIR if set; else {@code ~/Library/Jupyter} on macOS, {@code
 * %APPDATA%\jupyter} on Windows, and {@code $XDG_DATA_HOME/jupyter} elsewhere, where XDG_DATA_HOME is {@code
 * ~/.local/share} if not set.
 *
 * @param environment variables of the process
 * @param system      name of the operating system
 * @param home        folder of the user, where the variable HOME does not say another (not on Windows)
 */
public record JupyterFolders(Map<String, String> environment, String system, Path home) {
    /** Copies the map. */
    public JupyterFolders {
        environment = Map.copyOf(environment);
        system = system.toLowerCase(Locale.ROOT);
        Objects.requireNonNull(home, "home");
    }

    /** Those of the user who runs this process. */
    public static JupyterFolders ofThisUser() {
        return new JupyterFolders(System.getenv(), System.getProperty("os.name"),
            Path.of(System.getProperty("user.home")));
    }

    /** The folder in which kernels, among others, are looked for. */
    public Path data() {
        final String own = set("JUPYTER_DATA_DIR");
        if (!own.isEmpty()) {
            return Path.of(own).toAbsolutePath();
        }
        if (system.startsWith("windows")) {
            final String roaming = set("APPDATA");
            return (roaming.isEmpty() ? home.resolve("AppData/Roaming")
                : Path.of(roaming)).resolve("jupyter");
        }
        // Jupyter takes "~" from HOME, Java from the list of users; Jupyter must find the kernel.
        final String ownHome = set("HOME");
        final Path tilde = ownHome.isEmpty() ? home : Path.of(ownHome);
        if (system.startsWith("mac")) {
            return tilde.resolve("Library/Jupyter");
        }
        final String xdg = set("XDG_DATA_HOME");
        return (xdg.isEmpty() ? tilde.resolve(".local/share") : Path.of(xdg)).resolve("jupyter");
    }

    private String set(String variable) {
        return environment.getOrDefault(variable, "");
    }
}
