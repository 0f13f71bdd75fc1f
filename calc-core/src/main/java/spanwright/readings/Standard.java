package spanwright.readings;

import java.time.LocalDate;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * A standard that was used, as the record names it.
 *
 * @param id               its name
 * @param certificate      number of its certificate, empty if not recorded
 * @param certified        date of the certificate, empty if not recorded
 * @param due              when its calibration is due, empty if not recorded
 * @param expandedU        expanded uncertainty U, above 0, empty if not recorded
 * @param unit             unit of U, empty if U is
 * @param coverageFactor   k of U, above 0, empty if not recorded
 * @param cell             where the record names it
 */
public record Standard(String id, String certificate, Optional<LocalDate> certified, Optional<LocalDate> due,
                       OptionalDouble expandedU, String unit, OptionalDouble coverageFactor,
                       CellAddress cell) {
    /** Checks the components. */
    public Standard {
        Checks.notBlank("name of the standard", id);
        Objects.requireNonNull(certificate, "certificate");
        Objects.requireNonNull(certified, "certified");
        Objects.requireNonNull(due, "due");
        Objects.requireNonNull(unit, "unit");
        Objects.requireNonNull(cell, "cell");
        expandedU.ifPresent(u -> Checks.positive("U of standard " + id, u));
        coverageFactor.ifPresent(k -> Checks.positive("k of standard " + id, k));
    }

    /** Standard uncertainty U / k in {@link #unit}, where both are recorded: a U without k is not divided. */
    public OptionalDouble standardUncertainty() {
        return expandedU.isPresent() && coverageFactor.isPresent()
            ? OptionalDouble.of(expandedU.getAsDouble() / coverageFactor.getAsDouble())
            : OptionalDouble.empty();
    }

    @Override
    public String toString() {
        return id + (certificate.isEmpty() ? "" : ", certificate " + certificate)
            + due.map(d -> ", due " + d).orElse("")
            + (expandedU.isPresent() ? ", U = " + NumberText.plain(expandedU.getAsDouble(), 6) + " " + unit
            : "")
            + (coverageFactor.isPresent() ? ", k = " + NumberText.plain(coverageFactor.getAsDouble(), 6)
                : expandedU.isPresent() ? ", k not recorded" : "");
    }
}
