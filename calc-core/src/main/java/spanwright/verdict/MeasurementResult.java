package spanwright.verdict;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;
import spanwright.uncertainty.Estimate;

/**
 * What was measured or calculated at one point of the range: the error, in percent of span, with its
 * uncertainty.
 *
 * @param point          what a person calls the point, for example "50 % up"
 * @param percent        where it lies in the output range, in percent
 * @param outputPerInput slope of the specified characteristic there, needed only for limits in the unit of
 *                       the input
 * @param error          indication minus specified value, percent of span; for a chain its known bias
 * @param uncertainty    uncertainty of {@code error}, percent of span; absent if unknown, and then nothing is
 *                       decided
 * @param conformance    probability that the true error lies inside the limit, where the caller knows the
 *                       distribution better than normal or t (Monte Carlo); else absent
 * @param sources        where the figures stand, for example file, row and column
 */
public record MeasurementResult(String point, double percent, OptionalDouble outputPerInput, double error,
                      Optional<MeasurementUncertainty> uncertainty, OptionalDouble conformance,
                      List<String> sources) {
    /** Checks the components and copies the list. */
    public MeasurementResult {
        Checks.notBlank("point", point);
        Checks.finite("percent of the range", percent);
        outputPerInput.ifPresent(v -> Checks.finite("slope of the characteristic", v));
        Checks.finite("error", error);
        Objects.requireNonNull(uncertainty, "uncertainty");
        conformance.ifPresent(p -> Checks.within("conformance probability", p, 0, 1));
        sources = List.copyOf(sources);
    }

    /** An error with its uncertainty. */
    public static MeasurementResult of(String point, double percent, double error,
        MeasurementUncertainty uncertainty) {
        return new MeasurementResult(point, percent, OptionalDouble.empty(), error, Optional.of(uncertainty),
            OptionalDouble.empty(), List.of());
    }

    /**
     * An error with its uncertainty, expanded by a coverage factor to 95 %.
     *
     * @param error estimate of the error in percent of span; with u = 0 the finding counts as one of unknown
     *              uncertainty
     * @param k     coverage factor, above 0
     */
    public static MeasurementResult of(String point, double percent, Estimate error, double k) {
        return error.u() == 0 ? withoutUncertainty(point, percent, error.value())
            : of(point, percent, error.value(), MeasurementUncertainty.of(error, k));
    }

    /**
     * What a chain or a design claims: a known error, its spread, and the covered error, that is the half
     * width about zero that holds the error with the coverage probability. From these the coverage interval
     * is minus to plus the covered error, whatever the known error, so that the margin to a limit is limit
     * less covered error.
     *
     * @param error              known error with its standard uncertainty, percent of span; u above 0
     * @param covered            covered error, percent of span, above the known error
     * @param coverage           its coverage probability, in (0.5, 1)
     * @param probabilityOfLimit probability that the error lies inside the limit that will be asked for
     * @throws IllegalArgumentException if a figure is out of its range
     */
    public static MeasurementResult ofClaim(String point, Estimate error, double covered, double coverage,
                                  double probabilityOfLimit) {
        final double bias = error.value();
        Checks.inside("known error, below the covered error of " + covered, Math.abs(bias), -1, covered);
        return of(point, 100, bias, new MeasurementUncertainty(error.u(), error.dof(), bias + covered,
            covered - bias, coverage)).withConformance(probabilityOfLimit);
    }

    /** An error whose uncertainty is not known: shown, but not decided on. */
    public static MeasurementResult withoutUncertainty(String point, double percent, double error) {
        return new MeasurementResult(point, percent, OptionalDouble.empty(), error, Optional.empty(),
            OptionalDouble.empty(), List.of());
    }

    /** This finding with the slope of the characteristic, output unit per input unit. */
    public MeasurementResult withSlope(double slope) {
        return new MeasurementResult(point, percent, OptionalDouble.of(slope), error, uncertainty,
            conformance, sources);
    }

    /** This finding with a conformance probability from the caller's own distribution. */
    public MeasurementResult withConformance(double probability) {
        return new MeasurementResult(point, percent, outputPerInput, error, uncertainty,
            OptionalDouble.of(probability), sources);
    }

    /** This finding with the places its figures come from. */
    public MeasurementResult from(List<String> places) {
        return new MeasurementResult(point, percent, outputPerInput, error, uncertainty, conformance, places);
    }

    @Override
    public String toString() {
        if (uncertainty.isEmpty()) {
            return point + ": " + NumberText.signed(error, 3) + " % of span, uncertainty not known";
        }
        return point + ": " + NumberText.signed(error, NumberText.decimalsFor(uncertainty.get().expanded()))
            + " " + uncertainty.get() + " % of span";
    }
}
