package spanwright.chain;

import java.util.Optional;
import spanwright.uncertainty.Distribution;

/**
 * One temperature, or one rise of a temperature, that several modules may share.
 *
 * @param name         as the budget names it
 * @param low          lowest value
 * @param high         highest value
 * @param distribution how it is spread over time; empty if only the range is known
 */
record TemperatureVariable(String name, double low, double high, Optional<Distribution> distribution) {
    boolean isRandom() {
        return distribution.isPresent();
    }

    boolean isSteady() {
        return low == high;
    }
}
