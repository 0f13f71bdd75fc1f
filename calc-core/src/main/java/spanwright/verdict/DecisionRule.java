package spanwright.verdict;

/**
 * How the uncertainty of a result enters its acceptance. To be agreed before measuring (ISO/IEC 17025:2017,
 * 7.8.6, from memory); {@link AgreedRule} carries when and where that was.
 */
public sealed interface DecisionRule
    permits SimpleAcceptance, GuardBand, TwoPercentGuardBand, RootDifference, PlantRiskGuardBand,
        NonBinary,
        CoverageClaim {

    /** The rule in one sentence, as it is printed with every result. */
    String sentence();

    /**
     * The values that the rule accepts.
     *
     * @param limit       permissible values of the quantity
     * @param uncertainty uncertainty of the result, in the unit of the limit
     */
    Acceptance acceptance(ToleranceInterval limit, MeasurementUncertainty uncertainty);
}
