package spanwright.verdict;

/** What is known of the true errors of whole instruments, all points together, before one is measured. */
public sealed interface InstrumentPopulation permits NormalInstruments, RecordedInstruments {

    /** Number of points of an instrument. */
    int points();

    /** The population in one sentence. */
    String sentence();
}
