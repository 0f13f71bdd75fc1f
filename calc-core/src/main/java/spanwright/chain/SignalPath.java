package spanwright.chain;

import java.util.List;
import spanwright.quantity.Checks;

/**
 * The ideal signal through a chain at one input: where it lies in each element's output range, and how an
 * error there reaches the end.
 *
 * @param positions position in the output range of each element, as a fraction
 * @param gains     percent of the chain's output span for each percent of the element's output span
 */
record SignalPath(List<Double> positions, List<Double> gains) {
    SignalPath {
        positions = List.copyOf(positions);
        gains = List.copyOf(gains);
    }

    /**
     * Follows an input, percent of the first element's range.
     *
     * @throws IllegalArgumentException where a square root has no slope
     */
    static SignalPath of(List<ChainElement> elements, double inputPercent) {
        final int n = elements.size();
        final Double[] positions = new Double[n];
        final Double[] gains = new Double[n];
        final double[] slopes = new double[n];
        double signal = elements.get(0).input().valueAt(Checks.finite("input in percent", inputPercent));
        for (int i = 0; i < n; i++) {
            final ChainElement e = elements.get(i);
            slopes[i] = i == 0 ? 0 : e.transfer().slopeAt(e.input(), e.output(), signal);
            signal = e.transfer().ideal(e.input(), e.output(), signal);
            positions[i] = e.output().percentAt(signal) / 100;
        }
        double unitGain = 1;
        final double lastWidth = elements.get(n - 1).output().width();
        for (int i = n - 1; i >= 0; i--) {
            gains[i] = unitGain * elements.get(i).output().width() / lastWidth;
            unitGain *= slopes[i];
        }
        return new SignalPath(List.of(positions), List.of(gains));
    }
}
