package spanwright.verdict;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;
import spanwright.quantity.PercentOfSpan;

/**
 * A decision with everything it rests on: the same value for a point, a channel, a chain and a plant. It is
 * made by {@link Question#decide} or, from other verdicts, by {@link #overall}. Percentages are of span.
 *
 * @param measurand what was judged
 * @param word      the decision
 * @param missing   what is missing for a decision; empty unless {@code word} is NOT_DETERMINED
 * @param question  what was asked; absent for a verdict over others
 * @param points    the findings judged, the deciding one first
 * @param parts     the verdicts this one is over, the worst first; empty for a single question
 * @param risks     the risks over a population, where one was given; over other verdicts, none of its own
 */
public record Verdict(String measurand, Word word, List<String> missing, Optional<Question> question,
                      List<JudgedPoint> points, List<Verdict> parts, Risks risks) {
    /** Checks the components and copies the lists. */
    public Verdict {
        Checks.notBlank("measurand", measurand);
        Objects.requireNonNull(question, "question");
        Objects.requireNonNull(risks, "risks");
        missing = List.copyOf(missing);
        points = List.copyOf(points);
        parts = List.copyOf(parts);
        if ((word == Word.NOT_DETERMINED) == missing.isEmpty()) {
            throw new IllegalArgumentException("\"" + word + "\" with " + missing.size() + " things missing");
        }
    }

    /**
     * The verdict over others, for example of a plant over its channels: as good as the worst of them.
     *
     * @param parts at least one
     * @throws IllegalArgumentException if there are none
     */
    public static Verdict overall(String measurand, List<Verdict> parts) {
        Checks.atLeast("number of verdicts", parts.size(), 1);
        final List<Verdict> sorted = new ArrayList<>(parts);
        sorted.sort(Comparator.comparing(Verdict::word).reversed()
            .thenComparing(v -> v.margin().map(PercentOfSpan::value).orElse(Double.MAX_VALUE)));
        final Word worst = sorted.get(0).word();
        final List<String> missing = worst != Word.NOT_DETERMINED ? List.of()
            : sorted.stream().filter(v -> v.word() == worst)
                .map(v -> v.measurand() + ": " + String.join("; ", v.missing())).toList();
        return new Verdict(measurand, worst, missing, Optional.empty(), List.of(), sorted, Risks.NONE);
    }

    /** This verdict with the risk per instrument from a simulation of the caller's own. */
    public Verdict withInstrumentRisk(InstrumentRisk simulated) {
        return new Verdict(measurand, word, missing, question, points, parts,
            new Risks(risks.point(), Optional.of(simulated)));
    }

    /** The point that decided; over other verdicts, that of the worst of them. */
    public Optional<JudgedPoint> deciding() {
        return points.isEmpty() ? parts.stream().findFirst().flatMap(Verdict::deciding)
            : Optional.of(points.get(0));
    }

    /** The limit as stated, with its basis. */
    public Optional<Limit> limit() {
        return question.flatMap(Question::limit).or(() -> parts.stream().findFirst().flatMap(Verdict::limit));
    }

    /** The rule, with when and where it was agreed. */
    public Optional<AgreedRule> rule() {
        return question.flatMap(Question::rule).or(() -> parts.stream().findFirst().flatMap(Verdict::rule));
    }

    /** Distance of the deciding error to the nearest acceptance limit, positive if accepted. */
    public Optional<PercentOfSpan> margin() {
        return deciding().flatMap(JudgedPoint::margin);
    }

    /** The margin in standard uncertainties of the deciding error. */
    public OptionalDouble marginInSigmas() {
        return deciding().map(JudgedPoint::marginInSigmas).orElse(OptionalDouble.empty());
    }

    /** Probability that the deciding error lies inside its limit. */
    public OptionalDouble conformanceProbability() {
        return deciding().map(JudgedPoint::conformanceProbability).orElse(OptionalDouble.empty());
    }

    /** What the verdict rests on, in the caller's words; over other verdicts, that of the worst. */
    public Grounds grounds() {
        return question.map(Question::grounds)
            .orElseGet(() -> parts.isEmpty() ? Grounds.NONE : parts.get(0).grounds());
    }

    /** What would change the decision: one sentence each, with the figure. */
    public List<String> changes() {
        if (!parts.isEmpty()) {
            return parts.stream().filter(p -> p.word() == word)
                .flatMap(p -> p.changes().stream().map(c -> p.measurand() + ": " + c)).toList();
        }
        if (word == Word.NOT_DETERMINED) {
            return missing.stream().map(m -> "Give " + m + ".").toList();
        }
        return deciding().map(p -> Changes.of(p, rule().orElseThrow().rule())).orElse(List.of());
    }

    /** How many of the parts have a word. */
    public long count(Word asked) {
        return parts.stream().filter(p -> p.word() == asked).count();
    }

    /** The decision in one plain sentence, with its number, unit and condition. */
    public String sentence() {
        if (!parts.isEmpty()) {
            return word + ": " + measurand + "; of " + parts.size() + ": " + Stream.of(Word.values())
                .filter(w -> count(w) > 0).map(w -> count(w) + " " + lowerCase(w))
                .collect(Collectors.joining(", ")) + ". Worst: " + parts.get(0).sentence();
        }
        if (word == Word.NOT_DETERMINED) {
            return word + ": " + measurand + "; missing: " + String.join("; ", missing) + ".";
        }
        final JudgedPoint p = deciding().orElseThrow();
        return word + " " + limit().orElseThrow() + " (" + question.orElseThrow().use() + "): " + measurand
            + "; deciding is " + p.finding() + marginText(p) + riskText(p) + populationText()
            + grounds().dominating().stream().findFirst().map(d -> "; " + d).orElse("") + ". "
            + rule().orElseThrow();
    }

    private static String lowerCase(Word w) {
        return w.toString().substring(0, 1).toLowerCase(Locale.ROOT) + w.toString().substring(1);
    }

    private static String marginText(JudgedPoint p) {
        return p.margin().map(m -> ", " + NumberText.significant(Math.abs(m.value()), 2) + " % of span ("
            + NumberText.significant(Math.abs(p.marginInSigmas().orElseThrow()), 2)
                + " standard uncertainties) "
            + (m.value() >= 0 ? "to spare" : "too much")).orElse("");
    }

    private static String riskText(JudgedPoint p) {
        final OptionalDouble accept = p.specificFalseAccept();
        if (accept.isPresent()) {
            return "; risk that this acceptance is wrong " + percent(accept.getAsDouble());
        }
        final OptionalDouble reject = p.specificFalseReject();
        return reject.isPresent() ? "; risk that this rejection is wrong " + percent(reject.getAsDouble())
            : "";
    }

    private String populationText() {
        return risks.point().map(r -> "; over the population " + percent(r.falseAccept())
                + " false accept and " + percent(r.falseReject()) + " false reject at this point").orElse("")
            + risks.instrument().map(r -> "; per instrument " + r.falseAccept() + " false accept").orElse("");
    }

    private static String percent(double probability) {
        return probability < 5e-5 ? "below 0.01 %" : NumberText.significant(100 * probability, 2) + " %";
    }

    @Override
    public String toString() {
        return sentence();
    }
}
