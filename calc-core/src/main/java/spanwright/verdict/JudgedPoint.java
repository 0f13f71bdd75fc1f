package spanwright.verdict;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import spanwright.quantity.PercentOfSpan;

/**
 * One finding with its limit, what the rule accepts there, and the decision. Limits are in percent of span.
 *
 * @param finding    what was measured or calculated
 * @param limit      the limit at this point, percent of span; absent if there is none
 * @param acceptance what the rule accepts at this point; absent without limit, rule or uncertainty
 * @param word       the decision
 * @param missing    what is missing for a decision; empty unless {@code word} is NOT_DETERMINED
 */
public record JudgedPoint(MeasurementResult finding, Optional<ToleranceInterval> limit,
    Optional<Acceptance> acceptance,
                          Word word, List<String> missing) {
    /** Relative width within which a value counts as on a limit: covers the rounding of the arithmetic. */
    static final double ON_LIMIT = 1e-9;

    /** Checks the components and copies the list. */
    public JudgedPoint {
        Objects.requireNonNull(finding, "finding");
        Objects.requireNonNull(limit, "limit");
        Objects.requireNonNull(acceptance, "acceptance");
        missing = List.copyOf(missing);
        if ((word == Word.NOT_DETERMINED) == missing.isEmpty()) {
            throw new IllegalArgumentException("\"" + word + "\" with " + missing.size() + " things missing");
        }
    }

    /** Judges a finding that has all it needs. */
    static JudgedPoint of(MeasurementResult finding, ToleranceInterval limit, DecisionRule rule) {
        final MeasurementUncertainty uncertainty = finding.uncertainty().orElseThrow();
        final Acceptance acceptance = rule.acceptance(limit, uncertainty);
        final Word word = decide(finding, uncertainty, limit, acceptance);
        final List<String> missing = word == Word.NOT_DETERMINED
            ? List.of(acceptance.unmet().orElseThrow()) : List.of();
        return new JudgedPoint(finding, Optional.of(limit), Optional.of(acceptance), word, missing);
    }

    /** The decision word; also asked for an uncertainty that the finding might have had. */
    static Word decide(MeasurementResult finding, MeasurementUncertainty uncertainty, ToleranceInterval limit,
                       Acceptance acceptance) {
        final double value = finding.error();
        final double slack = ON_LIMIT * scale(limit);
        if (acceptance.unmet().isPresent()) {
            return isBeyondByWholeUncertainty(value, uncertainty, limit) ? Word.DOES_NOT_MEET
                : Word.NOT_DETERMINED;
        }
        final boolean inside = limit.room(value) >= -slack;
        if (acceptance.zone().isPresent() && acceptance.room(value) >= -slack) {
            final double reach = Math.min(limit.room(value - uncertainty.below()),
                limit.room(value + uncertainty.above()));
            return reach >= -slack ? Word.MEETS : Word.MEETS_WITH_STATED_RISK;
        }
        switch (acceptance.answers()) {
            case FOUR:
                return inside ? Word.MEETS_WITH_STATED_RISK
                    : limit.room(value) >= -acceptance.guardBand() - slack ? Word.NOT_SHOWN
                    : Word.DOES_NOT_MEET;
            case CLAIM:
                return inside && finding.conformance().orElseGet(() -> Conformance.probability(value,
                    uncertainty.u(), uncertainty.dof(), limit)) >= 0.5 ? Word.NOT_SHOWN : Word.DOES_NOT_MEET;
            default:
                return inside ? Word.NOT_SHOWN : Word.DOES_NOT_MEET;
        }
    }

    private static boolean isBeyondByWholeUncertainty(double value, MeasurementUncertainty uncertainty,
                                                      ToleranceInterval limit) {
        return limit.upper().isPresent() && value - uncertainty.below() > limit.upper().getAsDouble()
            || limit.lower().isPresent() && value + uncertainty.above() < limit.lower().getAsDouble();
    }

    private static double scale(ToleranceInterval limit) {
        return Math.max(Math.abs(limit.lower().orElse(0)), Math.abs(limit.upper().orElse(0)));
    }

    /** Distance of the error to the nearest acceptance limit, positive if accepted; absent without one. */
    public Optional<PercentOfSpan> margin() {
        return acceptance.filter(a -> a.unmet().isEmpty())
            .map(a -> new PercentOfSpan(a.room(finding.error())));
    }

    /** The margin in standard uncertainties. */
    public OptionalDouble marginInSigmas() {
        return margin().map(m -> OptionalDouble.of(m.value() / finding.uncertainty().orElseThrow().u()))
            .orElse(OptionalDouble.empty());
    }

    /** Probability that the true error lies inside the limit; absent without limit or uncertainty. */
    public OptionalDouble conformanceProbability() {
        if (finding.conformance().isPresent()) {
            return finding.conformance();
        }
        if (limit.isEmpty() || finding.uncertainty().isEmpty()) {
            return OptionalDouble.empty();
        }
        final MeasurementUncertainty m = finding.uncertainty().get();
        return OptionalDouble.of(Conformance.probability(finding.error(), m.u(), m.dof(), limit.get()));
    }

    /** The answer in the words of the rule, for example "conditional pass"; absent if not determined. */
    public Optional<String> answer() {
        if (acceptance.isEmpty() || word == Word.NOT_DETERMINED) {
            return Optional.empty();
        }
        if (acceptance.get().answers() != Answers.FOUR) {
            return Optional.of(word.isAccepted() ? "accepted" : "rejected");
        }
        final boolean passed = acceptance.get()
            .room(finding.error()) >= -ON_LIMIT * scale(limit.orElseThrow());
        return Optional.of(word == Word.DOES_NOT_MEET ? "fail" : word == Word.NOT_SHOWN ? "conditional fail"
            : passed ? "pass" : "conditional pass");
    }

    /** Probability that this acceptance is wrong; absent unless accepted. */
    public OptionalDouble specificFalseAccept() {
        if (!word.isAccepted()) {
            return OptionalDouble.empty();
        }
        if (finding.conformance().isPresent()) {
            return OptionalDouble.of(1 - finding.conformance().getAsDouble());
        }
        final MeasurementUncertainty m = finding.uncertainty().orElseThrow();
        return OptionalDouble.of(Conformance.risk(finding.error(), m.u(), m.dof(), limit.orElseThrow()));
    }

    /** Probability that this rejection is wrong; absent unless rejected. */
    public OptionalDouble specificFalseReject() {
        return word.isRejected() ? conformanceProbability() : OptionalDouble.empty();
    }

    /** The test uncertainty ratio; absent for a one-sided limit or without uncertainty. */
    public Optional<TestUncertaintyRatio> ratio() {
        return limit.flatMap(t -> finding.uncertainty().flatMap(u -> TestUncertaintyRatio.of(t, u)));
    }

    @Override
    public String toString() {
        return word.mark() + " " + word + ": " + finding
            + limit.map(t -> ", limit " + t + " % of span").orElse(", no limit")
            + (missing.isEmpty() ? "" : "; missing: " + String.join("; ", missing));
    }
}
