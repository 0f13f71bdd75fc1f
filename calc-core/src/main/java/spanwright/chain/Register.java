package spanwright.chain;

import java.util.ArrayList;
import java.util.List;
import spanwright.temperature.Ambient;

/** Lists what a claim about a chain takes for granted. */
final class Register {
    private final List<Assumption> entries = new ArrayList<>();

    private Register() { }

    static List<Assumption> of(MeasuringChain chain, ErrorModel model) {
        final Register register = new Register();
        register.add("limits of data sheets hold for these units, and no value inside them is favoured"
            + " (rectangular)", "common practice, no source", "a calibration or type test beyond a limit");
        if (model.rows().stream().anyMatch(r -> !r.basis().bounded())) {
            register.add("terms without a guaranteed limit enter worst case and root sum of squares at twice"
                + " their standard uncertainty", "convention of this calculation",
                "a requirement to promise the worst case");
        }
        chain.ambient().ifPresent(a -> register.add(ambient(a), "as stated",
            "a temperature record outside it"));
        if (model.rows().stream().anyMatch(r -> r.elements().size() > 1)) {
            register.add("a shared standard is wrong by the same amount, with the same sign, in all elements"
                + " calibrated with it", "JCGM 100:2008, 5.2.2", "calibration by different standards");
        }
        chain.shared().forEach(s -> register.add(s.toString(), "as stated",
            "coefficients of the elements measured one by one"));
        register.add("what is not listed as shared is independent", "as stated",
            "errors of several elements moving together");
        register.add("errors are small, so that each element passes on those before it by its slope at the"
            + " ideal signal",
            "model of this calculation", "an error that is large against the curvature of a characteristic");
        for (ChainElement e : chain.elements()) {
            e.remarks().notes().forEach(n -> register.add(n, "from the data of " + e.name(),
                "a record that shows it"));
        }
        for (ChainElement e : chain.elements()) {
            e.remarks().gaps().forEach(n -> register.add(n + "; taken as nothing",
                "gap in the data of " + e.name(), "a record that determines it"));
        }
        model.rows().stream().filter(r -> r.basis().standing() == Standing.TYPICAL).forEach(r ->
            register.add(r.label() + " is a typical figure taken as one standard deviation: "
                + r.basis().source(), "forced", "a maximum from the maker, or a measurement"));
        return List.copyOf(register.entries);
    }

    private static String ambient(Ambient a) {
        return "the ambient is " + a + "; the claim is "
            + (a.basis() == Ambient.Basis.EVERY_TEMPERATURE ? "for every temperature in it"
                : "for a share of the time");
    }

    private void add(String text, String source, String falsifiedBy) {
        entries.add(new Assumption("A" + (entries.size() + 1), text, source, falsifiedBy));
    }
}
