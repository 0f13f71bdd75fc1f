package spanwright.loop;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeSet;
import java.util.stream.Collectors;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * Heat of a panel over the currents that matter and the three corners. The largest heat need not stand at the
 * largest current: an output that gives less keeps more.
 *
 * @param panel its name
 * @param rows  by ascending current, for each the corners
 */
public record PanelHeat(String panel, List<Row> rows) {
    private static final List<Double> CURRENTS = List.of(3.6, 4.0, 8.0, 12.0, 16.0, 20.0, 21.0, 22.5);

    /**
     * Every loop at one current, at one corner.
     *
     * @param milliamps         the current
     * @param corner            which limits of the parameters count
     * @param cabinetMilliwatts heat in the cabinet; empty if a part is not determined or there is no solution
     * @param fieldMilliwatts   heat in the field; empty likewise
     * @param inMilliwatts      taken from mains and own supplies of devices; empty likewise
     */
    public record Row(double milliamps, Corner corner, OptionalDouble cabinetMilliwatts,
                      OptionalDouble fieldMilliwatts, OptionalDouble inMilliwatts) {
        /** Checks the components. */
        public Row {
            Checks.finite("current in mA", milliamps);
            Objects.requireNonNull(corner, "corner");
            Objects.requireNonNull(cabinetMilliwatts, "cabinetMilliwatts");
            Objects.requireNonNull(fieldMilliwatts, "fieldMilliwatts");
            Objects.requireNonNull(inMilliwatts, "inMilliwatts");
        }

        private static Row of(PanelState state, double milliamps) {
            return state.isSolved() ? new Row(milliamps, state.corner(), state.cabinetHeatMilliwatts(),
                state.fieldHeatMilliwatts(), state.power().inMilliwatts())
                : new Row(milliamps, state.corner(), OptionalDouble.empty(), OptionalDouble.empty(),
                    OptionalDouble.empty());
        }

        @Override
        public String toString() {
            return NumberText.plain(milliamps, 4) + " mA, " + corner + ": cabinet "
                + PowerBalance.watts(cabinetMilliwatts) + ", field " + PowerBalance.watts(fieldMilliwatts)
                + ", taken in all " + PowerBalance.watts(inMilliwatts);
        }
    }

    /** Checks the components and copies the list. */
    public PanelHeat {
        Checks.notBlank("name of the panel", panel);
        rows = List.copyOf(rows);
    }

    static PanelHeat of(Panel panel) {
        final TreeSet<Double> currents = new TreeSet<>(CURRENTS);
        panel.channels().forEach(c -> currents.add(c.loop().transmitter().limits().failHighMilliamps()));
        final List<Row> rows = new ArrayList<>();
        for (double current : currents) {
            for (Corner corner : Corner.values()) {
                rows.add(Row.of(panel.at(current, corner), current));
            }
        }
        return new PanelHeat(panel.name(), rows);
    }

    /** Where the cabinet is hottest of the states looked at; empty if a heat is not determined. */
    public Optional<Row> hottest() {
        return rows.stream().anyMatch(r -> r.cabinetMilliwatts.isEmpty()) ? Optional.empty()
            : rows.stream().max(Comparator.comparingDouble(r -> r.cabinetMilliwatts.getAsDouble()));
    }

    @Override
    public String toString() {
        return hottest().map(r -> "The cabinet of " + panel + " is hottest at " + r)
            .orElse("The largest heat in the cabinet of " + panel + " is not determined")
            + rows.stream().map(r -> "\n  " + r).collect(Collectors.joining());
    }
}
