package spanwright.loop;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** The voltage a supply gives over the current of one loop, the other loops on it drawing theirs. */
final class SupplyCurve {
    /** A unit with its diode: their voltage without load. */
    private record Source(double volts, double ohms, double diodeVolts) { }

    private SupplyCurve() { }

    static PiecewiseLine of(Supply supply, Pick pick) {
        final List<Source> sources = sources(supply, pick);
        final double others = others(supply, pick);
        final double sharedOhms = sharedOhms(supply, pick);
        final PiecewiseLine behindUnits = supply.arrangement() == Supply.Arrangement.PARALLEL
            ? parallel(sources, others) : series(sources, others);
        return behindUnits.minus(PiecewiseLine.ofOhms(sharedOhms * others / 1000, sharedOhms));
    }

    private static List<Source> sources(Supply supply, Pick pick) {
        final List<Source> sources = new ArrayList<>();
        for (int i = 0; i < supply.units().size(); i++) {
            final Supply.Unit unit = supply.units().get(i);
            final String name = supply.units().size() == 1 ? supply.name() : supply.name() + " unit " + (i
                + 1);
            final double diode = pick.drop(name + ": diode drop", unit.diodeVolts());
            final double volts = pick.push(name + ": voltage", unit.volts()) + pick.ripple(unit.rippleVolts())
                - diode;
            sources.add(new Source(volts, pick.drop(name + ": internal resistance", unit.ohms()), diode));
        }
        return sources;
    }

    private static double others(Supply supply, Pick pick) {
        return pick.drop(supply.name() + ": current of other loops", supply.shared().otherMilliamps());
    }

    private static double sharedOhms(Supply supply, Pick pick) {
        return pick.drop(supply.name() + ": shared resistance", supply.shared().ohms());
    }

    /** Power of a supply from which a loop takes a current, at most {@link PiecewiseLine#END}. */
    static SupplyPower power(Supply supply, Pick pick, double milliamps) {
        return power(supply, pick, milliamps, others(supply, pick), of(supply, pick).at(milliamps));
    }

    /** Power of a supply from which so much is taken at this voltage of its feed. */
    static SupplyPower power(Supply supply, Pick pick, double milliamps, double others, double volts) {
        final double total = milliamps + others;
        final double drop = sharedOhms(supply, pick) * total / 1000;
        final List<Source> sources = sources(supply, pick);
        double units = 0;
        double diodes = 0;
        for (Source source : sources) {
            final boolean series = supply.arrangement() != Supply.Arrangement.PARALLEL;
            final double current = series ? total : share(source, sources, volts + drop, total);
            final double terminal = source.volts + source.diodeVolts - source.ohms * current / 1000;
            units += terminal * current;
            diodes += source.diodeVolts * current;
        }
        return new SupplyPower(supply.name(), volts, new SupplyPower.Currents(milliamps, others), units,
            diodes, drop * total, supply.shared().efficiencyPercent());
    }

    /** Current of a unit in parallel; those without resistance that carry share the rest alike. */
    private static double share(Source source, List<Source> sources, double bus, double total) {
        if (source.ohms > 0) {
            return Math.max(0, (source.volts - bus) / source.ohms * 1000);
        }
        final double resistive = sources.stream().filter(s -> s.ohms > 0)
            .mapToDouble(s -> share(s, sources, bus, total)).sum();
        final double highest = sources.stream().filter(s -> s.ohms == 0).mapToDouble(Source::volts).max()
            .orElseThrow();
        final long alike = sources.stream().filter(s -> s.ohms == 0 && s.volts == highest).count();
        return source.volts == highest ? Math.max(0, total - resistive) / alike : 0;
    }

    private static PiecewiseLine series(List<Source> sources, double others) {
        double volts = 0;
        double ohms = 0;
        for (Source source : sources) {
            volts += source.volts;
            ohms += source.ohms;
        }
        return PiecewiseLine.ofOhms(volts - ohms * others / 1000, -ohms);
    }

    /**
     * The highest unit carries the load until its voltage has sunk to that of the next: knots of voltage over
     * total current, a unit without resistance holding its voltage whatever the current.
     */
    private static PiecewiseLine parallel(List<Source> sources, double others) {
        final List<Source> high = new ArrayList<>(sources);
        high.sort(Comparator.comparingDouble(Source::volts).reversed());
        final double end = others + PiecewiseLine.END;
        final List<double[]> knots = new ArrayList<>(List.of(new double[] {0, high.get(0).volts}));
        double siemens = 0;
        for (int k = 0; k < high.size(); k++) {
            final double[] last = knots.get(knots.size() - 1);
            if (high.get(k).ohms == 0) {
                knots.add(new double[] {Math.max(end, last[0]) + 1, last[1]});
                break;
            }
            siemens += 1 / high.get(k).ohms;
            final double next = k + 1 < high.size() ? high.get(k + 1).volts
                : last[1] - (Math.max(end, last[0]) + 1 - last[0]) / 1000 / siemens;
            if (next < last[1]) {
                knots.add(new double[] {last[0] + (last[1] - next) * siemens * 1000, next});
            }
        }
        return shifted(knots, others);
    }

    /** The part of the knots that lies above the current of the others, counted from there. */
    private static PiecewiseLine shifted(List<double[]> knots, double others) {
        final List<double[]> kept = new ArrayList<>();
        kept.add(new double[] {0, between(knots, others)});
        for (double[] knot : knots) {
            final double current = knot[0] - others;
            if (current > 0 && current < PiecewiseLine.END) {
                kept.add(new double[] {current, knot[1]});
            }
        }
        kept.add(new double[] {PiecewiseLine.END, between(knots, others + PiecewiseLine.END)});
        return PiecewiseLine.through(kept.stream().mapToDouble(k -> k[0]).toArray(),
            kept.stream().mapToDouble(k -> k[1]).toArray());
    }

    private static double between(List<double[]> knots, double current) {
        int i = 1;
        while (i < knots.size() - 1 && knots.get(i)[0] < current) {
            i++;
        }
        final double[] a = knots.get(i - 1);
        final double[] b = knots.get(i);
        return a[1] + (b[1] - a[1]) * (current - a[0]) / (b[0] - a[0]);
    }
}
