package spanwright.error;

import java.util.Objects;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;
import spanwright.quantity.Span;
import spanwright.quantity.Tolerance;

/**
 * A standard used in a calibration, as far as its certificate and history tell.
 *
 * @param name         its identification
 * @param expanded     expanded uncertainty of the certificate, in {@code basis}
 * @param k            coverage factor of the certificate
 * @param driftPerYear limit of its change per year, of either sign, in {@code basis}; long-term figures need
 *                     history, so the caller states it
 * @param years        time since the certificate
 * @param basis        what the figures refer to: the range the standard is used on (percent of span, of
 *                     reading, of upper range value), or its unit ({@code OUTPUT_UNIT} on the output side,
 *                     {@code INPUT_UNIT} on the input side)
 */
public record CalibrationStandard(String name, double expanded, double k, double driftPerYear, double years,
                                  Tolerance.Basis basis) {
    /** Checks the components. */
    public CalibrationStandard {
        Checks.notBlank("name of the standard", name);
        Checks.notNegative("expanded uncertainty", expanded);
        Checks.positive("coverage factor", k);
        Checks.notNegative("drift per year", driftPerYear);
        Checks.notNegative("years since the certificate", years);
        Objects.requireNonNull(basis, "basis");
    }

    /** A standard whose drift since its certificate is not stated. */
    public static CalibrationStandard of(String name, double expanded, double k, Tolerance.Basis basis) {
        return new CalibrationStandard(name, expanded, k, 0, 0, basis);
    }

    /** This standard with a limit of its drift per year and the time since its certificate. */
    public CalibrationStandard withDrift(double perYear, double newYears) {
        return new CalibrationStandard(name, expanded, k, perYear, newYears, basis);
    }

    /** Limit of the drift since the certificate, in the basis. */
    public double driftLimit() {
        return driftPerYear * years;
    }

    /** A figure of this standard in the unit of a range, at a value. */
    double inUnit(double figure, Span range, double value) {
        return switch (basis) {
            case PERCENT_OF_SPAN -> figure / 100 * range.width();
            case PERCENT_OF_READING -> figure / 100 * Math.abs(value);
            case PERCENT_OF_UPPER_RANGE_VALUE -> figure / 100 * Math.abs(range.upper());
            default -> figure;
        };
    }

    @Override
    public String toString() {
        return name + ": U " + NumberText.plain(expanded, 4) + " " + basis + ", k " + NumberText.plain(k, 3)
            + (driftPerYear > 0 ? ", drift " + NumberText.plain(driftPerYear, 4) + " per year over "
            + NumberText.plain(years, 3) + " years" : ", drift not stated");
    }
}
