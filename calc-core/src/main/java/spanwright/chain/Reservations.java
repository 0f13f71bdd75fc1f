package spanwright.chain;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spanwright.quantity.Celsius;
import spanwright.temperature.Ambient;

/** What keeps a claim about a chain from a plain "Meets". */
final class Reservations {
    private Reservations() { }

    static List<String> of(ChainError error) {
        final List<String> all = new ArrayList<>();
        for (Contribution c : error.contributions()) {
            if (c.basis().standing() == Standing.TYPICAL || c.basis().standing() == Standing.ASSUMED) {
                all.add(c.label() + " is " + c.basis().standing());
            }
        }
        all.addAll(ofCoefficients(error.chain()));
        for (ChainElement e : error.chain().elements()) {
            all.addAll(e.remarks().gaps());
            if (has(e, Influence.KNOWN_ERROR, false) && !has(e, Influence.STANDARD, true)) {
                all.add(e.name() + ": the uncertainty of its calibration standard is not given");
            }
        }
        return all.stream().distinct().toList();
    }

    /**
     * A known error taken from a record carries no uncertainty of the standard; one from a certificate does.
     */
    private static boolean has(ChainElement e, Influence influence, boolean evenWithSpread) {
        return e.terms().stream().anyMatch(t -> t.influence() == influence && (evenWithSpread || t.u() == 0));
    }

    /** What measured coefficients do not promise for the excursions of their elements. */
    static List<String> ofCoefficients(MeasuringChain chain) {
        final List<String> all = new ArrayList<>();
        for (ChainElement e : chain.elements()) {
            final Optional<Ambient> ambient = e.site().own().or(chain::ambient);
            final Optional<Celsius> calibration = e.site().calibration();
            if (ambient.isPresent() && calibration.isPresent()) {
                e.terms().stream().flatMap(t -> t.basis().coefficient().stream())
                    .flatMap(c -> c.warnings(ambient.get().excursionAt(e.site().place(), calibration.get()))
                        .stream().map(w -> e.name() + ", " + c.effect() + ": " + w))
                    .forEach(all::add);
            }
        }
        return all.stream().distinct().toList();
    }
}
