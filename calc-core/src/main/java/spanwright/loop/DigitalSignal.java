package spanwright.loop;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * Whether a handheld can talk to the transmitter over the loop: at least 230 ohm that the supply does not
 * short, no device in the way that blocks the tone, and a resistance times capacitance of at most 65 us.
 *
 * <p>Source of the figures: public guides to the digital communication on 4-20 mA loops; cable length
 * {@code 65e6 / (R C) - (C_dev + 10000) / C} m, R in ohm, C in pF/m, C_dev in pF.
 *
 * @param loop       its name
 * @param signalOhms resistance the tone meets on the transmitter's side, without cable and supply, in ohm
 * @param longestMetres cable length the RC limit allows, the resistance of the cable itself included; empty
 *                      if no capacitance is stated or there is not just one cable
 * @param checks     what was checked
 */
public record DigitalSignal(String loop, double signalOhms, OptionalDouble longestMetres, LoopChecks checks) {
    /** Least resistance in ohm; 250 is customary. */
    public static final double LEAST_OHMS = 230;
    /** Largest product of resistance and capacitance, in ohm x pF. */
    private static final double LARGEST_RC = 65e6;
    /** Capacitance that the guides add to that of the devices, in pF. */
    private static final double ADDED_PICOFARADS = 10_000;

    /** Checks the components. */
    public DigitalSignal {
        Checks.notBlank("name of the loop", loop);
        Checks.notNegative("resistance in ohm", signalOhms);
        Objects.requireNonNull(longestMetres, "longestMetres");
        Objects.requireNonNull(checks, "checks");
    }

    /**
     * Looks at a loop.
     *
     * @param devicePicofarads capacitance of the devices on the loop, in pF
     */
    public static DigitalSignal of(CurrentLoop loop, double devicePicofarads) {
        Checks.notNegative("capacitance of the devices in pF", devicePicofarads);
        final List<LoopChecks.Item> items = new ArrayList<>();
        Pairing.all(loop.elements()).filter(Isolator.class::isInstance).map(Isolator.class::cast)
            .forEach(i -> items.add(path(i)));
        final double ohms = ohms(loop.elements());
        final boolean enough = ohms >= LEAST_OHMS * (1 - 1e-12);
        items.add(new LoopChecks.Item("resistance for the tone", enough ? LoopChecks.Outcome.ALLOWED
            : LoopChecks.Outcome.REFUSED, "the tone meets " + NumberText.plain(ohms, 5)
                + " \u03a9 beside the cable, "
            + (enough ? "at least" : "less than") + " the 230 \u03a9 it needs"));
        return new DigitalSignal(loop.name(), ohms, capacitance(loop, ohms, devicePicofarads, items),
            new LoopChecks(loop.name(), items));
    }

    private static LoopChecks.Item path(Isolator isolator) {
        final DigitalPath path = isolator.traits().digital();
        final LoopChecks.Outcome outcome = switch (path) {
            case PASSES -> LoopChecks.Outcome.ALLOWED;
            case UNKNOWN -> LoopChecks.Outcome.NOT_DETERMINED;
            case PASSES_ONE_WAY, BLOCKS -> LoopChecks.Outcome.REFUSED;
        };
        return new LoopChecks.Item("digital path", outcome, isolator.name() + " " + path
            + (outcome == LoopChecks.Outcome.REFUSED
                ? ": the path to the far side is broken; a handheld works on the "
                + "transmitter's side only" : ""));
    }

    /** The elements the tone meets: behind an isolator only if the tone passes it. */
    private static Stream<LoopElement> met(List<LoopElement> elements) {
        return elements.stream().flatMap(e -> e instanceof Isolator i && i.nests()
            && i.traits().digital() == DigitalPath.PASSES
            ? Stream.concat(Stream.of(e), met(i.output().fed())) : Stream.of(e));
    }

    /** Resistances of receivers, resistors, barriers, and inputs of isolators. */
    private static double ohms(List<LoopElement> elements) {
        final Pick least = Pick.of(Corner.MOST_VOLTAGE);
        return met(elements).mapToDouble(e -> e instanceof Burden b ? b.seenOhms(least)
            : e instanceof Isolator i ? i.input().ohms().least() : 0).sum();
    }

    private static OptionalDouble capacitance(CurrentLoop loop, double ohms, double device,
                                              List<LoopChecks.Item> items) {
        final List<Cable> cables = met(loop.elements()).filter(Cable.class::isInstance)
            .map(Cable.class::cast).toList();
        if (cables.isEmpty() || ohms == 0) {
            return OptionalDouble.empty();
        }
        final Optional<Cable> unstated = cables.stream().filter(c -> c.picofaradsPerMetre().isEmpty())
            .findFirst();
        if (unstated.isPresent()) {
            items.add(new LoopChecks.Item("resistance times capacitance", LoopChecks.Outcome.NOT_DETERMINED,
                "the capacitance of " + unstated.get().name() + " is not stated"));
            return OptionalDouble.empty();
        }
        final double total = ohms + cables.stream().mapToDouble(c -> c.loopOhms(Corner.LEAST_VOLTAGE)).sum();
        final double picofarads = device + ADDED_PICOFARADS + cables.stream()
            .mapToDouble(c -> c.metres() * c.picofaradsPerMetre().getAsDouble()).sum();
        final boolean within = total * picofarads <= LARGEST_RC;
        items.add(new LoopChecks.Item("resistance times capacitance", within ? LoopChecks.Outcome.ALLOWED
            : LoopChecks.Outcome.REFUSED, NumberText.plain(total, 5) + " \u03a9 times "
            + NumberText.plain(picofarads / 1000, 4) + " nF is "
            + NumberText.fixed(total * picofarads / 1e6, 1) + " \u00b5s, "
            + (within ? "within" : "above") + " the 65 \u00b5s allowed"));
        return cables.size() == 1 ? OptionalDouble.of(longest(cables.get(0), ohms, device))
            : OptionalDouble.empty();
    }

    /**
     * The length at which the resistance of the rest and of the cable itself, hot, times the capacitance is
     * just the limit: the positive root of (R + r L)(C + c L) = 65e6, 0 if the rest alone is above it.
     */
    private static double longest(Cable cable, double ohms, double device) {
        final double r = cable.metres(1).loopOhms(Corner.LEAST_VOLTAGE);
        final double c = cable.picofaradsPerMetre().getAsDouble();
        final double fixed = device + ADDED_PICOFARADS;
        final double left = LARGEST_RC - ohms * fixed;
        if (left <= 0) {
            return 0;
        }
        final double half = (ohms * c + r * fixed) / 2;
        return left / (half + Math.sqrt(half * half + r * c * left));
    }

    /**
     * Cable length the RC limit allows at a total resistance that is known, 0 if none.
     *
     * @param ohms               total resistance, above 0
     * @param picofaradsPerMetre of the cable, above 0
     * @param devicePicofarads   of the devices
     */
    public static double longestMetres(double ohms, double picofaradsPerMetre, double devicePicofarads) {
        Checks.positive("resistance in ohm", ohms);
        Checks.positive("capacitance in pF/m", picofaradsPerMetre);
        Checks.notNegative("capacitance of the devices in pF", devicePicofarads);
        return Math.max(0, LARGEST_RC / (ohms * picofaradsPerMetre)
            - (devicePicofarads + ADDED_PICOFARADS) / picofaradsPerMetre);
    }

    @Override
    public String toString() {
        return (checks.isAllowed() ? loop + " lets the digital signal through" : loop
            + " does not let the digital signal through") + ":\n" + checks;
    }
}
