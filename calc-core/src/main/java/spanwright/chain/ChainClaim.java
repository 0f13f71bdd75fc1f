package spanwright.chain;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import spanwright.quantity.NumberText;
import spanwright.quantity.PercentOfSpan;
import spanwright.quantity.Span;
import spanwright.uncertainty.Estimate;
import spanwright.verdict.AgreedRule;
import spanwright.verdict.MeasurementResult;
import spanwright.verdict.Grounds;
import spanwright.verdict.Limit;
import spanwright.verdict.LimitUse;
import spanwright.verdict.Question;
import spanwright.verdict.Verdict;
import spanwright.verdict.Word;

/**
 * Whether a chain keeps within a target. The Monte Carlo figure decides: its known errors are in with their
 * sign, and its intervals need no assumption about the shape.
 *
 * <p>Meets: the covered error and its numerical error stay within the target. With stated risk: so they do,
 * but a term is typical or assumed, or a coefficient extrapolates. Not shown: the covered error is larger,
 * yet an error inside the target is more likely than one outside. Does not meet: it is less likely. Not
 * determined: something is missing.
 *
 * @param chain        the chain
 * @param target       plus and minus
 * @param word         the decision
 * @param result       the figures; empty if not determined
 * @param missing      what is missing for a decision
 * @param reservations what keeps a claim from a plain "Meets"
 */
public record ChainClaim(MeasuringChain chain, PercentOfSpan target, Word word, Optional<ChainError> result,
                         List<String> missing, List<String> reservations) {
    /** Checks the components and copies the lists. */
    public ChainClaim {
        Objects.requireNonNull(chain, "chain");
        Objects.requireNonNull(target, "target");
        Objects.requireNonNull(word, "word");
        missing = List.copyOf(missing);
        reservations = List.copyOf(reservations);
        if ((word == Word.NOT_DETERMINED) == result.isPresent()) {
            throw new IllegalArgumentException("\"" + word + "\" with" + (result.isPresent() ? "" : "out")
                + " figures");
        }
    }

    static ChainClaim notDetermined(MeasuringChain chain, PercentOfSpan target, List<String> missing) {
        return new ChainClaim(chain, target, Word.NOT_DETERMINED, Optional.empty(), missing, List.of());
    }

    static ChainClaim of(ChainError error, PercentOfSpan target) {
        final List<String> reservations = Reservations.of(error);
        final Word word;
        if (error.covered().value() + error.numericalError() <= target.value()) {
            word = reservations.isEmpty() ? Word.MEETS : Word.MEETS_WITH_STATED_RISK;
        } else {
            word = error.probabilityWithin(target) >= 0.5 ? Word.NOT_SHOWN : Word.DOES_NOT_MEET;
        }
        return new ChainClaim(error.chain(), target, word, Optional.of(error), List.of(), reservations);
    }

    /**
     * The figures.
     *
     * @throws IllegalStateException if the claim is not determined
     */
    public ChainError error() {
        return result.orElseThrow(() -> new IllegalStateException(sentence()));
    }

    /** The four methods; absent if not determined. */
    public Optional<FourMethods> methods() {
        return result.map(ChainError::methods);
    }

    /** Target minus covered error: positive to spare, negative too much; absent if not determined. */
    public Optional<PercentOfSpan> margin() {
        return result.map(r -> new PercentOfSpan(target.value() - r.covered().value()));
    }

    /** The margin in standard uncertainties of the error; absent if not determined. */
    public OptionalDouble marginInSigmas() {
        return result.isEmpty() || result.get().budget().u() == 0 ? OptionalDouble.empty()
            : OptionalDouble.of(margin().orElseThrow().value() / result.get().budget().u());
    }

    /** Probability that the error is within the target, by Monte Carlo; absent if not determined. */
    public OptionalDouble probability() {
        return result.map(r -> OptionalDouble.of(r.probabilityWithin(target))).orElse(OptionalDouble.empty());
    }

    /** The causes that make up the first 80 % of the variance, largest first. */
    public List<Contribution> dominating() {
        final List<Contribution> first = new ArrayList<>();
        double sum = 0;
        for (Contribution c : result.map(ChainError::contributions).orElse(List.of())) {
            if (sum >= 80) {
                break;
            }
            first.add(c);
            sum += c.percentOfVariance();
        }
        return List.copyOf(first);
    }

    /** What is taken for granted. */
    public List<Assumption> assumptions() {
        return result.map(ChainError::assumptions).orElse(List.of());
    }

    /**
     * The claim as a verdict under a decision rule that was agreed beforehand, for reports that put it beside
     * others. The rule sees the known error and the covered error with its numerical error, so that under
     * the whole uncertainty as guard band, and under a coverage claim, it accepts what this claim accepts.
     *
     * @param rule  the rule, with when and where it was agreed
     * @param dated the day of this calculation
     */
    public Verdict verdict(AgreedRule rule, LocalDate dated) {
        final Question question = Question.about("error of the measuring chain", output())
            .within(Limit.plusMinus(target), LimitUse.CLAIM).under(rule).dated(dated);
        if (result.isEmpty()) {
            return question.on(Grounds.NONE.lacking(missing)).decide();
        }
        final ChainError e = result.get();
        final Estimate known =
            new Estimate(e.methods().knownError(), e.budget().u(), e.budget().estimate().dof());
        return question.on(Grounds.NONE.dominatedBy(dominating().stream().map(ChainClaim::share).toList())
                .assuming(assumptions().stream().map(Assumption::toString).toList())
                .reserving(reservations).warning(e.warnings()))
            .decide(MeasurementResult.ofClaim(e.at().toString(), known,
                e.covered().value() + e.numericalError(), e.coverage().probability(),
                e.probabilityWithin(target)));
    }

    private Span output() {
        return chain.elements().get(chain.elements().size() - 1).output();
    }

    private static String share(Contribution c) {
        return c.words() + " is " + NumberText.fixed(c.percentOfVariance(), 0) + " % of the variance";
    }

    /**
     * Whether one may write "will not exceed": the worst case is within the target, and rests on nothing but
     * limits that cannot be exceeded.
     */
    public boolean mayPromise() {
        return result.map(r -> r.isGuaranteed()
            && r.byInput().stream().allMatch(i -> i.worstCase() <= target.value())).orElse(false);
    }

    /** The claim in one sentence, with its number, its conditions and what dominates. */
    public String sentence() {
        final String limit = NumberText.fixed(target.value(), 2) + " % of span";
        if (result.isEmpty()) {
            return word + ": whether the chain keeps within " + limit + "; missing: "
                + String.join("; ", missing) + ".";
        }
        final double margin = margin().orElseThrow().value();
        final Contribution first = result.get().contributions().get(0);
        return word + " " + limit + " at " + result.get().coverage() + " with "
            + NumberText.significant(Math.abs(margin), 2) + " % of span "
            + (margin >= 0 ? "to spare" : "too much")
            + chain.ambient().map(a -> ", " + a).orElse("") + "; " + share(first)
            + (reservations.isEmpty() ? "" : "; " + String.join("; ", reservations)) + ".";
    }

    @Override
    public String toString() {
        return sentence() + result.map(r -> "\n" + r.methods()).orElse("");
    }
}
