package spanwright.notebook;

import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** How this program starts itself again: the same Java, the flags that suit it, the same jar. */
final class JavaCommand {
    /**
     * The flags of every process that runs cells, understood or ignored by each JDK from 17 on.
     *
     * <p>The collector that starts fastest; room for deep recursion in a cell; half of the machine's memory,
     * but no more than short references reach, because an archive of classes is bound to them; no window
     * system; silence about an archive that does not fit, which is then simply not used.
     *
     * <p>The thresholds delay the second compiler thirtyfold for calls and tenfold for loops. With the usual
     * ones it spends the first seconds of a session on the Java compiler that compiles the cells, and a first
     * result takes about twice as long (measured on two cores, JDK 17). Calculations reach the thresholds
     * within milliseconds.
     */
    static final List<String> FLAGS = List.of("-XX:+IgnoreUnrecognizedVMOptions", "-XX:+UseSerialGC",
        "-Xss4m", "-XX:MaxRAMPercentage=50", "-XX:+UseCompressedOops",
        "-XX:Tier4InvocationThreshold=150000",
        "-XX:Tier4MinInvocationThreshold=18000", "-XX:Tier4CompileThreshold=450000",
        "-XX:Tier4BackEdgeThreshold=400000", "-XX:-OmitStackTraceInFastThrow", "-Xlog:disable",
        "-Xlog:all=error:stderr", "-Djava.awt.headless=true", "-Dfile.encoding=UTF-8");

    /** What the manifest of the jar says of modules, for a start that does not read it. */
    private static final List<String> EXPORTS = Stream.of("api", "code", "util")
        .map(p -> "--add-exports=jdk.compiler/com.sun.tools.javac." + p + "=ALL-UNNAMED").toList();

    private JavaCommand() { }

    /** Absolute path of the Java that runs now. */
    static Path java() {
        final Path bin = Path.of(System.getProperty("java.home"), "bin");
        final Path windows = bin.resolve("java.exe");
        return (Files.exists(windows) ? windows : bin.resolve("java")).toAbsolutePath();
    }

    /** Where this class comes from, as absolute paths: a child may work in another folder. */
    static String classPath() {
        return Stream.of(System.getProperty("java.class.path").split(File.pathSeparator))
            .map(entry -> Path.of(entry).toAbsolutePath().toString())
            .collect(Collectors.joining(File.pathSeparator));
    }

    /** The command that calls {@link Main} with these words. */
    static List<String> again(List<String> words) {
        final List<String> command = new ArrayList<>();
        command.add(java().toString());
        command.addAll(FLAGS);
        command.addAll(EXPORTS);
        final String jars = System.getProperty("maven.repo.local", "");
        if (!jars.isBlank()) {
            command.add("-Dmaven.repo.local=" + Path.of(jars).toAbsolutePath());
        }
        command.addAll(List.of("-cp", classPath(), Main.class.getName()));
        command.addAll(words);
        return command;
    }
}
