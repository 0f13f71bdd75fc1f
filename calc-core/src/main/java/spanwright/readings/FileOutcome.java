package spanwright.readings;

import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;

/**
 * What became of one file.
 *
 * @param file     name of the file
 * @param runs     number of runs that were read
 * @param account  where every row went
 * @param findings everything that was found, in the order of the file
 */
public record FileOutcome(String file, int runs, RowAccount account, List<RecordFinding> findings) {
    /** Checks the components and copies the list. */
    public FileOutcome {
        Objects.requireNonNull(file, "file");
        Objects.requireNonNull(account, "account");
        findings = List.copyOf(findings);
    }

    /** Whether nothing in the file was refused. */
    public boolean isAccepted() {
        return findings.stream().noneMatch(f -> f.outcome() == Outcome.REFUSED);
    }

    /** The gravest outcome in one word: refused, asked, flagged, repaired, or accepted. */
    public String word() {
        for (Outcome o : List.of(Outcome.REFUSED, Outcome.ASKED, Outcome.FLAGGED, Outcome.REPAIRED)) {
            if (findings.stream().anyMatch(f -> f.outcome() == o)) {
                return o.toString();
            }
        }
        return "accepted";
    }

    /** The kinds of findings, each once, in the order of the file. */
    public List<Fault> faults() {
        return findings.stream().map(RecordFinding::fault).distinct().toList();
    }

    /** What was found, gravest first, one sentence each. */
    public String says() {
        return findings.stream().sorted(java.util.Comparator.comparingInt(f -> f.outcome().ordinal()))
            .map(f -> f.outcome() + ": " + f).collect(Collectors.joining("\n"));
    }

    @Override
    public String toString() {
        return file + ": " + word() + ", " + runs + " runs, " + account;
    }
}
