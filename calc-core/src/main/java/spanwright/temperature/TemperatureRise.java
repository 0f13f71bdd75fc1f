package spanwright.temperature;

import java.util.Objects;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * By how much a place is warmer than the outdoor air, and why.
 *
 * @param cause what makes the heat
 * @param place where it is felt
 * @param least smallest rise, kelvin
 * @param most  largest rise, kelvin, at least {@code least}
 */
public record TemperatureRise(String cause, Place place, double least, double most) {
    /** Checks the components. */
    public TemperatureRise {
        Checks.notBlank("cause of the temperature rise", cause);
        Objects.requireNonNull(place, "place");
        Checks.finite("smallest rise in K", least);
        Checks.within("largest rise in K", most, least, Double.MAX_VALUE);
    }

    /** Whether the rise is always the same. */
    public boolean isSteady() {
        return least == most;
    }

    @Override
    public String toString() {
        final String figure = isSteady() ? NumberText.plain(most, 4)
            : NumberText.plain(least, 4) + " to " + NumberText.plain(most, 4);
        return cause + " " + place + ": " + figure + " K";
    }
}
