package spanwright.loop;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * What a panel draws from each supply. Every circuit counts with the current it is asked for, whether or not
 * it is short of voltage, so that each figure is an upper bound of a steady state.
 *
 * @param panel its name
 * @param rows  one for each supply
 */
public record PanelLoad(String panel, List<Row> rows) {
    /** Current at which limits in the manner of NE 43 call a failure upscale, in mA. */
    public static final double NE43_HIGH_MILLIAMPS = 21;

    /**
     * A supply.
     *
     * @param supply   its name
     * @param circuits how many circuits of the panel it feeds
     * @param currents drawn from it
     * @param ratedMilliamps  what it can give in all, if stated
     * @param inrushMilliamps peak when the panel is switched on; empty if a module does not state its own
     * @param mainsMilliwatts largest power from the mains over the three corners, every loop at its upscale
     *                        failure current; empty if the efficiency is not stated
     */
    public record Row(String supply, int circuits, Currents currents, OptionalDouble ratedMilliamps,
                      OptionalDouble inrushMilliamps, OptionalDouble mainsMilliwatts) {
        /** Checks the components. */
        public Row {
            Checks.notBlank("supply", supply);
            Checks.atLeast("number of circuits", circuits, 0);
            Objects.requireNonNull(currents, "currents");
            Objects.requireNonNull(ratedMilliamps, "ratedMilliamps");
            Objects.requireNonNull(inrushMilliamps, "inrushMilliamps");
            Objects.requireNonNull(mainsMilliwatts, "mainsMilliwatts");
        }

        /** What is left of the rating in the worst corner, in mA; below 0 it is exceeded. */
        public OptionalDouble marginMilliamps() {
            return ratedMilliamps.isEmpty() ? OptionalDouble.empty()
                : OptionalDouble.of(ratedMilliamps.getAsDouble() - currents.worstMilliamps);
        }

        /** The load of the worst corner in percent of the rating. */
        public OptionalDouble percentOfRating() {
            return ratedMilliamps.isEmpty() ? OptionalDouble.empty()
                : OptionalDouble.of(100 * currents.worstMilliamps / ratedMilliamps.getAsDouble());
        }

        /** Whether the rating holds in the worst corner. */
        public LoopChecks.Item check() {
            final String drawn = supply + " gives up to " + NumberText.plain(currents.worstMilliamps, 6)
                + " mA with every loop at its upscale failure current";
            if (ratedMilliamps.isEmpty()) {
                return new LoopChecks.Item("rated current", LoopChecks.Outcome.NOT_DETERMINED,
                    drawn + "; its rating is not stated");
            }
            final boolean allowed = marginMilliamps().getAsDouble() >= 0;
            return new LoopChecks.Item("rated current", allowed ? LoopChecks.Outcome.ALLOWED
                : LoopChecks.Outcome.REFUSED, drawn + ", " + (allowed ? "within" : "above")
                    + " its rating of " + NumberText.plain(ratedMilliamps.getAsDouble(), 6) + " mA ("
                    + NumberText.fixed(percentOfRating().getAsDouble(), 0) + " %)");
        }

        @Override
        public String toString() {
            return check().toString() + "; at 20 mA " + NumberText.plain(currents.fullScaleMilliamps, 6)
                + " mA, at 21 mA " + NumberText.plain(currents.failureHighMilliamps, 6) + " mA; inrush "
                + (inrushMilliamps.isPresent() ? NumberText.plain(inrushMilliamps.getAsDouble(), 6) + " mA"
                    : "not determined");
        }
    }

    /**
     * Currents drawn from a supply, modules and others on it included, in mA.
     *
     * @param fullScaleMilliamps   every loop at 20 mA, all else nominal
     * @param failureHighMilliamps every loop at 21 mA, all else nominal
     * @param worstMilliamps       every loop at its upscale failure current, all else at its most
     */
    public record Currents(double fullScaleMilliamps, double failureHighMilliamps, double worstMilliamps) {
        /** Checks the components. */
        public Currents {
            Checks.notNegative("current at 20 mA in mA", fullScaleMilliamps);
            Checks.notNegative("current at 21 mA in mA", failureHighMilliamps);
            Checks.notNegative("current in the worst corner in mA", worstMilliamps);
        }
    }

    /** Checks the components and copies the list. */
    public PanelLoad {
        Checks.notBlank("name of the panel", panel);
        rows = List.copyOf(rows);
    }

    static PanelLoad of(Panel panel) {
        final List<PanelState> alarms = Stream.of(Corner.values()).map(panel::atAlarm)
            .filter(PanelState::isSolved).toList();
        final List<Row> rows = new ArrayList<>();
        for (Supply supply : panel.supplies()) {
            final List<Double> highs = panel.channels().stream().flatMap(c -> c.loop().circuit().all()
                .filter(i -> i.source().filter(supply::equals).isPresent())
                .map(i -> c.loop().transmitter().limits().failHighMilliamps())).toList();
            final Toleranced other = supply.shared().otherMilliamps();
            final List<IsolatorModule.Draw> draws = panel.modules().stream().flatMap(m -> m.draw().stream())
                .filter(d -> d.supply().equals(supply)).toList();
            final double nominal = other.nominal() + draws.stream().mapToDouble(d -> d.milliamps().nominal())
                .sum();
            final double loops = highs.stream().mapToDouble(Double::doubleValue).sum();
            final double most = loops + other.most() + draws.stream().mapToDouble(d -> d.milliamps().most())
                .sum();
            rows.add(new Row(supply.name(), highs.size(), new Currents(20.0 * highs.size() + nominal,
                NE43_HIGH_MILLIAMPS * highs.size() + nominal, most), supply.shared().ratedMilliamps(),
                inrush(draws, loops + other.most()), mains(alarms, supply)));
        }
        return new PanelLoad(panel.name(), rows);
    }

    /** Modules at their peak, loops at their upscale failure current. */
    private static OptionalDouble inrush(List<IsolatorModule.Draw> draws, double rest) {
        return draws.stream().anyMatch(d -> d.inrushMilliamps().isEmpty()) ? OptionalDouble.empty()
            : OptionalDouble.of(rest + draws.stream().mapToDouble(d -> d.inrushMilliamps().getAsDouble())
                .sum());
    }

    private static OptionalDouble mains(List<PanelState> states, Supply supply) {
        return supply.shared().efficiencyPercent().isEmpty() ? OptionalDouble.empty()
            : states.stream().mapToDouble(s -> s.supply(supply.name()).mainsMilliwatts().orElseThrow()).max();
    }

    /** A supply, by name. */
    public Row row(String supply) {
        return rows.stream().filter(r -> r.supply().equals(supply)).findFirst()
            .orElseThrow(() -> new IllegalArgumentException("no supply of " + panel + " is named " + supply));
    }

    /** The ratings checked. */
    public LoopChecks checks() {
        return new LoopChecks(panel, rows.stream().map(Row::check).toList());
    }

    @Override
    public String toString() {
        return "Supply load of " + panel
            + rows.stream().map(r -> "\n  " + r).collect(Collectors.joining());
    }
}
