package spanwright.error;

import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import spanwright.fit.OutlierTest;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;
import spanwright.readings.Direction;

/**
 * What stands out most in a record, and whether more than chance explains. It is shown, never dropped.
 *
 * @param position  place on the scale, in percent of the input span
 * @param direction from which side
 * @param errors    the reading, or the readings of the group
 * @param test      the test
 */
public record Suspect(double position, Direction direction, List<ReadingError> errors, OutlierTest test) {
    /** Checks the components and copies the list. */
    public Suspect {
        Checks.finite("position", position);
        Objects.requireNonNull(direction, "direction");
        errors = List.copyOf(errors);
        Objects.requireNonNull(test, "test");
    }

    /** Test statistic by its critical value: above 1 chance does not explain it. */
    public double excess() {
        return test.statistic() / test.critical();
    }

    /** Whether it stands out more than chance explains. */
    public boolean isSuspected() {
        return test.isSuspected();
    }

    @Override
    public String toString() {
        return (isSuspected() ? "suspected" : "none suspected; most apart") + ": "
            + NumberText.plain(position, 4) + " % " + direction + " ("
            + errors.stream().map(e -> e.cell().toString()).collect(Collectors.joining(", ")) + "), "
            + test.kind()
            + " " + NumberText.fixed(test.statistic(), 3) + " against "
            + NumberText.fixed(test.critical(), 3);
    }
}
