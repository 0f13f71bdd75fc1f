package spanwright.uncertainty;

/** A measurement model that asks for its inputs by name: {@code q -> q.at("gain") * q.at("current")}. */
@FunctionalInterface
public interface NamedFormula {
    /**
     * The measurand.
     *
     * @param inputs gives the value of each input
     */
    double value(Values inputs);

    /** The inputs of one trial. */
    @FunctionalInterface
    interface Values {
        /**
         * The value of an input.
         *
         * @throws IllegalArgumentException if no input has that name
         */
        double at(String name);
    }
}
