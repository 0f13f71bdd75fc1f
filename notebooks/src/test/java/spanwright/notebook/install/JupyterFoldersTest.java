package spanwright.notebook.install;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Source: Jupyter documentation, "Common Directories and File Locations", table of data directories. */
class JupyterFoldersTest {
    private static final Path HOME = Path.of("/home/kf");

    @ParameterizedTest(name = "{0}: {1}")
    @CsvSource({
        "Linux, .local/share/jupyter",
        "Mac OS X, Library/Jupyter",
        "Windows 11, AppData/Roaming/jupyter",
    })
    void dataFolderOfEachSystem(String system, String folder) {
        assertThat(new JupyterFolders(Map.of(), system, HOME).data()).isEqualTo(HOME.resolve(folder));
    }

    @Test
    void variablesOfTheEnvironmentGoFirst() {
        assertThat(new JupyterFolders(Map.of("XDG_DATA_HOME", "/x"), "Linux", HOME).data())
            .isEqualTo(Path.of("/x/jupyter"));
        assertThat(new JupyterFolders(Map.of("HOME", "/h"), "Linux", HOME).data())
            .isEqualTo(Path.of("/h/.local/share/jupyter"));
        assertThat(new JupyterFolders(Map.of("HOME", "/h"), "Mac OS X", HOME).data())
            .isEqualTo(Path.of("/h/Library/Jupyter"));
        assertThat(new JupyterFolders(Map.of("APPDATA", "/a"), "Windows 10", HOME).data())
            .isEqualTo(Path.of("/a/jupyter"));
        assertThat(
            new JupyterFolders(Map.of("JUPYTER_DATA_DIR", "/j", "XDG_DATA_HOME", "/x"), "Linux", HOME).data())
            .isEqualTo(Path.of("/j"));
    }
}
