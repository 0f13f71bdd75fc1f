package spanwright.verdict;

/**
 * What is known of the true errors of a population before one of them is measured. Unit: that of the limit it
 * is used with, in verdicts percent of span.
 */
public sealed interface Prior permits NormalPrior, EmpiricalPrior {

    /** The population in one sentence, with whether true or observed figures made it. */
    String sentence();

    /** Proportion of the population inside an interval, 0 to 1. */
    double probabilityWithin(ToleranceInterval interval);
}
