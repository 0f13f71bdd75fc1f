package spanwright.chain;

import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import spanwright.quantity.NumberText;
import spanwright.quantity.PercentOfSpan;
import spanwright.temperature.Ambient;
import spanwright.uncertainty.Budget;
import spanwright.uncertainty.MonteCarloResult;

/**
 * The error of a chain at a coverage: four methods side by side where it is largest, what it is made of, how
 * it changes over the range and over temperature, and what all this takes for granted. Percent of the chain's
 * output span.
 *
 * @param chain      the chain
 * @param coverage   share of the errors that the GUM and Monte Carlo figures cover
 * @param at         input and temperatures with the largest GUM figure: what the rest refers to
 * @param methods    the four figures
 * @param budget     GUM budget
 * @param monteCarlo distribution of the error by Monte Carlo
 * @param detail     contributions, curves, assumptions and warnings
 */
public record ChainError(MeasuringChain chain, Coverage coverage, OperatingPoint at, FourMethods methods,
                         Budget budget, MonteCarloResult monteCarlo, Detail detail) {
    private static final double HOURS_OF_A_YEAR = 8760;

    /**
     * What stands behind the figures.
     *
     * @param contributions largest share of the variance first
     * @param sobol         indices of the causes, largest total first
     * @param byInput       error at inputs from 0 to 100 %
     * @param byTemperature error against outdoor temperature; empty if the chain has no ambient or no term
     *                      needs one
     * @param assumptions   what is taken for granted
     * @param warnings      what a reader must know beside the figures
     */
    public record Detail(List<Contribution> contributions, List<SobolIndex> sobol, List<InputError> byInput,
                         List<TemperatureError> byTemperature, List<Assumption> assumptions,
                         List<String> warnings) {
        /** Copies the lists. */
        public Detail {
            contributions = List.copyOf(contributions);
            sobol = List.copyOf(sobol);
            byInput = List.copyOf(byInput);
            byTemperature = List.copyOf(byTemperature);
            assumptions = List.copyOf(assumptions);
            warnings = List.copyOf(warnings);
        }
    }

    /** Checks the components. */
    public ChainError {
        Objects.requireNonNull(chain, "chain");
        Objects.requireNonNull(coverage, "coverage");
        Objects.requireNonNull(at, "at");
        Objects.requireNonNull(methods, "methods");
        Objects.requireNonNull(budget, "budget");
        Objects.requireNonNull(monteCarlo, "monteCarlo");
        Objects.requireNonNull(detail, "detail");
    }

    /** Causes of error, largest share of the variance first. */
    public List<Contribution> contributions() {
        return detail.contributions();
    }

    /** Error at inputs from 0 to 100 %. */
    public List<InputError> byInput() {
        return detail.byInput();
    }

    /** Error against outdoor temperature. */
    public List<TemperatureError> byTemperature() {
        return detail.byTemperature();
    }

    /** What is taken for granted. */
    public List<Assumption> assumptions() {
        return detail.assumptions();
    }

    /** What a reader must know beside the figures. */
    public List<String> warnings() {
        return detail.warnings();
    }

    /** The size of error that the coverage's share of the Monte Carlo trials does not exceed. */
    public PercentOfSpan covered() {
        return new PercentOfSpan(methods.monteCarlo().limit());
    }

    /** Standard error of {@link #covered} from the number of trials, percent of span. */
    public double numericalError() {
        return new AbsoluteError(monteCarlo).quantileError(coverage.probability());
    }

    /** How far each cause moves the error from its known value, at its limits; the widest first. */
    public List<TornadoBar> tornado() {
        return contributions().stream().map(c -> new TornadoBar(c.label(),
                c.tornadoLow(methods.knownError()), c.tornadoHigh(methods.knownError())))
            .sorted(Comparator.comparingDouble(b -> -b.width())).toList();
    }

    /** The GUM figure without each cause, and what that gains; the largest gain first. */
    public List<MarginGain> dropOne() {
        return MarginGain.ofDropping(this);
    }

    /**
     * What measuring each cause would gain: its uncertainty replaced by that of a measurement with this
     * expanded uncertainty (k = 2, percent of the chain's span); the largest gain first.
     */
    public List<MarginGain> valueOfMeasuring(PercentOfSpan expanded) {
        return MarginGain.ofMeasuring(this, expanded);
    }

    /**
     * First-order and total Sobol indices of the causes and of temperatures spread over time; largest total
     * first.
     */
    public List<SobolIndex> sobolIndices() {
        return detail.sobol();
    }

    /** What elements have in common, in words. */
    public List<String> sharedCauses() {
        return chain.sharedCauses();
    }

    /** Share of the Monte Carlo trials within a limit, plus and minus. */
    public double probabilityWithin(PercentOfSpan limit) {
        return new AbsoluteError(monteCarlo).shareWithin(limit.value());
    }

    /**
     * Hours of a year in which the error is expected beyond a limit, plus and minus; absent where the claim
     * is not weighted by time. The expectation is over what is not known of the units too.
     */
    public OptionalDouble expectedHoursBeyond(PercentOfSpan limit) {
        return chain.ambient().filter(a -> a.basis() == Ambient.Basis.SHARE_OF_TIME).isPresent()
            ? OptionalDouble.of(HOURS_OF_A_YEAR * (1 - probabilityWithin(limit))) : OptionalDouble.empty();
    }

    /**
     * A histogram of the Monte Carlo errors: bins of equal width from the smallest to the largest error
     * shown.
     *
     * @param bins at least 1
     * @return bins in rising order; the tails outside the middle 99.98 % are in the first and last
     */
    public List<Bin> histogram(int bins) {
        return Bin.histogram(monteCarlo, bins);
    }

    /** Whether every term has a limit that cannot be exceeded, so that the worst case may be promised. */
    public boolean isGuaranteed() {
        return contributions().stream().allMatch(c -> c.basis().bounded()
            && (c.basis().standing() == Standing.GUARANTEED || c.basis().standing() == Standing.MEASURED));
    }

    @Override
    public String toString() {
        return "Error of " + chain + ", " + coverage + ", " + at + ":\n" + methods + "\n"
            + "Known error " + NumberText.signed(methods.knownError(), 3) + " % of span. Contributions:\n"
            + contributions().stream().map(c -> "  " + c).collect(Collectors.joining("\n"))
            + warnings().stream().map(w -> "\nWarning: " + w).collect(Collectors.joining());
    }
}
