package spanwright.notebook;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import spanwright.notebook.install.ClassArchive;
import spanwright.notebook.install.JupyterFolders;
import spanwright.notebook.install.KernelSpec;

/**
 * Makes the kernel known to Jupyter. The jar is copied beside its description, so the folder it was built in
 * may go; then a kernel is started once and driven through a short session, to keep the classes it loads in
 * an archive that later starts read instead.
 */
@Command(name = "install", mixinStandardHelpOptions = true,
    description = "Makes the kernel known to Jupyter: writes its description, its jar and its class archive.")
final class InstallCommand implements Callable<Integer> {
    @Option(names = "--prefix", paramLabel = "DIR",
        description = "Installs to DIR/share/jupyter/kernels instead of the user's Jupyter folder.")
    private Path prefix;

    @Option(names = "--name", paramLabel = "NAME", defaultValue = "spanwright",
        description = "Name of the kernel; default: ${DEFAULT-VALUE}.")
    private String name;

    @Spec
    private CommandSpec spec;

    @Override
    public Integer call() throws Exception {
        final Path data = Optional.ofNullable(prefix).map(p ->
            p.toAbsolutePath().normalize().resolve("share/jupyter"))
            .orElseGet(() -> JupyterFolders.ofThisUser().data());
        final Path folder = KernelSpec.checkedFolder(data, name);
        Files.createDirectories(folder);
        final Path jar = KernelSpec.copyJar(ownJar(), folder);
        final ClassArchive archive = ClassArchive.beside(jar);
        final List<String> command = List.of(JavaCommand.java().toString());
        say("Training the class archive, about ten seconds ...");
        final Optional<String> trouble = archive.make(command, JavaCommand.FLAGS, jar);
        trouble.ifPresent(why -> spec.commandLine().getErr().println(
            "spanwright: no class archive, the kernel will start more slowly: " + why));
        KernelSpec.of(JavaCommand.java(), JavaCommand.FLAGS,
            trouble.isEmpty() ? archive.flags() : List.of(), jar).write(folder);
        say("Installed the kernel \"" + name + "\" in " + folder);
        if (prefix != null) {
            say("Jupyter finds it there if the folder is in its path: JUPYTER_PATH=" + data);
        }
        return 0;
    }

    private void say(String line) {
        spec.commandLine().getOut().println(line);
        spec.commandLine().getOut().flush();
    }

    private static Path ownJar() throws IOException {
        final Path jar = Path.of(JavaCommand.classPath());
        if (!jar.toString().endsWith(".jar") || !Files.isRegularFile(jar)) {
            throw new IOException("install runs from the jar only: java -jar spanwright.jar install");
        }
        return jar;
    }
}
