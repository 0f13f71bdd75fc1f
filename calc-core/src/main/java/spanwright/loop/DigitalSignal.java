package spanwright.loop;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
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
 * @param longestMetres cable length the RC limit allows; empty if no capacitance is stated
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

    /** Resistances of receivers, resistors, barriers; behind an isolator only if the tone passes it. */
    private static double ohms(List<LoopElement> elements) {
        double sum = 0;
        for (LoopElement element : elements) {
            if (element instanceof Burden burden) {
                sum += burden.ohms().least();
            } else if (element instanceof Isolator isolator) {
                sum += isolator.input().ohms().least();
                if (isolator.nests() && isolator.traits().digital() == DigitalPath.PASSES) {
                    sum += ohms(isolator.output().fed());
                }
            }
        }
        return sum;
    }

    private static OptionalDouble capacitance(CurrentLoop loop, double ohms, double device,
                                              List<LoopChecks.Item> items) {
        final List<Cable> cables = loop.elements().stream().filter(Cable.class::isInstance)
            .map(Cable.class::cast)
            .toList();
        if (cables.isEmpty() || ohms == 0) {
            return OptionalDouble.empty();
        }
        if (cables.stream().anyMatch(c -> c.picofaradsPerMetre().isEmpty())) {
            items.add(new LoopChecks.Item("resistance times capacitance", LoopChecks.Outcome.NOT_DETERMINED,
                "the capacitance of " + cables.get(0).name() + " is not stated"));
            return OptionalDouble.empty();
        }
        final double total = ohms + cables.stream().mapToDouble(c -> c.loopOhms(Corner.LEAST_VOLTAGE)).sum();
        final double picofarads = cables.stream()
            .mapToDouble(c -> c.metres() * c.picofaradsPerMetre().getAsDouble()).sum();
        final boolean within = total * (picofarads + device + ADDED_PICOFARADS) <= LARGEST_RC;
        items.add(new LoopChecks.Item("resistance times capacitance", within ? LoopChecks.Outcome.ALLOWED
            : LoopChecks.Outcome.REFUSED, NumberText.plain(total, 5) + " \u03a9 times "
            + NumberText.plain((picofarads + device + ADDED_PICOFARADS) / 1000, 4) + " nF is "
            + NumberText.fixed(total * (picofarads + device + ADDED_PICOFARADS) / 1e6, 1) + " \u00b5s, "
            + (within ? "within" : "above") + " the 65 \u00b5s allowed"));
        return cables.size() == 1 ? OptionalDouble.of(longestMetres(total,
            cables.get(0).picofaradsPerMetre().getAsDouble(), device)) : OptionalDouble.empty();
    }

    /**
     * Cable length the RC limit allows, 0 if none.
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
