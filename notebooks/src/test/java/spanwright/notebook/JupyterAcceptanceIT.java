package spanwright.notebook;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.ServerSocket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/**
 * The installed kernel in front of the clients that people use. Needs Debian's Jupyter, Node.js and
 * Chromium; run by
 * {@code mvn verify -Pjupyter}.
 */
class JupyterAcceptanceIT {
    private static final Path MODULE = Path.of("").toAbsolutePath();
    private static final Path SCRIPTS = MODULE.resolve("src/acceptance");
    private static final Path PREFIX = MODULE.resolve("target/jupyter-prefix");
    private static final Path OUT = MODULE.resolve("target/acceptance");
    private static final Path BUILD_JDK = Path.of(System.getProperty("java.home"));
    private static final String PYTHON = "/usr/bin/python3";

    @BeforeAll
    static void installTheKernel() throws Exception {
        Files.createDirectories(OUT);
        run(Duration.ofMinutes(2), MODULE, "java", "-jar", MODULE.resolve("target/spanwright.jar").toString(),
            "install", "--prefix", PREFIX.toString());
        run(Duration.ofMinutes(5), SCRIPTS, "npm", "ci", "--no-audit", "--no-fund");
    }

    @AfterAll
    static void stopLeftovers() {
        servers.forEach(s -> {
            s.descendants().forEach(ProcessHandle::destroy);
            s.destroy();
        });
    }

    @Test
    @DisplayName("the public kernel test suite passes, 12 of 12, none skipped")
    void publicSuite() throws Exception {
        assertThat(run(Duration.ofMinutes(3), SCRIPTS, PYTHON, "public_suite.py"))
            .contains("ran 12, skipped 0");
    }

    @Test
    @DisplayName("every row of the protocol is answered to Jupyter's own client, none skipped")
    void protocolRows() throws Exception {
        assertThat(run(Duration.ofMinutes(5), SCRIPTS, PYTHON, "protocol_rows.py"))
            .contains("ran 45, skipped 0");
    }

    @Test
    @DisplayName("both pass too where the kernel runs on the newest JDK of this machine")
    void newestJdk() throws Exception {
        final Path jdk = newest();
        final String version = run(Duration.ofSeconds(20), MODULE, jdk.resolve("bin/java").toString(),
            "-version");
        System.out.println("newest JDK of this machine, " + (Files.isSameFile(jdk, BUILD_JDK)
            ? "no other than that of the build: " : "beside that of the build: ")
            + version.lines().findFirst().orElseThrow());
        final Path prefix = MODULE.resolve("target/jupyter-prefix-newest");
        run(Duration.ofMinutes(2), MODULE, jdk.resolve("bin/java").toString(), "-jar",
            MODULE.resolve("target/spanwright.jar").toString(), "install", "--prefix", prefix.toString());
        final Map<String, String> there = Map.of("JUPYTER_PATH",
            prefix.resolve("share/jupyter").toString());
        assertThat(run(Duration.ofMinutes(3), SCRIPTS, there, PYTHON, "public_suite.py"))
            .contains("ran 12, skipped 0");
        assertThat(run(Duration.ofMinutes(5), SCRIPTS, there, PYTHON, "protocol_rows.py"))
            .contains("ran 45, skipped 0");
    }

    /** The JDK of the highest version where systems keep them, or that of the build. */
    private static Path newest() throws IOException {
        final Path all = BUILD_JDK.toRealPath().getParent();
        try (Stream<Path> homes = Files.list(all)) {
            return homes.filter(h -> Files.isExecutable(h.resolve("bin/java")))
                .max(Comparator.comparingInt(JupyterAcceptanceIT::feature))
                .filter(h -> feature(h) > Runtime.version().feature()).orElse(BUILD_JDK);
        }
    }

