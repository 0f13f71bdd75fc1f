package spanwright.loop;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;
import spanwright.uncertainty.InputQuantity;
import spanwright.uncertainty.MeasurementModel;
import spanwright.uncertainty.MonteCarlo;
import spanwright.uncertainty.MonteCarloResult;
import spanwright.uncertainty.Rectangular;

/**
 * Voltage to spare at a current as a distribution. Every parameter with limits is drawn between them, all
 * values equally likely and independent; the ripple stands at its trough, as it does in every period.
 *
 * @param loop      its name
 * @param milliamps the current
 * @param result    what the Monte Carlo run found, in V
 */
public record MarginDistribution(String loop, double milliamps, MonteCarloResult result) {
    /** Checks the components. */
    public MarginDistribution {
        Checks.notBlank("name of the loop", loop);
        Checks.finite("current in mA", milliamps);
        Objects.requireNonNull(result, "result");
    }

    static MarginDistribution of(CurrentLoop loop, double milliamps, MonteCarlo settings) {
        Checks.within("current in mA", milliamps, 0, PiecewiseLine.END);
        final List<Circuit> circuits = loop.circuit().all().toList();
        final Inventory inventory = new Inventory();
        margin(circuits, inventory, milliamps);
        if (inventory.ranges.isEmpty()) {
            throw new IllegalArgumentException(loop.name()
                + " has no parameter with limits: its margin is one figure, see marginVolts");
        }
        final List<InputQuantity> inputs = new ArrayList<>();
        inventory.ranges.forEach((what, range) -> inputs.add(InputQuantity.of(what,
            new Rectangular(range.least(), range.most()))));
        final int[] places = inventory.order.stream().mapToInt(Integer::intValue).toArray();
        final MeasurementModel model = MeasurementModel.of("margin of " + loop.name() + " at "
            + NumberText.plain(milliamps, 5) + " mA", "V", inputs,
            x -> margin(circuits, new Trial(x, places), milliamps));
        return new MarginDistribution(loop.name(), milliamps, model.monteCarlo(settings));
    }

    private static double margin(List<Circuit> circuits, Pick pick, double milliamps) {
        double least = Double.MAX_VALUE;
        for (Circuit circuit : circuits) {
            for (Circuit.Headroom place : circuit.headrooms(pick).toList()) {
                least = Math.min(least, place.margin().at(milliamps));
            }
        }
        return least;
    }

    /** Notes which parameters have limits, and in which order they are asked for. */
    private static final class Inventory implements Pick {
        private final Map<String, Toleranced> ranges = new LinkedHashMap<>();
        private final List<String> names = new ArrayList<>();
        private final List<Integer> order = new ArrayList<>();

        @Override
        public double drop(String what, Toleranced value) {
            if (value.isUncertain()) {
                if (ranges.put(what, value) == null) {
                    names.add(what);
                }
                order.add(names.indexOf(what));
            }
            return value.nominal();
        }

        @Override
        public double push(String what, Toleranced value) {
            return drop(what, value);
        }

        @Override
        public double ripple(double peakVolts) {
            return -peakVolts;
        }
    }

    /** The values of one trial, in the order in which they are asked for. */
    private static final class Trial implements Pick {
        private final double[] values;
        private final int[] places;
        private int next;

        Trial(double[] values, int[] places) {
            this.values = values;
            this.places = places;
        }

        @Override
        public double drop(String what, Toleranced value) {
            return value.isUncertain() ? values[places[next++]] : value.nominal();
        }

        @Override
        public double push(String what, Toleranced value) {
            return drop(what, value);
        }

        @Override
        public double ripple(double peakVolts) {
            return -peakVolts;
        }
    }

    /** Share of the trials in which the current is not reached. */
    public double probabilityShort() {
        return result.cumulative(0);
    }

    @Override
    public String toString() {
        return loop + " at " + NumberText.plain(milliamps, 5) + " mA: margin "
            + NumberText.fixed(result.mean(), 2)
            + " V, 95 % of the trials between " + NumberText.fixed(result.interval(0.95).lower(), 2) + " and "
            + NumberText.fixed(result.interval(0.95).upper(), 2) + " V; short in "
            + NumberText.plain(100 * probabilityShort(), 3) + " % of " + result.trials() + " trials (seed "
            + result.seed() + ")";
    }
}
