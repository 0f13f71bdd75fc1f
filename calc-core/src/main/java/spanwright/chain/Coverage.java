package spanwright.chain;

import java.util.OptionalDouble;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * What share of the errors a claim covers.
 *
 * <p>For 95 % the GUM column uses the trade's factor: t at 95.45 %, which is 2.00 for unlimited degrees of
 * freedom (in the manner of EA-4/02, from memory), a little on the safe side of 1.96. {@link #exactly()} asks
 * for the probability itself. Monte Carlo always uses the probability itself.
 *
 * @param probability in (0.5, 1)
 * @param forFactor   probability at which the coverage factor is taken
 * @param fixedFactor a coverage factor that is agreed beforehand; empty if it follows from the probability
 */
public record Coverage(double probability, double forFactor, OptionalDouble fixedFactor) {
    private static final double USUAL = 0.95;
    private static final double OF_TWO_SIGMA = 0.954499736103642;

    /** Checks the components. */
    public Coverage {
        Checks.inside("coverage probability", probability, 0.5, 1);
        Checks.inside("probability of the coverage factor", forFactor, 0.5, 1);
        fixedFactor.ifPresent(k -> Checks.positive("coverage factor", k));
    }

    /** A coverage probability: 0.95 for 95 %. */
    public static Coverage coverage(double probability) {
        return new Coverage(probability, probability == USUAL ? OF_TWO_SIGMA : probability,
            OptionalDouble.empty());
    }

    /**
     * The same with the coverage factor of the very probability: 1.96 for 95 % and unlimited degrees of
     * freedom.
     */
    public Coverage exactly() {
        return new Coverage(probability, probability, OptionalDouble.empty());
    }

    /** The same with an agreed coverage factor for the GUM column. */
    public Coverage withFactor(double k) {
        return new Coverage(probability, forFactor, OptionalDouble.of(k));
    }

    @Override
    public String toString() {
        return NumberText.plain(100 * probability, 4) + " % coverage";
    }
}
