package spanwright.chain;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import spanwright.quantity.Checks;
import spanwright.quantity.PercentOfSpan;
import spanwright.temperature.Ambient;
import spanwright.temperature.DurationCurve;
import spanwright.temperature.HourlyHistory;
import spanwright.temperature.TemperatureRise;
import spanwright.uncertainty.Estimate;

/**
 * Elements in a row, the signal going from the first to the last, in an ambient. Immutable.
 *
 * <pre>{@code
 * MeasuringChain.of(transmitter, kioskIsolator, cabinetIsolator, inputCard)
 *     .in(Ambient.between(degC(-10), degC(45)).withCabinetRise(kelvin(8)))
 *     .claim(percentOfSpan(0.5), coverage(0.95))
 * }</pre>
 *
 * @param elements at least one, with different names; each takes the signal of the one before
 * @param ambient  temperatures that elements without an ambient of their own share
 * @param shared   causes that elements have in common
 * @param run      seed and number of trials of the Monte Carlo column
 */
public record MeasuringChain(List<ChainElement> elements, Optional<Ambient> ambient, List<SharedCause> shared,
                             Run run) {
    /**
     * Settings of the Monte Carlo column: the same seed gives the same figures.
     *
     * @param seed   any number
     * @param trials at least 1000
     */
    public record Run(long seed, long trials) {
        /** The seed and number of trials where none are given. */
        public static final Run USUAL = new Run(20240229, 1_000_000);

        /** Checks the components. */
        public Run {
            Checks.within("number of trials", trials, 1000, 1e10);
        }
    }

    /** Checks the components and copies the lists. */
    public MeasuringChain {
        elements = List.copyOf(elements);
        Objects.requireNonNull(ambient, "ambient");
        shared = List.copyOf(shared);
        Objects.requireNonNull(run, "run");
        Checks.atLeast("number of elements", elements.size(), 1);
        final Set<String> names = new LinkedHashSet<>();
        for (ChainElement e : elements) {
            if (!names.add(e.name())) {
                throw new IllegalArgumentException("two elements of the chain are named " + e.name());
            }
        }
        for (int i = 1; i < elements.size(); i++) {
            checkUnits(elements.get(i - 1), elements.get(i));
        }
        shared.forEach(s -> s.elements().forEach(name -> checkKnown(names, name)));
    }

    private static void checkUnits(ChainElement from, ChainElement to) {
        if (!from.output().unit().equals(to.input().unit())) {
            throw new IllegalArgumentException(from.name() + " gives " + from.output().symbol() + " but "
                + to.name() + " takes " + to.input().symbol());
        }
    }

    private static void checkKnown(Set<String> names, String name) {
        if (!names.contains(name)) {
            throw new IllegalArgumentException("no element of the chain is named " + name
                + "; there are " + names);
        }
    }

    /** Elements in the order of the signal. */
    public static MeasuringChain of(ChainElement... elements) {
        return of(Arrays.asList(elements));
    }

    /** Elements in the order of the signal. */
    public static MeasuringChain of(List<ChainElement> elements) {
        return new MeasuringChain(elements, Optional.empty(), List.of(), Run.USUAL);
    }

    /** The chain in an ambient. */
    public MeasuringChain in(Ambient temperatures) {
        return new MeasuringChain(elements, Optional.of(temperatures), shared, run);
    }

    /** The chain with another seed of the Monte Carlo column. */
    public MeasuringChain withSeed(long seed) {
        return new MeasuringChain(elements, ambient, shared, new Run(seed, run.trials()));
    }

    /** The chain with another number of trials. */
    public MeasuringChain withTrials(long trials) {
        return new MeasuringChain(elements, ambient, shared, new Run(run.seed(), trials));
    }

    /**
     * Temperature coefficients that tend the same way, because the elements are of one lot, one module or one
     * design.
     *
     * @param cause       what they have in common, in words
     * @param coefficient correlation coefficient of each pair
     * @param names       names of the elements, at least two
     */
    public MeasuringChain sharingCoefficients(String cause, double coefficient, String... names) {
        return sharing(new SharedCause(cause, Influence.TEMPERATURE, coefficient, List.of(names)));
    }

    /** Error terms that have a cause in common. */
    public MeasuringChain sharing(SharedCause cause) {
        final List<SharedCause> all = new ArrayList<>(shared);
        all.add(cause);
        return new MeasuringChain(elements, ambient, all, run);
    }

    /** The chain with one element replaced by another of the same name. */
    public MeasuringChain with(ChainElement replacement) {
        checkKnown(elements.stream().map(ChainElement::name).collect(Collectors.toSet()), replacement.name());
        return withElements(elements.stream()
            .map(e -> e.name().equals(replacement.name()) ? replacement : e).toList());
    }

    MeasuringChain withElements(List<ChainElement> other) {
        return new MeasuringChain(other, ambient, shared, run);
    }

    /** The element of a name. */
    public ChainElement element(String name) {
        return elements.stream().filter(e -> e.name().equals(name)).findFirst().orElseThrow(
            () -> new IllegalArgumentException("no element of the chain is named " + name));
    }

    /**
     * The chain calibrated as a whole, from the first input to the last output: what a calibration finds of
     * the stages (rating, known errors, standards) goes, and what is left is the residual error of the loop
     * calibration and its one standard.
     *
     * @param residual largest error left after the calibration, plus and minus
     * @param standard the standard of that calibration; its uncertainty in percent of the chain's output span
     */
    public MeasuringChain calibratedEndToEnd(PercentOfSpan residual, SharedStandard standard) {
        final List<ChainElement> stages = new ArrayList<>();
        for (ChainElement e : elements) {
            stages.add(e.withTerms(e.terms().stream()
                .filter(t -> !t.influence().isFoundByCalibration()).toList())
                .withNote(e.name() + ": calibrated as part of the whole chain"));
        }
        final int last = stages.size() - 1;
        stages.set(last, stages.get(last)
            .with(ErrorTerm.limit("end-to-end calibration", Influence.END_TO_END, residual.value(),
                ErrorTerm.Basis.of(Standing.MEASURED, true, "loop calibration, as-left limit")))
            .with(ErrorTerm.estimate("standard " + standard.id(), Influence.STANDARD,
                Estimate.of(0, standard.u()), ErrorTerm.Basis.of(Standing.MEASURED, false,
                    "certificate of " + standard).through(standard))));
        return withElements(stages);
    }

    /** Everything the chain says about its error at a coverage, without a target. */
    public ChainError error(Coverage coverage) {
        return new Evaluation(this, coverage).error();
    }

    /** Whether the chain keeps within a target, plus and minus, at a coverage. */
    public ChainClaim claim(PercentOfSpan target, Coverage coverage) {
        Checks.positive("target in % of span", target.value());
        final Evaluation evaluation = new Evaluation(this, coverage);
        return evaluation.missing().isEmpty() ? ChainClaim.of(evaluation.error(), target)
            : ChainClaim.notDetermined(this, target, evaluation.missing());
    }

    /**
     * For how many hours of a history the error may have been how large: in each hour the known error plus
     * expanded uncertainty at that hour's temperature, at the worst input. The history takes the place of the
     * chain's outdoor range; its cabinet and sun stay.
     */
    public DurationCurve durationCurve(HourlyHistory history, Coverage coverage) {
        final List<TemperatureRise> rises = ambient.map(Ambient::rises).orElse(List.of());
        final Ambient range = new Ambient(history.lowest(), history.highest(), Optional.empty(), rises);
        return new Evaluation(in(range), coverage).durationCurve(history);
    }

    /** What elements of the chain have in common, in words: temperatures, standards, coefficients. */
    public List<String> sharedCauses() {
        return SharedCauses.of(this);
    }

    /** The chain with the spread of one cause multiplied; the label is that of a contribution. */
    MeasuringChain withSpread(Contribution cause, double factor) {
        return withElements(elements.stream().map(e -> e.withTerms(e.terms().stream()
            .map(t -> cause.isOf(e, t) ? t.scaled(factor) : t).toList())).toList());
    }

    /** Questions the other way round: what must the elements be like to meet a target. */
    public InverseDesign toMeet(PercentOfSpan target, Coverage coverage) {
        return new InverseDesign(this, target, coverage);
    }

    @Override
    public String toString() {
        return elements.stream().map(ChainElement::name).collect(Collectors.joining(" \u2192 "))
            + ambient.map(a -> ", " + a).orElse("");
    }
}
