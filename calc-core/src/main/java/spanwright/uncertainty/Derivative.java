package spanwright.uncertainty;

/** A derivative by differences with its estimated error; NaN and infinite where there is none. */
record Derivative(double value, double error) {
}
