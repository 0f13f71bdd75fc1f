package spanwright.loop;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.UnaryOperator;
import spanwright.quantity.Checks;
import spanwright.uncertainty.MonteCarlo;

/**
 * A 4-20 mA loop as a circuit. Immutable.
 *
 * <pre>{@code
 * CurrentLoop.of("LT-101", Supply.volts(24).tolerance(10),
 *     Cable.copper(1.0).metres(600).at(degC(60)),
 *     Transmitter.twoWire("LT-101", 12),
 *     Isolator.inputLoopPowered("LT-101A", 3.5).feeding(Burden.receiver("input card", 250)))
 * }</pre>
 *
 * @param name     of the loop
 * @param supply   where the transmitter is passive and no receiver powers it
 * @param elements in wiring order, from the supply outward
 */
public record CurrentLoop(String name, Optional<Supply> supply, List<LoopElement> elements) {
    /** Lowest current that is asked about: the usual downscale alarm, in mA. */
    public static final double LOW_MILLIAMPS = 3.6;
    /** Current the loop must carry unless said otherwise: the usual upscale alarm, in mA. */
    public static final double HIGH_MILLIAMPS = 22.5;

    /** Checks the wiring and copies the list. */
    public CurrentLoop {
        Checks.notBlank("name of the loop", name);
        Objects.requireNonNull(supply, "supply");
        elements = List.copyOf(elements);
        Pairing.check(name, supply, elements);
    }

    /**
     * A loop with a supply.
     *
     * @throws IllegalPairingException if the wiring cannot work
     */
    public static CurrentLoop of(String name, Supply supply, LoopElement... elements) {
        return new CurrentLoop(name, Optional.of(supply), List.of(elements));
    }

    /**
     * A loop that an active output or a powered receiver feeds.
     *
     * @throws IllegalPairingException if the wiring cannot work
     */
    public static CurrentLoop of(String name, LoopElement... elements) {
        return new CurrentLoop(name, Optional.empty(), List.of(elements));
    }

    /** This loop with more elements at its end: a second receiver, a meter, an isolator tapped into it. */
    public CurrentLoop with(LoopElement... more) {
        final List<LoopElement> all = new ArrayList<>(elements);
        all.addAll(List.of(more));
        return new CurrentLoop(name, supply, all);
    }

    /** This loop on another supply. */
    public CurrentLoop on(Supply other) {
        return new CurrentLoop(name, Optional.of(other), elements);
    }

    /**
     * This loop with one element exchanged, wherever it stands.
     *
     * @throws IllegalArgumentException if no element has the name
     */
    public CurrentLoop exchanging(String element, UnaryOperator<LoopElement> change) {
        if (Pairing.all(elements).noneMatch(e -> e.name().equals(element))) {
            throw new IllegalArgumentException("no element of " + name + " is named " + element
                + "; there are "
                + Pairing.all(elements).map(LoopElement::name).toList());
        }
        return new CurrentLoop(name, supply, exchanged(elements, element, change));
    }

    private static List<LoopElement> exchanged(List<LoopElement> list, String name,
                                               UnaryOperator<LoopElement> change) {
        return list.stream().map(e -> {
            if (e.name().equals(name)) {
                return change.apply(e);
            }
            return e instanceof Isolator i
                ? i.withOutput(i.output().withFed(exchanged(i.output().fed(), name, change)))
                : e;
        }).toList();
    }

    /** This loop with every supply exchanged, at any depth. */
    CurrentLoop exchangingSupplies(UnaryOperator<Supply> change) {
        return new CurrentLoop(name, supply.map(change), suppliesExchanged(elements, change));
    }

    private static List<LoopElement> suppliesExchanged(List<LoopElement> list, UnaryOperator<Supply> change) {
        return list.stream().map(e -> {
            if (e instanceof Isolator i) {
                return i.withOutput(i.output().withFed(suppliesExchanged(i.output().fed(), change))
                    .withSupply(i.output().supply().map(change)));
            }
            return e instanceof Burden b ? b.withOwnSupply(b.traits().ownSupply().map(change)) : e;
        }).toList();
    }

    /** The loop at a current, all parameters nominal. */
    public LoopState at(double milliamps) {
        return at(milliamps, Corner.NOMINAL);
    }

    /** The loop at a current of 0 to 50 mA, at a corner. */
    public LoopState at(double milliamps, Corner corner) {
        Checks.within("current in mA", milliamps, 0, PiecewiseLine.END);
        return new LoopSolver(name, Pick.of(corner)).solve(circuit(), milliamps, corner);
    }

    /** Voltage the circuit of the transmitter needs at a current, in V. */
    public double requiredVolts(double milliamps, Corner corner) {
        final Pick pick = Pick.of(corner);
        return circuit().burden(pick).plus(circuit().lift(pick)).at(milliamps);
    }

    /** Voltage the circuit of the transmitter has at a current, in V. */
    public double availableVolts(double milliamps, Corner corner) {
        return circuit().available(Pick.of(corner)).at(milliamps);
    }

    /**
     * Voltage to spare at a current where it is least in all the circuits, in V; below 0 it is not reached.
     */
    public double marginVolts(double milliamps, Corner corner) {
        final Pick pick = Pick.of(corner);
        return circuit().all().flatMap(c -> c.headrooms(pick)).mapToDouble(h -> h.margin().at(milliamps))
            .min()
            .orElseThrow();
    }

    /** Margins over the currents that matter, nominal and worst case. */
    public LoopMargins margins() {
        return LoopMargins.of(this);
    }

    /** Lowest and largest current the loop can carry at a corner, and what limits it. */
    public LoopReach reach(Corner corner) {
        return LoopReach.of(this, corner);
    }

    /** What a receiver reads over the current asked for, nominal: with the knee, if there is one. */
    public KneeCurve readingOf(String receiver) {
        return KneeCurve.of(this, receiver, Corner.NOMINAL);
    }

    /** What each receiver reads with each fault, the process asking for a current. */
    public FaultTable faults(double milliamps) {
        return FaultTable.of(this, milliamps);
    }

    /** What the loop allows if one thing at a time is changed, all limits against it. */
    public LoopInverse inverse() {
        return LoopInverse.of(this);
    }

    /** Checks of the limits that the data sheets state. */
    public LoopChecks checks() {
        return LoopChecks.of(this);
    }

    /** Will it reach the current it must carry? */
    public LoopAnswer answer() {
        return LoopAnswer.of(this);
    }

    /** Voltage to spare at a current as a distribution, the parameters drawn between their limits. */
    public MarginDistribution marginDistribution(double milliamps, MonteCarlo settings) {
        return MarginDistribution.of(this, milliamps, settings);
    }

    Circuit circuit() {
        return Circuit.of(name, supply, elements);
    }

    /** The transmitter or output card. */
    public Transmitter transmitter() {
        return (Transmitter) circuit().driver();
    }

    @Override
    public String toString() {
        final StringBuilder out = new StringBuilder(name + supply.map(s -> ", " + s).orElse(""));
        Pairing.all(elements).forEach(e -> out.append("\n  ").append(e));
        return out.toString();
    }
}
