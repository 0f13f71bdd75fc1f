package spanwright.kernel.document;

import java.time.Duration;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * How to run a notebook.
 *
 * @param timeLimit  for each cell, positive; empty for none
 * @param keepGoing  whether the cells after a failed one run too
 * @param parameters values for the cell tagged "parameters", may be empty
 */
public record RunOptions(Optional<Duration> timeLimit, boolean keepGoing, List<Parameter> parameters) {
    /** No limit, stop at the first error, nothing set. */
    public static final RunOptions DEFAULT = new RunOptions(Optional.empty(), false, List.of());

    /** Checks the limit and copies the list. */
    public RunOptions {
        Objects.requireNonNull(timeLimit, "timeLimit");
        parameters = List.copyOf(parameters);
        timeLimit.ifPresent(limit -> {
            if (limit.isZero() || limit.isNegative()) {
                throw new IllegalArgumentException("time limit " + limit.toMillis() / 1e3
                    + " s is not positive");
            }
        });
    }

    /** These options with a limit for each cell. */
    public RunOptions withTimeLimit(Duration limit) {
        return new RunOptions(Optional.of(limit), keepGoing, parameters);
    }

    /** These options, going on after errors. */
    public RunOptions withKeepGoing() {
        return new RunOptions(timeLimit, true, parameters);
    }

    /** These options with values to set. */
    public RunOptions withParameters(List<Parameter> values) {
        return new RunOptions(timeLimit, keepGoing, values);
    }
}
