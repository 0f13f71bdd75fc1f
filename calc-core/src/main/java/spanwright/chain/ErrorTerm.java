package spanwright.chain;

import java.util.Objects;
import java.util.Optional;
import spanwright.quantity.Checks;
import spanwright.temperature.TemperatureCoefficient;
import spanwright.uncertainty.Constant;
import spanwright.uncertainty.Distribution;
import spanwright.uncertainty.Estimate;
import spanwright.uncertainty.Normal;
import spanwright.uncertainty.Rectangular;
import spanwright.uncertainty.ScaledT;

/**
 * One error of one element.
 *
 * <p>Unit: percent of the element's output span; for a term that acts per kelvin, percent of span per kelvin
 * of excursion from the temperature at calibration. The expectation of the distribution is a known error, and
 * adds with its sign.
 *
 * @param name         unique in its element
 * @param influence    what it comes from
 * @param distribution what is known of it
 * @param limit        half width about the expectation that worst case and root sum of squares add: the
 *                     guaranteed limit, or for a term without one (normal, t) the expanded uncertainty
 * @param profile      how it changes over the range
 * @param basis        standing, source, and what it acts through
 */
public record ErrorTerm(String name, Influence influence, Distribution distribution, double limit,
                        ErrorProfile profile, Basis basis) {
    /** What a term without a guaranteed limit counts with in worst case and root sum of squares. */
    static final double FACTOR_WITHOUT_LIMIT = 2;

    /**
     * Where a term comes from.
     *
     * @param standing    guaranteed, measured, typical or assumed
     * @param bounded     whether the limit is one that cannot be exceeded
     * @param source      document, record or reason
     * @param perKelvin   whether it acts per kelvin of excursion
     * @param standardId  the shared standard that causes it, if any
     * @param coefficient the measured coefficient behind it, if any: it knows over which range it was found
     */
    public record Basis(Standing standing, boolean bounded, String source, boolean perKelvin,
                        Optional<String> standardId, Optional<TemperatureCoefficient> coefficient) {
        /** Checks the components. */
        public Basis {
            Objects.requireNonNull(standing, "standing");
            Objects.requireNonNull(source, "source");
            Objects.requireNonNull(standardId, "standardId");
            Objects.requireNonNull(coefficient, "coefficient");
        }

        /** A basis that acts directly, not through a temperature or a standard. */
        public static Basis of(Standing standing, boolean bounded, String source) {
            return new Basis(standing, bounded, source, false, Optional.empty(), Optional.empty());
        }

        /** The same, of a term that acts per kelvin of excursion. */
        public Basis actingPerKelvin() {
            return new Basis(standing, bounded, source, true, standardId, coefficient);
        }

        Basis through(SharedStandard standard) {
            return new Basis(standing, bounded, source, perKelvin, Optional.of(standard.id()), coefficient);
        }

        Basis from(TemperatureCoefficient found) {
            return new Basis(standing, bounded, source, perKelvin, standardId, Optional.of(found));
        }
    }

    /** Checks the components. */
    public ErrorTerm {
        Checks.notBlank("name of the error term", name);
        Objects.requireNonNull(influence, "influence");
        Objects.requireNonNull(distribution, "distribution");
        Checks.notNegative("limit of " + name, limit);
        Objects.requireNonNull(profile, "profile");
        Objects.requireNonNull(basis, "basis");
    }

    /** A limit to both sides, taken as a rectangle. */
    public static ErrorTerm limit(String name, Influence influence, double halfWidth, Basis basis) {
        Checks.notNegative("limit of " + name + " in % of span", halfWidth);
        return new ErrorTerm(name, influence, Rectangular.plusMinus(halfWidth), halfWidth,
            ErrorProfile.CONSTANT, basis);
    }

    /** An estimate: normal, or t where its degrees of freedom are finite. */
    public static ErrorTerm estimate(String name, Influence influence, Estimate e, Basis basis) {
        final Distribution d = e.dof().isUnlimited() ? new Normal(e.value(), e.u())
            : new ScaledT(e.value(), e.u(), e.dof().count());
        return new ErrorTerm(name, influence, d, FACTOR_WITHOUT_LIMIT * e.u(), ErrorProfile.CONSTANT, basis);
    }

    /** A known error over the range, without uncertainty of its own. */
    public static ErrorTerm known(String name, ErrorProfile percentOfSpan, Basis basis) {
        return new ErrorTerm(name, Influence.KNOWN_ERROR, new Constant(1), 0, percentOfSpan, basis);
    }

    /** This term with another course over the range. */
    public ErrorTerm withProfile(ErrorProfile other) {
        return new ErrorTerm(name, influence, distribution, limit, other, basis);
    }

    /** This term with its spread (not its expectation) multiplied. */
    ErrorTerm scaled(double factor) {
        return new ErrorTerm(name, influence, Scaling.aboutMean(distribution, factor), limit * factor,
            profile, basis);
    }

    /** Known part of the error, before profile and excursion. */
    public double expectation() {
        return distribution.mean();
    }

    /** Standard uncertainty, before profile and excursion. */
    public double u() {
        return distribution.standardUncertainty();
    }
}
