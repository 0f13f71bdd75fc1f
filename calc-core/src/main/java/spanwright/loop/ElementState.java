package spanwright.loop;

import java.util.Objects;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * An element, or one core of a cable, at a current. Voltages count from the minus terminal of the source of
 * its circuit.
 *
 * @param element    its name
 * @param part       which part of it stands here
 * @param milliamps  current through it, from + to -
 * @param plusVolts  potential of its + terminal
 * @param minusVolts potential of its - terminal
 */
public record ElementState(String element, Part part, double milliamps, double plusVolts, double minusVolts) {
    /** Which part of an element. */
    public enum Part {
        /** All of it. */
        WHOLE(""),
        /** The core that leads out. */
        CORE_OUT(", out"),
        /** The core that leads back. */
        CORE_BACK(", back"),
        /** Input of an isolator. */
        INPUT(", input"),
        /** Output of an isolator. */
        OUTPUT(", output");

        private final String words;

        Part(String words) {
            this.words = words;
        }
    }

    /** Checks the components. */
    public ElementState {
        Checks.notBlank("name of the element", element);
        Objects.requireNonNull(part, "part");
        Checks.finite("current in mA", milliamps);
        Checks.finite("potential of the + terminal in V", plusVolts);
        Checks.finite("potential of the - terminal in V", minusVolts);
    }

    /** Name and part. */
    public String label() {
        return element + part.words;
    }

    /** Voltage from + to -. */
    public double volts() {
        return plusVolts - minusVolts;
    }

    /** Power it takes from its circuit, in mW. */
    public double milliwatts() {
        return volts() * milliamps;
    }

    @Override
    public String toString() {
        return label() + ": + " + NumberText.fixed(plusVolts, 2) + " V, \u2212 "
            + NumberText.fixed(minusVolts, 2)
            + " V, takes " + NumberText.fixed(volts(), 2) + " V at " + NumberText.fixed(milliamps, 2) + " mA";
    }
}
