package spanwright.kernel.wire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import spanwright.kernel.message.Bytes;

/** The keys are those of "Making kernels for Jupyter", Connection files. */
class ConnectionFileTest {
    /** The example of the documentation. */
    private static final String EXAMPLE = """
        {"control_port": 50160, "shell_port": 57503, "transport": "tcp", "signature_scheme": "hmac-sha256",
         "stdin_port": 52597, "hb_port": 42540, "ip": "127.0.0.1", "iopub_port": 40885,
         "key": "a0436f6c-1916-498b-8eb9-e81ab9368e84", "kernel_name": "x", "something_new": {"a": 1}}
        """;
    @TempDir
    Path folder;

    private Path file(String content) throws IOException {
        return Files.writeString(folder.resolve("kernel-1.json"), content);
    }

    @Test
    void readsTheExampleAndIgnoresWhatItDoesNotKnow() throws IOException {
        final ConnectionFile read = ConnectionFile.read(file(EXAMPLE));
        assertThat(read.ports()).isEqualTo(new Ports(57503, 40885, 52597, 50160, 42540));
        assertThat(read.key()).isEqualTo(Bytes.of("a0436f6c-1916-498b-8eb9-e81ab9368e84"));
        assertThat(read.curve()).isEmpty();
        assertThat(read.toString()).doesNotContain("a0436f6c");
    }

    @Test
    void writesPickedPortsBackAndKeepsTheRest() throws IOException {
        final Path path = file(EXAMPLE.replace("57503", "0"));
        final ConnectionFile read = ConnectionFile.read(path);
        read.withPorts(new Ports(1, 2, 3, 4, 5)).write(path);
        final ConnectionFile again = ConnectionFile.read(path);
        assertThat(again.ports()).isEqualTo(new Ports(1, 2, 3, 4, 5));
        assertThat(again.key()).isEqualTo(read.key());
        assertThat(again.json().get("something_new").get("a").asInt()).isEqualTo(1);
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(path))).isEqualTo("rw-------");
        try (var left = Files.list(folder)) {
            assertThat(left).containsExactly(path);
        }
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
        "transport": "tcp"    | "transport": "ipc"   | transport is 'ipc', this kernel speaks tcp only
        "shell_port": 57503   | "shell_port": 65536  | shell_port is 65536, a port lies within 0..65535
        "shell_port": 57503   | "shell_port": -1     | shell_port is -1
        "kernel_name": "x"    | "curve_publickey": "x" | must both be there or both be absent
        "kernel_name": "x"    | "curve_publickey": "x", "curve_secretkey": "y" | has 1 characters
        """)
    void refusesWhatItCannotDoAndNamesTheFile(String from, String to, String complaint) throws IOException {
        final Path path = file(EXAMPLE.replace(from, to));
        assertThatThrownBy(() -> ConnectionFile.read(path)).isInstanceOf(IllegalArgumentException.class)
            .hasMessageContaining("kernel-1.json").hasMessageContaining(complaint);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
        {       | is not JSON
        []      | is not a JSON object
        {"shell_port": "57503"} | shell_port is STRING, a whole number within int is needed
        """)
    void refusesABrokenFileAndNamesIt(String content, String complaint) throws IOException {
        final Path path = file(content);
        assertThatThrownBy(() -> ConnectionFile.read(path)).isInstanceOf(IOException.class)
            .hasMessageContaining("kernel-1.json").hasMessageContaining(complaint);
    }
}
