package spanwright.loop;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * A nest: one device that sets the current, one source of energy, and everything that lives on it, through
 * input-loop-powered isolators however deep.
 *
 * @param name   as it is called in results
 * @param supply where the driver is passive
 * @param driver the transmitter, output card or isolator output that sets the current
 * @param ring   elements in wiring order; holds the driver if it is a transmitter
 */
record Circuit(String name, Optional<Supply> supply, LoopElement driver, List<LoopElement> ring) {
    static Circuit of(String name, Optional<Supply> supply, List<LoopElement> elements) {
        final LoopElement driver = elements.stream().filter(Transmitter.class::isInstance).findFirst()
            .orElseThrow();
        return new Circuit(name, energy(supply, elements), driver, elements);
    }

    /** The circuit behind an isolator that ends the nest. */
    static Circuit behind(Isolator isolator) {
        final List<LoopElement> fed = isolator.output().fed();
        return new Circuit("output of " + isolator.name(), energy(isolator.output().supply(), fed), isolator,
            fed);
    }

    private static Optional<Supply> energy(Optional<Supply> supply, List<LoopElement> elements) {
        return supply.or(() -> elements.stream().filter(Burden.class::isInstance)
            .flatMap(e -> ((Burden) e).traits().ownSupply().stream()).findFirst());
    }

    /** Isolators that live on this circuit's current, outermost first. */
    Stream<Isolator> isolators() {
        return nested(ring);
    }

    private static Stream<Isolator> nested(List<LoopElement> elements) {
        return elements.stream().filter(Isolator.class::isInstance).map(Isolator.class::cast)
            .flatMap(i -> i.nests() ? Stream.concat(Stream.of(i), nested(i.output().fed())) : Stream.of(i));
    }

    /** This circuit and all behind it. */
    Stream<Circuit> all() {
        return Stream.concat(Stream.of(this), isolators().filter(i -> !i.nests()).map(Circuit::behind)
            .flatMap(Circuit::all));
    }

    /** The supply that feeds it; none where its driver does. */
    Optional<Supply> source() {
        return isActive() ? Optional.empty() : supply;
    }

    boolean isActive() {
        return driver instanceof Transmitter t ? t.kind().isActive()
            : ((Isolator) driver).kind() == Isolator.Kind.SEPARATELY_POWERED;
    }

    /** What there is: the supply, or the compliance of an active driver. */
    PiecewiseLine available(Pick pick) {
        return isActive() ? driverCurve(pick) : SupplyCurve.of(supply.orElseThrow(), pick);
    }

    /** What the driver itself needs: the lift-off of a passive one. */
    PiecewiseLine lift(Pick pick) {
        return isActive() ? PiecewiseLine.line(0, 0) : driverCurve(pick);
    }

    private PiecewiseLine driverCurve(Pick pick) {
        return driver instanceof Transmitter t ? t.curve(pick) : ((Isolator) driver).outputCurve(pick);
    }

    /** What all else takes. */
    PiecewiseLine burden(Pick pick) {
        return ring.stream().filter(e -> e != driver).map(e -> Drops.of(e, pick))
            .reduce(PiecewiseLine.line(0, 0), PiecewiseLine::plus);
    }

    PiecewiseLine margin(Pick pick) {
        return available(pick).minus(burden(pick)).minus(lift(pick));
    }

    /**
     * Margin of each place where the current may be cut short: the circuit itself, and clamped outputs in it.
     */
    Stream<Headroom> headrooms(Pick pick) {
        return Stream.concat(Stream.of(new Headroom(this, driver.name(), margin(pick))),
            isolators().filter(i -> i.nests() && i.output().clampVolts().isPresent())
                .map(i -> new Headroom(this,
                i.name(), PiecewiseLine.line(i.output().clampVolts().getAsDouble(), 0)
                    .minus(i.loadCurve(pick)))));
    }

    /**
     * Voltage left at a place where the current may be cut short.
     *
     * @param circuit where
     * @param at      the device that runs out of voltage
     * @param margin  in V over the current; below 0 it does not carry the current
     */
    record Headroom(Circuit circuit, String at, PiecewiseLine margin) { }
}
