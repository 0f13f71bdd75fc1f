package spanwright.loop;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.Collectors;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * Voltage needed and voltage to spare over the currents that matter.
 *
 * @param loop its name
 * @param rows by ascending current
 */
public record LoopMargins(String loop, List<Row> rows) {
    private static final List<Double> CURRENTS = List.of(3.6, 4.0, 12.0, 20.0, 20.5, 22.0, 22.5);

    /**
     * One current.
     *
     * @param milliamps     the current
     * @param requiredVolts what the transmitter's circuit needs, nominal
     * @param nominalVolts  to spare where it is least, nominal
     * @param worstVolts    to spare where it is least, every limit against it
     */
    public record Row(double milliamps, double requiredVolts, double nominalVolts, double worstVolts) {
        /** Checks the components. */
        public Row {
            Checks.finite("current in mA", milliamps);
            Checks.finite("required voltage in V", requiredVolts);
            Checks.finite("nominal margin in V", nominalVolts);
            Checks.finite("worst margin in V", worstVolts);
        }

        @Override
        public String toString() {
            return String.format(java.util.Locale.ROOT,
                "%5s mA: %6s V needed, margin %6s V nominal, %6s V worst case",
                NumberText.plain(milliamps, 4), NumberText.fixed(requiredVolts, 2),
                NumberText.signed(nominalVolts, 2), NumberText.signed(worstVolts, 2));
        }
    }

    /** Checks the components and copies the list. */
    public LoopMargins {
        Checks.notBlank("name of the loop", loop);
        rows = List.copyOf(rows);
    }

    static LoopMargins of(CurrentLoop loop) {
        final TreeSet<Double> currents = new TreeSet<>(CURRENTS);
        currents.add(loop.transmitter().limits().failLowMilliamps());
        currents.add(loop.transmitter().limits().failHighMilliamps());
        final List<Row> rows = new ArrayList<>();
        for (double current : currents) {
            rows.add(new Row(current, loop.requiredVolts(current, Corner.NOMINAL),
                loop.marginVolts(current, Corner.NOMINAL), loop.marginVolts(current, Corner.LEAST_VOLTAGE)));
        }
        return new LoopMargins(loop.name(), rows);
    }

    @Override
    public String toString() {
        return "Voltages of " + loop + rows.stream().map(r -> "\n" + r).collect(Collectors.joining());
    }
}
