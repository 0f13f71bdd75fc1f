package spanwright.error;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import spanwright.quantity.NumberText;
import spanwright.readings.Phase;
import spanwright.readings.RecordDate;
import spanwright.readings.RunRecord;
import spanwright.uncertainty.BudgetLine;
import spanwright.verdict.AgreedRule;
import spanwright.verdict.CalibrationLimits;
import spanwright.verdict.Grounds;
import spanwright.verdict.Limit;
import spanwright.verdict.LimitUse;
import spanwright.verdict.MeasurementResult;
import spanwright.verdict.Population;
import spanwright.verdict.Prior;
import spanwright.verdict.Question;
import spanwright.verdict.ToleranceInterval;
import spanwright.verdict.Verdict;

/**
 * What is asked of a calibrated channel: do its errors meet the limit, under a rule agreed beforehand? The
 * mean error at each point from each side is judged, with the uncertainty of the measurement process; the
 * answer is the same {@link Verdict} that a chain and a plant give. Immutable; a notebook builds it up:
 *
 * <pre>{@code
 * ChannelQuestion.about(record.runRecords("LT-101A").get(0))
 *     .measuredBy(process)
 *     .under(new AgreedRule(GuardBand.wholeUncertainty(), LocalDate.of(2026, 1, 12), "procedure QP-7"))
 *     .decide()
 * }</pre>
 *
 * <p>An as-left run is judged by the setting tolerance, any other by the acceptance limit. What the budget of
 * a point lacks (repeatability of a single cycle, the drift of a standard) and single readings beyond the
 * limit turn "Meets" into "Meets with stated risk". Without process, limit, rule or date, or with a rule
 * younger than the record, the verdict is "Not determined".
 *
 * @param analysis    the channel
 * @param process     how it was measured; absent if not known
 * @param limit       the limit for the phase of the run; absent if none is stated with its basis
 * @param rule        the rule; absent if none was agreed
 * @param dated       the day of the record; absent if it states none
 * @param prior       population of true errors at a point, percent of span; absent if none is known
 * @param instruments how the risk of the whole instrument is simulated; absent if it is not wanted
 */
