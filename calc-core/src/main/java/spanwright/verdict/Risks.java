package spanwright.verdict;

import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * The risks over a population that go with a verdict.
 *
 * @param point      at the deciding point alone; absent if no population was given
 * @param instrument of the instrument with all its points; absent if it was not simulated
 */
public record Risks(Optional<GlobalRisk> point, Optional<InstrumentRisk> instrument) {
    /** No population was given. */
    public static final Risks NONE = new Risks(Optional.empty(), Optional.empty());

    /** Checks the components. */
    public Risks {
        Objects.requireNonNull(point, "point");
        Objects.requireNonNull(instrument, "instrument");
    }

    /** The risks of judged points, the deciding one first; those that cannot be had stay absent. */
    static Risks of(List<JudgedPoint> points, Population population) {
        final List<JudgedPoint> ready = points.stream()
            .filter(p -> p.acceptance().filter(a -> a.unmet().isEmpty()).isPresent()).toList();
        if (ready.isEmpty() || ready.get(0) != points.get(0)) {
            return NONE;
        }
        final Optional<InstrumentRisk> instrument = ready.size() < points.size() ? Optional.empty()
            : population.dependence().map(d -> simulate(ready, (NormalPrior) population.prior(), d));
        final JudgedPoint first = ready.get(0);
        return new Risks(Optional.of(GlobalRisk.of(population.prior(), first.limit().orElseThrow(),
            first.acceptance().orElseThrow(), first.finding().uncertainty().orElseThrow().u())), instrument);
    }

    private static InstrumentRisk simulate(List<JudgedPoint> points, NormalPrior prior,
                                           Population.Dependence dependence) {
        return InstrumentRisk.simulate(points.stream().map(p -> new InstrumentPoint(p.finding().point(),
                p.limit().orElseThrow(), p.acceptance().orElseThrow(),
                p.finding().uncertainty().orElseThrow().u())).toList(),
            NormalInstruments.alike(points.size(), prior, dependence.trueErrors()),
            PointCorrelation.equal(points.size(), dependence.measurements()), dependence.trials(),
            dependence.seed());
    }
}
