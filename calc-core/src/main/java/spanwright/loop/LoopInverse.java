package spanwright.loop;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.DoubleFunction;
import java.util.function.DoublePredicate;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * The question asked backwards: how far one thing alone may go before the loop no longer carries every
 * current from its downscale to its upscale failure current, all limits against it, and within the load
 * limits of its isolators unless one is exceeded as it is.
 *
 * @param loop            its name
 * @param fromMilliamps   lowest current it must carry
 * @param toMilliamps     largest current it must carry
 * @param longestCables   for each cable, in m one way
 * @param smallestAreas   for each cable of the table, in mm2
 * @param smallestSupplies for each supply, nominal voltage in V, that of the transmitter's circuit first
 * @param largestLoads    for each receiver, in ohm
 * @param isolators       how many like the outermost loop-powered one fit in the nest; empty if there is none
 */
public record LoopInverse(String loop, double fromMilliamps, double toMilliamps, List<Answer> longestCables,
                          List<Answer> smallestAreas, List<Answer> smallestSupplies,
                              List<Answer> largestLoads,
                          Optional<Integer> isolators) {
    private static final double LONGEST_METRES = 100_000;
    private static final double LARGEST_OHMS = 100_000;
    private static final double HIGHEST_VOLTS = 1000;
    private static final int MOST_ISOLATORS = 100;

    /**
     * An answer for one element.
     *
     * @param element its name
     * @param value   the limit; empty if no value will do
     */
    public record Answer(String element, Optional<Double> value) {
        /** Checks the components. */
        public Answer {
            Checks.notBlank("element", element);
            Objects.requireNonNull(value, "value");
        }

        private String text(String unit) {
            return element + " " + value.map(v -> NumberText.significant(v, 4) + " " + unit)
                .orElse("none would do");
        }
    }

    /** Checks the components and copies the lists. */
    public LoopInverse {
        Checks.notBlank("name of the loop", loop);
        longestCables = List.copyOf(longestCables);
        smallestAreas = List.copyOf(smallestAreas);
        smallestSupplies = List.copyOf(smallestSupplies);
        largestLoads = List.copyOf(largestLoads);
        Objects.requireNonNull(isolators, "isolators");
    }

    static LoopInverse of(CurrentLoop loop) {
        final Predicate<CurrentLoop> works = LimitRules.loadsAllowed(loop)
            ? l -> works(l) && LimitRules.loadsAllowed(l) : LoopInverse::works;
        final double from = loop.transmitter().limits().failLowMilliamps();
        final double to = loop.transmitter().limits().failHighMilliamps();
        final List<Answer> lengths = new ArrayList<>();
        final List<Answer> areas = new ArrayList<>();
        final List<Answer> loads = new ArrayList<>();
        for (LoopElement element : Pairing.all(loop.elements()).toList()) {
            final String name = element.name();
            if (element instanceof Cable cable) {
                lengths.add(new Answer(name, largest(works, LONGEST_METRES,
                    v -> loop.exchanging(name, e -> cable.metres(v)))));
                if (cable.copper().areaMm2().isPresent()) {
                    areas.add(new Answer(name, Conductors.areas().stream()
                        .filter(a -> works.test(loop.exchanging(name, e -> cable.withArea(a)))).findFirst()));
                }
            } else if (element instanceof Burden burden && burden.kind().reads()) {
                loads.add(new Answer(name, largest(works, LARGEST_OHMS, v -> loop.exchanging(name,
                    e -> new Burden(name,
                    burden.kind(), burden.volts(), Toleranced.exactly(v), burden.traits())))));
            }
        }
        return new LoopInverse(loop.name(), from, to, lengths, areas, smallestSupplies(loop), loads,
            isolators(loop, works));
    }

    /** Margin over the whole range at the corner of least voltage is not negative. */
    static boolean works(CurrentLoop loop) {
        final Pick pick = Pick.of(Corner.LEAST_VOLTAGE);
        final Transmitter.Ends ends = loop.transmitter().limits();
        return loop.circuit().all().flatMap(c -> c.headrooms(pick)).allMatch(h -> h.margin().at(h.margin()
            .whereLeast(ends.failLowMilliamps(), ends.failHighMilliamps())) >= 0);
    }

    /** The largest value that works, where less of it always works better. */
    private static Optional<Double> largest(Predicate<CurrentLoop> works, double bound,
                                            DoubleFunction<CurrentLoop> changed) {
        return works.test(changed.apply(0))
            ? Optional.of(bisect(0, bound, v -> works.test(changed.apply(v)))) : Optional.empty();
    }

    private static List<Answer> smallestSupplies(CurrentLoop loop) {
        return loop.circuit().all().flatMap(c -> c.source().stream()).distinct()
            .map(s -> new Answer(s.name(), smallest(loop, s))).toList();
    }

    private static Optional<Double> smallest(CurrentLoop loop, Supply supply) {
        final DoublePredicate holds = volts -> works(loop.exchangingSupplies(s -> s.equals(supply)
            ? s.scaledTo(volts) : s));
        return holds.test(HIGHEST_VOLTS) ? Optional.of(HIGHEST_VOLTS - bisect(0, HIGHEST_VOLTS - 0.001,
            less -> holds.test(HIGHEST_VOLTS - less))) : Optional.empty();
    }

    /** Nominal voltage of the first supply in V; empty where there is none or no voltage would do. */
    public Optional<Double> smallestSupply() {
        return smallestSupplies.stream().findFirst().flatMap(Answer::value);
    }

    /** The largest v in [low, high] with the property, which holds at low and, once lost, stays lost. */
    private static double bisect(double low, double high, DoublePredicate holds) {
        if (holds.test(high)) {
            return high;
        }
        double yes = low;
        double no = high;
        while (no - yes > 1e-9 * Math.max(1, no)) {
            final double middle = yes + (no - yes) / 2;
            if (holds.test(middle)) {
                yes = middle;
            } else {
                no = middle;
            }
        }
        return yes;
    }

    private static Optional<Integer> isolators(CurrentLoop loop, Predicate<CurrentLoop> works) {
        final Optional<Isolator> outermost = loop.circuit().isolators().filter(Isolator::nests).findFirst();
        if (outermost.isEmpty()) {
            return Optional.empty();
        }
        final Isolator model = outermost.get();
        List<LoopElement> behind = withoutNest(model);
        int count = 0;
        while (count < MOST_ISOLATORS) {
            final Isolator outer = model.withOutput(model.output().withFed(behind));
            if (!works.test(loop.exchanging(model.name(), e -> outer))) {
                break;
            }
            count++;
            behind = List.of(outer.named(model.name() + " (" + count + ")"));
        }
        return Optional.of(count);
    }

    /** What stands behind the innermost isolator of the nest that an isolator opens. */
    private static List<LoopElement> withoutNest(Isolator isolator) {
        final List<LoopElement> fed = isolator.output().fed();
        return fed.stream().flatMap(e -> e instanceof Isolator i && i.nests() ? withoutNest(i).stream()
            : java.util.stream.Stream.of(e)).toList();
    }

    @Override
    public String toString() {
        return "From " + NumberText.plain(fromMilliamps, 4) + " to " + NumberText.plain(toMilliamps, 4)
            + " mA with every limit against it, " + loop + " allows, one at a time: longest cable "
            + join(longestCables, "m") + "; smallest area " + join(smallestAreas, "mm\u00b2")
                + "; smallest supply "
            + join(smallestSupplies, "V")
                + "; largest load "
            + join(largestLoads, "\u03a9") + isolators.map(n -> "; loop-powered isolators in the nest: " + n)
            .orElse("");
    }

    private static String join(List<Answer> answers, String unit) {
        return answers.isEmpty() ? "none to ask about"
            : answers.stream().map(a -> a.text(unit)).collect(Collectors.joining(", "));
    }
}