public record ChannelQuestion(ChannelAnalysis analysis, Optional<MeasurementProcess> process,
                              Optional<Limit> limit, Optional<AgreedRule> rule, Optional<LocalDate> dated,
                              Optional<Prior> prior, Optional<ChannelPopulation> instruments) {
    private static final double MOST_OF_THE_VARIANCE = 80;

    /** Checks the components. */
    public ChannelQuestion {
        Objects.requireNonNull(analysis, "analysis");
        Objects.requireNonNull(process, "process");
        Objects.requireNonNull(limit, "limit");
        Objects.requireNonNull(rule, "rule");
        Objects.requireNonNull(dated, "dated");
        Objects.requireNonNull(prior, "prior");
        Objects.requireNonNull(instruments, "instruments");
    }

    /**
     * A question about an analysed run, with the tolerance of its record as the limit.
     *
     * @throws IllegalArgumentException if that tolerance has no width
     */
    public static ChannelQuestion about(ChannelAnalysis analysis) {
        return new ChannelQuestion(analysis, Optional.empty(), analysis.run().tolerance().map(Limit::of),
            Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());
    }

    /**
     * A question about a run of a record, with the date and the tolerance that the record states: the setting
     * tolerance for a run as left, if it has one.
     *
     * @throws IllegalArgumentException if that tolerance has no width
     */
    public static ChannelQuestion about(RunRecord record) {
        final ChannelQuestion question = about(ChannelAnalysis.of(record.run()));
        final Optional<Limit> stated = record.run().phase() == Phase.AS_LEFT
            ? record.header().settingTolerance().or(() -> record.run().tolerance()).map(Limit::of)
            : question.limit;
        return new ChannelQuestion(question.analysis, question.process, stated, question.rule,
            record.header().date().map(RecordDate::day), question.prior, question.instruments);
    }

    /** This question with how the channel was measured. */
    public ChannelQuestion measuredBy(MeasurementProcess known) {
        return new ChannelQuestion(analysis, Optional.of(known), limit, rule, dated, prior, instruments);
    }

    /** This question with a limit instead of the record's tolerance. */
    public ChannelQuestion within(Limit stated) {
        return new ChannelQuestion(analysis, process, Optional.of(stated), rule, dated, prior, instruments);
    }

    /** This question with the limit that a calibration has for the phase of this run. */
    public ChannelQuestion within(CalibrationLimits limits) {
        return new ChannelQuestion(analysis, process, limits.forUse(use()), rule, dated, prior, instruments);
    }

    /** This question under a rule. */
    public ChannelQuestion under(AgreedRule agreed) {
        return new ChannelQuestion(analysis, process, limit, Optional.of(agreed), dated, prior, instruments);
    }

    /** This question about a record of a day. */
    public ChannelQuestion dated(LocalDate day) {
        return new ChannelQuestion(analysis, process, limit, rule, Optional.of(day), prior, instruments);
    }

    /** This question with a population, so that the verdict states the risks at the deciding point. */
    public ChannelQuestion among(Prior population) {
        return new ChannelQuestion(analysis, process, limit, rule, dated, Optional.of(population),
            Optional.empty());
    }

    /** This question with a population of channels: the verdict states the risk per instrument too. */
    public ChannelQuestion among(ChannelPopulation population) {
        return new ChannelQuestion(analysis, process, limit, rule, dated, Optional.of(population.prior()),
            Optional.of(population));
    }

    /** What the limit is for: setting if the run was taken as left, else acceptance. */
    public LimitUse use() {
        return analysis.run().phase() == Phase.AS_LEFT ? LimitUse.SETTING : LimitUse.ACCEPTANCE;
    }

    /** The verdict on the channel. */
    public Verdict decide() {
        final List<PointUncertainty> points = process.map(p -> p.of(analysis)).orElse(List.of());
        final List<MeasurementResult> results = process.isPresent()
            ? points.stream().map(PointUncertainty::finding).toList() : withoutUncertainty();
        Question question = Question.about("error of " + analysis.run().channel() + ", "
            + analysis.run().phase(), analysis.run().output()).within(limit, use());
        question = rule.isPresent() ? question.under(rule.get()) : question;
        question = dated.isPresent() ? question.dated(dated.get()) : question;
        final Optional<String> deciding = question.decide(results).deciding().map(p -> p.finding().point());
        question = question.on(grounds(points, deciding));
        question = prior.isPresent() ? question.among(Population.ofPoints(prior.get())) : question;
        final Verdict verdict = question.decide(results);
        return instruments.flatMap(i -> i.risk(verdict, points)).map(verdict::withInstrumentRisk)
            .orElse(verdict);
    }

    private List<MeasurementResult> withoutUncertainty() {
        return analysis.errorsWithinRange().stream().map(e -> MeasurementResult.withoutUncertainty(
            NumberText.plain(e.position(), 4) + " % " + e.direction() + ", cycle " + e.cycle(),
            e.expectedPercent(), e.percentOfSpan()).from(List.of(e.cell().toString()))).toList();
    }

    private Grounds grounds(List<PointUncertainty> points, Optional<String> deciding) {
        final List<String> assumptions = process.map(p -> List.of(p.toString(),
            "the two standards are independent of each other",
            "each standard has the same error at every point of the run",
            "judged is the mean of " + analysis.run().cycles() + (analysis.run().cycles() == 1 ? " reading"
                : " readings") + " at each point from each side")).orElse(List.of());
        final List<String> reservations = new ArrayList<>(points.stream().flatMap(p -> p.missing().stream())
            .distinct().toList());
        reservations.addAll(readingsBeyond());
        return Grounds.NONE.dominatedBy(points.stream()
                .filter(p -> deciding.filter(p.finding().point()::equals).isPresent()).findFirst()
                .map(ChannelQuestion::dominating).orElse(List.of()))
            .assuming(assumptions).reserving(reservations).warning(warnings());
    }

    private List<String> warnings() {
        final List<String> warnings = new ArrayList<>(analysis.notes());
        if (use() == LimitUse.SETTING && limit.isPresent()
            && limit.equals(analysis.run().tolerance().map(Limit::of))) {
            warnings.add("the record's one tolerance is taken as the setting tolerance, since the run is as"
                + " left");
        }
        if (process.filter(p -> p.applied().name().equals(p.indicated().name())).isPresent()) {
            warnings.add(process.get().applied().name() + " served both sides: its error partly cancels, so"
                + " the uncertainty is too large");
        }
        return warnings;
    }

    /** The terms that make up the first 80 % of the variance, largest first. */
    private static List<String> dominating(PointUncertainty point) {
        final List<String> terms = new ArrayList<>();
        double sum = 0;
        for (BudgetLine line : point.budget().byShare()) {
            if (sum >= MOST_OF_THE_VARIANCE) {
                break;
            }
            terms.add(line.name() + " is " + NumberText.fixed(line.percentOfVariance(), 0)
                + " % of the variance");
            sum += line.percentOfVariance();
        }
        return terms;
    }

    /** Single readings outside the limit, which a mean may hide. */
    private List<String> readingsBeyond() {
        final List<String> beyond = new ArrayList<>();
        for (ReadingError e : analysis.errorsWithinRange()) {
            final Finding<ToleranceInterval> here = limit.<Finding<ToleranceInterval>>map(t ->
                PermissibleErrors.at(t, analysis.run(), e.expectedPercent()))
                .orElseGet(() -> Finding.notDetermined("no limit"));
            if (here.value().filter(t -> t.room(e.percentOfSpan()) < 0).isPresent()) {
                beyond.add("a single reading lies beyond the limit: " + e);
            }
        }
        return beyond;
    }

    @Override
    public String toString() {
        return "Does " + analysis.run().channel() + ", " + analysis.run().phase() + ", meet "
            + limit.map(Limit::toString).orElse("a limit not stated") + "?";
    }
}
