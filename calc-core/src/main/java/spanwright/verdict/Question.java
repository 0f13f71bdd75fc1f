package spanwright.verdict;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import spanwright.quantity.Checks;
import spanwright.quantity.Span;

/**
 * What is asked: does this measurand meet this limit, under this rule? It decides on findings and gives the
 * {@link Verdict}. Immutable; a notebook builds it up:
 *
 * <pre>{@code
 * Question.about("output error of LT-101A", Span.milliamps4to20())
 *     .within(Limit.plusMinus(percentOfSpan(0.1)), LimitUse.ACCEPTANCE)
 *     .under(new AgreedRule(GuardBand.wholeUncertainty(), LocalDate.of(2026, 1, 12), "procedure QP-7"))
 *     .dated(LocalDate.of(2026, 3, 2))
 *     .decide(MeasurementResult.of("50 % up", 50, Estimate.of(0.062, 0.011), 2))
 * }</pre>
 *
 * @param measurand  what is judged, in words that stand alone
 * @param output     range whose span the percentages refer to
 * @param use        what the limit is for
 * @param limit      the limit; absent if none is stated or its basis is not known, and then nothing is
 *                   decided
 * @param rule       the rule; absent if none was agreed, and then nothing is decided
 * @param dated      the day of the record or calculation that is judged
 * @param grounds    what the verdict rests on
 * @param population for the risks over a population; absent if none is known, and then they are not stated
 */
public record Question(String measurand, Span output, LimitUse use, Optional<Limit> limit,
                       Optional<AgreedRule> rule, Optional<LocalDate> dated, Grounds grounds,
                       Optional<Population> population) {
    /** Checks the components. */
    public Question {
        Checks.notBlank("measurand", measurand);
        Objects.requireNonNull(output, "output");
        Objects.requireNonNull(use, "use");
        Objects.requireNonNull(limit, "limit");
        Objects.requireNonNull(rule, "rule");
        Objects.requireNonNull(dated, "dated");
        Objects.requireNonNull(grounds, "grounds");
        Objects.requireNonNull(population, "population");
    }

    /** A question that has neither limit nor rule yet. */
    public static Question about(String measurand, Span output) {
        return new Question(measurand, output, LimitUse.ACCEPTANCE, Optional.empty(), Optional.empty(),
            Optional.empty(), Grounds.NONE, Optional.empty());
    }

    /** This question with a limit and what it is for. */
    public Question within(Limit permissible, LimitUse purpose) {
        return within(Optional.of(permissible), purpose);
    }

    /** This question with a limit that a record may or may not state. */
    public Question within(Optional<Limit> permissible, LimitUse purpose) {
        return new Question(measurand, output, purpose, permissible, rule, dated, grounds, population);
    }

    /** This question with the limit that a calibration has for a use. */
    public Question within(CalibrationLimits limits, LimitUse purpose) {
        return within(limits.forUse(purpose), purpose);
    }

    /** This question under a rule. */
    public Question under(AgreedRule agreed) {
        return new Question(measurand, output, use, limit, Optional.of(agreed), dated, grounds, population);
    }

    /** This question about a record or calculation of a day. */
    public Question dated(LocalDate day) {
        return new Question(measurand, output, use, limit, rule, Optional.of(day), grounds, population);
    }

    /** This question with what its verdict rests on. */
    public Question on(Grounds given) {
        return new Question(measurand, output, use, limit, rule, dated, given, population);
    }

    /** This question with a population, so that the verdict states the risks over it. */
    public Question among(Population given) {
        return new Question(measurand, output, use, limit, rule, dated, grounds, Optional.of(given));
    }

    /** Decides on the findings, all of which must be accepted. */
    public Verdict decide(MeasurementResult... findings) {
        return decide(List.of(findings));
    }

    /**
     * Decides on the findings, all of which must be accepted; the worst decides. Without findings, limit,
     * rule, uncertainty, or with a rule younger than the record, the verdict is "Not determined" and says so.
     */
    public Verdict decide(List<MeasurementResult> findings) {
        final List<String> refusals = refusals(findings);
        final List<JudgedPoint> points = new ArrayList<>();
        for (MeasurementResult finding : findings) {
            points.add(judge(finding, refusals));
        }
        points.sort(Comparator.comparing(JudgedPoint::word).reversed()
            .thenComparing(p -> p.margin().map(m -> m.value()).orElse(Double.MAX_VALUE)));
        Word word = refusals.isEmpty() ? Word.MEETS : Word.NOT_DETERMINED;
        for (JudgedPoint point : points) {
            word = word.worse(point.word());
        }
        final List<String> missing = new ArrayList<>(refusals);
        if (word != Word.DOES_NOT_MEET && !grounds.missing().isEmpty()) {
            word = Word.NOT_DETERMINED;
        }
        if (word == Word.NOT_DETERMINED) {
            missing.addAll(grounds.missing());
            points.forEach(p -> missing.addAll(p.missing()));
        }
        if (word == Word.MEETS && !grounds.reservations().isEmpty()) {
            word = Word.MEETS_WITH_STATED_RISK;
        }
        return new Verdict(measurand, word, missing.stream().distinct().toList(), Optional.of(this), points,
            List.of(), population.map(p -> Risks.of(points, p)).orElse(Risks.NONE));
    }

    /** What forbids any decision on this record, in the words of something missing. */
    private List<String> refusals(List<MeasurementResult> findings) {
        final List<String> missing = new ArrayList<>();
        if (findings.isEmpty()) {
            missing.add("a finding");
        }
        if (limit.isEmpty()) {
            missing.add("a limit with its basis (percent of span, of reading, of upper range value, or a"
                + " unit)");
        }
        if (rule.isEmpty()) {
            missing.add("a decision rule agreed before measuring");
        } else if (dated.isEmpty()) {
            missing.add("the date of the record, to show that the rule was agreed before it");
        } else if (!rule.get().precedes(dated.get())) {
            missing.add("a decision rule agreed before measuring (this one was agreed "
                + rule.get().agreedOn() + ", the record is dated " + dated.get() + ")");
        }
        return missing;
    }

    private JudgedPoint judge(MeasurementResult finding, List<String> refusals) {
        final List<String> missing = new ArrayList<>(refusals);
        final Optional<String> obstacle = limit
            .flatMap(t -> t.obstacle(output, finding.percent(), finding.outputPerInput()));
        obstacle.ifPresent(missing::add);
        if (finding.uncertainty().isEmpty()) {
            missing.add("the measurement uncertainty at " + finding.point());
        }
        final Optional<ToleranceInterval> here = obstacle.isPresent() ? Optional.empty()
            : limit.map(t -> t.at(output, finding.percent(), finding.outputPerInput()));
        return missing.isEmpty() ? JudgedPoint.of(finding, here.orElseThrow(), rule.orElseThrow().rule())
            : new JudgedPoint(finding, here, Optional.empty(), Word.NOT_DETERMINED, missing);
    }
}
