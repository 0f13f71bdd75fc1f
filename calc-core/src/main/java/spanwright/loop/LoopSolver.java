package spanwright.loop;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import spanwright.quantity.NumberText;

/** Solves a loop at a current. Used once. */
final class LoopSolver {
    private final String loop;
    private final Pick pick;
    private final List<CircuitState> circuits = new ArrayList<>();
    private final List<ReceiverReading> readings = new ArrayList<>();
    private final List<ElementPower> powers = new ArrayList<>();
    private final List<SupplyPower> supplies = new ArrayList<>();
    private String reason = "";

    LoopSolver(String loop, Pick pick) {
        this.loop = loop;
        this.pick = pick;
    }

    LoopState solve(Circuit root, double demanded, Corner corner) {
        final boolean solved = solve(root, demanded);
        if (!solved) {
            return new LoopState(loop, demanded, corner, List.of(), List.of(),
                new PowerBalance(loop, List.of(), List.of()), "No solution: "
                + reason);
        }
        return new LoopState(loop, demanded, corner, circuits, readings,
            new PowerBalance(loop, powers, supplies), sentence(demanded));
    }

    private String sentence(double demanded) {
        final CircuitState worst = circuits.stream().filter(CircuitState::isShort).findFirst()
            .orElse(circuits.get(0));
        final String asked = NumberText.plain(demanded, 5) + " mA";
        final double margin = worst.budget().marginVolts();
        if (worst.isShort()) {
            return loop + " does not carry " + asked + ": " + worst.name() + " is short of "
                + NumberText.fixed(-margin, 2) + " V and stops at " + NumberText.fixed(worst.milliamps(), 2)
                + " mA.";
        }
        return loop + " carries " + asked + ": " + worst.source() + " gives "
            + NumberText.fixed(worst.budget().availableVolts(), 2) + " V, "
            + NumberText.fixed(worst.budget().requiredVolts(), 2) + " V are needed, "
            + NumberText.fixed(margin, 2) + " V to spare.";
    }

    private boolean solve(Circuit circuit, double demanded) {
        final PiecewiseLine available = circuit.available(pick);
        final PiecewiseLine burden = circuit.burden(pick);
        final PiecewiseLine lift = circuit.lift(pick);
        final PiecewiseLine margin = available.minus(burden).minus(lift);
        final OptionalDouble attained = margin.largestNotNegative(demanded);
        if (attained.isEmpty()) {
            reason = circuit.name() + " cannot carry " + NumberText.plain(demanded, 5)
                + " mA or any lower current: at "
                + "0 mA " + NumberText.fixed(available.at(0), 2) + " V are there and "
                + NumberText.fixed(burden.at(0) + lift.at(0), 2) + " V are needed; at "
                + NumberText.plain(demanded, 5) + " mA " + NumberText.fixed(available.at(demanded), 2)
                    + " V and "
                + NumberText.fixed(burden.at(demanded) + lift.at(demanded), 2) + " V.";
            return false;
        }
        final double current = attained.getAsDouble();
        final String source = circuit.isActive() ? circuit.driver().name()
            : circuit.supply().orElseThrow().name();
        final CircuitState.Budget budget = new CircuitState.Budget(available.at(demanded),
            burden.at(demanded) + lift.at(demanded));
        final double across = available.at(current) - burden.at(current);
        final double top = circuit.isActive() ? burden.at(current) : available.at(current);
        final Ring ring = new Ring(circuit, current, pick, top);
        final int place = circuits.size();
        circuits.add(new CircuitState(circuit.name(), source, demanded, current, budget, ring.walk(across)));
        driverPower(circuit, current, across, top);
        circuit.source().ifPresent(s -> supplies.add(SupplyCurve.power(s, pick, current)));
        return follow(circuit.ring(), current) && place >= 0;
    }

    private void driverPower(Circuit circuit, double current, double across, double top) {
        if (circuit.driver() instanceof Transmitter t) {
            powers.add(circuit.isActive()
                ? new ElementPower(t.name(), t.kind() == Transmitter.Kind.OUTPUT_CARD, 0,
                    OptionalDouble.of((across + top) * current), top * current)
                : ElementPower.passive(t.name(), false, across * current));
        }
    }

    /** What stands behind each element of a ring, and the power of each. */
    private boolean follow(List<LoopElement> ring, double current) {
        boolean solved = true;
        for (LoopElement element : ring) {
            if (element instanceof Burden burden) {
                if (burden.kind().reads()) {
                    readings.add(ReceiverReading.of(burden.name(), current));
                }
                powers.add(ElementPower.passive(burden.name(), burden.kind() != Burden.Kind.FIELD_DEVICE,
                    Drops.of(burden, pick).at(current) * current));
            } else if (element instanceof Cable cable) {
                powers.add(ElementPower.passive(cable.name(), false,
                    Drops.of(cable, pick).at(current) * current));
            } else if (element instanceof Isolator isolator) {
                solved &= isolator.nests() ? nested(isolator, current) : ended(isolator, current);
            }
        }
        return solved;
    }

    private boolean nested(Isolator isolator, double current) {
        final PiecewiseLine load = isolator.loadCurve(pick);
        final OptionalDouble clamp = isolator.output().clampVolts();
        final double out = clamp.isEmpty() ? current
            : PiecewiseLine.line(clamp.getAsDouble(), 0).minus(load).largestNotNegative(current).orElse(0);
        final Circuit circuit = new Circuit("output of " + isolator.name(), java.util.Optional.empty(),
            isolator, isolator.output().fed());
        final double taken = Drops.of(isolator, pick).at(current) * current;
        final double top = load.at(out);
        circuits.add(new CircuitState(circuit.name(), isolator.name(), current, out,
            new CircuitState.Budget(clamp.orElse(load.at(current)), load.at(current)),
            new Ring(circuit, out, pick, top).walk(0)));
        powers.add(
            new ElementPower(isolator.name(), true, taken, isolator.traits().ownMilliwatts(), top * out));
        return follow(isolator.output().fed(), out);
    }

    private boolean ended(Isolator isolator, double current) {
        final Circuit circuit = Circuit.behind(isolator);
        final int place = circuits.size();
        final double taken = Drops.of(isolator, pick).at(current) * current;
        if (!solve(circuit, current)) {
            return false;
        }
        final CircuitState state = circuits.get(place);
        // What an output-loop-powered output takes from its own loop becomes heat in it; a source gives.
        final double exchanged = circuit.isActive() ? state.sourceVolts() * state.milliamps()
            : -state.elements().stream().filter(e -> e.part() == ElementState.Part.OUTPUT)
                .mapToDouble(ElementState::milliwatts).sum();
        powers.add(new ElementPower(isolator.name(), true,
            taken + Math.max(0, -exchanged), isolator.traits().ownMilliwatts(), Math.max(0, exchanged)));
        return true;
    }
}