    /** The feature version that the file "release" of a JDK states; 0 if it states none. */
    private static int feature(Path home) {
        try {
            final Matcher m = Pattern.compile("(?m)^JAVA_VERSION=\"(\\d+)")
                .matcher(Files.readString(home.resolve("release")));
            return m.find() ? Integer.parseInt(m.group(1)) : 0;
        } catch (NoSuchFileException e) {
            return 0;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Test
    @DisplayName("nbclient, nbconvert and the console run the worked notebooks")
    void clients() throws Exception {
        assertThat(run(Duration.ofMinutes(6), SCRIPTS, PYTHON, "clients.py")).contains("ran 3, skipped 0");
    }

    @Test
    @DisplayName("the classic Notebook in Chromium opens 01, runs all and shows its charts")
    void classicNotebook() throws Exception {
        final String url = serve("/usr/bin/jupyter-notebook", "--NotebookApp.token=",
            "--NotebookApp.password=",
            "--allow-root", "--no-browser", "--ip=127.0.0.1", "--notebook-dir=" + MODULE.getParent());
        final String said = run(Duration.ofMinutes(4), SCRIPTS, "node", "classic_notebook.mjs", url,
            "notebooks/01-does-the-chain-meet-its-target.ipynb", OUT.resolve("classic-notebook.png")
                .toString());
        assertThat(said).contains("\"errors\":[]");
        assertThat(OUT.resolve("classic-notebook.png")).isNotEmptyFile();
    }

    @Test
    @DisplayName("the JavaScript client of Jupyter's front ends drives a session through a Jupyter server")
    void javascriptClient() throws Exception {
        final String url = serve("/usr/bin/jupyter-server", "--ServerApp.token=", "--ServerApp.password=",
            "--ServerApp.disable_check_xsrf=True", "--allow-root", "--no-browser", "--ip=127.0.0.1",
            "--ServerApp.root_dir=" + MODULE);
        assertThat(run(Duration.ofMinutes(2), SCRIPTS, "node", "services_client.mjs", url))
            .contains("1 session driven");
    }

    private static final List<Process> servers = new ArrayList<>();

    /** Starts a server on a free port of the loopback address and waits until it answers. */
    private static String serve(String... command) throws Exception {
        final int port;
        try (ServerSocket free = new ServerSocket(0)) {
            port = free.getLocalPort();
        }
        final List<String> words = new ArrayList<>(List.of(command));
        words.add("--port=" + port);
        final Process server = process(MODULE, words).redirectErrorStream(true)
            .redirectOutput(OUT.resolve("server-" + port + ".log").toFile()).start();
        servers.add(server);
        final String url = "http://127.0.0.1:" + port;
        final HttpClient client = HttpClient.newHttpClient();
        final long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(40);
        while (true) {
            try {
                client.send(HttpRequest.newBuilder(URI.create(url + "/api")).build(),
                    HttpResponse.BodyHandlers.ofString());
                return url;
            } catch (IOException notYet) {
                assertThat(System.nanoTime()).as("server did not answer: " + command[0]).isLessThan(deadline);
                assertThat(server.isAlive()).as("server ended: " + command[0]).isTrue();
                Thread.sleep(200);
            }
        }
    }

    /** Runs a command to its end and returns what it printed; fails with that if its exit status is not 0. */
    private static String run(Duration atMost, Path folder, String... command) throws Exception {
        return run(atMost, folder, Map.of(), command);
    }

    private static String run(Duration atMost, Path folder, Map<String, String> environment,
                              String... command) throws Exception {
        final Path log = Files.createTempFile(OUT, "run", ".log");
        final ProcessBuilder builder = process(folder, List.of(command));
        builder.environment().putAll(environment);
        final Process process = builder.redirectErrorStream(true).redirectOutput(log.toFile()).start();
        final boolean ended = process.waitFor(atMost.toSeconds(), TimeUnit.SECONDS);
        if (!ended) {
            process.descendants().forEach(ProcessHandle::destroy);
            process.destroy();
        }
        final String said = Files.readString(log);
        assertThat(ended).as("%s within %s%n%s", String.join(" ", command), atMost, said).isTrue();
        assertThat(process.exitValue()).as("%s%n%s", String.join(" ", command), said).isZero();
        return said;
    }

    private static ProcessBuilder process(Path folder, List<String> command) {
        final ProcessBuilder builder = new ProcessBuilder(command).directory(folder.toFile());
        builder.environment().put("JUPYTER_PATH", PREFIX.resolve("share/jupyter").toString());
        return builder;
    }
}
