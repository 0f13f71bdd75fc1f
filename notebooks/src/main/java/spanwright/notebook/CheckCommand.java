package spanwright.notebook;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import spanwright.readings.FolderOutcome;
import spanwright.readings.Readings;

/**
 * Reads a record or a folder of records and says of each file what was accepted, repaired, asked and refused.
 */
@Command(name = "check", mixinStandardHelpOptions = true,
    description = "Reads calibration records and says what it makes of each; status 1 if one is refused.")
final class CheckCommand implements Callable<Integer> {
    private static final int FILES_PER_LINE = 500;

    @Parameters(paramLabel = "FOLDER", description = "A folder of records, or one file.")
    private Path folder;

    @Option(names = "--all", description = "Every finding with its cell, not only the gravest of each file.")
    private boolean all;

    @Spec
    private CommandSpec spec;

    @Override
    public Integer call() {
        final PrintWriter out = spec.commandLine().getOut();
        final PrintWriter err = spec.commandLine().getErr();
        final FolderOutcome outcome = Readings.folder(folder, reading -> reading, (done, of, file) -> {
            if (done % FILES_PER_LINE == 0 && done < of) {
                err.println("read " + done + " of " + of + " files");
                err.flush();
            }
        });
        if (all) {
            outcome.files().forEach(f -> out.println(f + (f.findings().isEmpty() ? "" : "\n  "
                + f.says().replace("\n", "\n  "))));
            out.println(outcome.summary());
        } else {
            out.println(outcome);
        }
        out.flush();
        return outcome.files().stream().allMatch(f -> f.isAccepted()) ? 0 : 1;
    }
}
