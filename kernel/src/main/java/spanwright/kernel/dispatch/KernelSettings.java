package spanwright.kernel.dispatch;

import java.io.PrintStream;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;

/**
 * What a kernel needs to know of its surroundings.
 *
 * @param stateFolder where history is kept between sessions
 * @param log         where the server writes what goes wrong
 */
public record KernelSettings(Path stateFolder, PrintStream log) {
    /** System property, and in capitals environment variable, that names another folder for the state. */
    static final String STATE = "spanwright.state";

    /** Checks the components. */
    public KernelSettings {
        Objects.requireNonNull(stateFolder, "stateFolder");
        Objects.requireNonNull(log, "log");
    }

    /**
     * The state folder of this user: the system property {@code spanwright.state}, else the environment
     * variable {@code SPANWRIGHT_STATE}, else where the system keeps such files; the log goes to standard
     * error.
     */
    public static KernelSettings ofUser() {
        final Optional<Path> named = Optional.ofNullable(System.getProperty(STATE))
            .or(() -> Optional.ofNullable(System.getenv("SPANWRIGHT_STATE")))
            .filter(s -> !s.isBlank()).map(Path::of);
        return new KernelSettings(named.orElseGet(KernelSettings::systemFolder), System.err);
    }

    private static Path systemFolder() {
        final Path home = Path.of(System.getProperty("user.home"));
        final String system = System.getProperty("os.name").toLowerCase(Locale.ROOT);
        if (system.contains("win")) {
            return Optional.ofNullable(System.getenv("LOCALAPPDATA")).map(Path::of)
                .orElse(home.resolve("AppData").resolve("Local")).resolve("Spanwright");
        } else if (system.contains("mac")) {
            return home.resolve("Library").resolve("Application Support").resolve("Spanwright");
        }
        return Optional.ofNullable(System.getenv("XDG_STATE_HOME")).filter(s -> !s.isBlank()).map(Path::of)
            .orElse(home.resolve(".local").resolve("state")).resolve("spanwright");
    }
}
