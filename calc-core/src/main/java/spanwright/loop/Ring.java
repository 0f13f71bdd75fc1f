package spanwright.loop;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;

/**
 * The way of the current round a circuit, from the plus of its source to the minus. A cable leads out to what
 * follows it, as far as the transmitter or else to the end, and back from there.
 */
final class Ring {
    private final Circuit circuit;
    private final double current;
    private final Pick pick;
    private final List<ElementState> states = new ArrayList<>();
    private double potential;

    Ring(Circuit circuit, double current, Pick pick, double sourceVolts) {
        this.circuit = circuit;
        this.current = current;
        this.pick = pick;
        this.potential = sourceVolts;
    }

    /** Potentials at every terminal; a passive driver has so many volts across it. */
    List<ElementState> walk(double driverVolts) {
        for (Step step : steps(circuit)) {
            final double volts;
            if (step.element == circuit.driver()) {
                volts = driverVolts;
            } else {
                final double whole = Drops.of(step.element, pick).at(current);
                volts = step.element instanceof Cable ? whole / 2 : whole;
            }
            states.add(new ElementState(step.element.name(), step.part, current, potential,
                potential - volts));
            potential -= volts;
        }
        return states;
    }

    /**
     * An element or a core on the way.
     *
     * @param element which
     * @param part    of it
     */
    record Step(LoopElement element, ElementState.Part part) { }

    /** The elements and cores in the order in which the current meets them. */
    static List<Step> steps(Circuit circuit) {
        final List<Step> steps = new ArrayList<>();
        final Deque<Cable> open = new ArrayDeque<>();
        final boolean passiveOutput = circuit.driver() instanceof Isolator && !circuit.isActive()
            && !((Isolator) circuit.driver()).nests();
        if (passiveOutput) {
            steps.add(new Step(circuit.driver(), ElementState.Part.OUTPUT));
        }
        for (LoopElement element : circuit.ring()) {
            if (element instanceof Cable cable) {
                steps.add(new Step(cable, ElementState.Part.CORE_OUT));
                open.push(cable);
            } else if (element == circuit.driver()) {
                if (!circuit.isActive()) {
                    steps.add(new Step(element, ElementState.Part.WHOLE));
                    closeAll(open, steps);
                }
            } else {
                steps.add(new Step(element, element instanceof Isolator ? ElementState.Part.INPUT
                    : ElementState.Part.WHOLE));
            }
        }
        closeAll(open, steps);
        return steps;
    }

    private static void closeAll(Deque<Cable> open, List<Step> steps) {
        while (!open.isEmpty()) {
            steps.add(new Step(open.pop(), ElementState.Part.CORE_BACK));
        }
    }
}
