package spanwright.notebook;

import java.nio.file.Path;
import java.util.Optional;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.IVersionProvider;

/**
 * The command line. A new command is a class of its own, named in {@code subcommands}; its status is the
 * status of the process: 0 for success, 1 for a failure in what was run, 2 for a wrong call.
 */
@Command(name = "spanwright", mixinStandardHelpOptions = true, versionProvider = Main.Version.class,
    description = "Runs notebooks that prove the accuracy of measuring loops, and serves them to Jupyter.",
    subcommands = {RunCommand.class, CheckCommand.class, InstallCommand.class, KernelCommand.class})
public final class Main {
    /** Says which version runs on which Java. */
    static final class Version implements IVersionProvider {
        @Override
        public String[] getVersion() {
            return new String[] {"Spanwright " + version() + ", Java " + Runtime.version()};
        }
    }

    private Main() { }

    /** Entry of the process. */
    public static void main(String[] arguments) throws Exception {
        if (arguments.length == 2 && arguments[0].equals("kernel") && !arguments[1].startsWith("-")) {
            // What a Jupyter client calls: it waits, so the command line parser is not even loaded.
            KernelCommand.serve(Path.of(arguments[1]));
        }
        System.exit(commandLine().execute(arguments));
    }

    /** The commands; an exception is told in one line, without a trace. */
    static CommandLine commandLine() {
        return new CommandLine(new Main())
            .setCaseInsensitiveEnumValuesAllowed(true)
            .setExecutionExceptionHandler((e, line, parsed) -> {
                line.getErr().println("spanwright: "
                    + Optional.ofNullable(e.getMessage()).orElse(e.toString()));
                return line.getCommandSpec().exitCodeOnExecutionException();
            });
    }

    /** The version of the jar, "development" when run from class files. */
    static String version() {
        return Optional.ofNullable(Main.class.getPackage().getImplementationVersion()).orElse("development");
    }
}
