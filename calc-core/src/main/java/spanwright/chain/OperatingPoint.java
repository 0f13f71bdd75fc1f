package spanwright.chain;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * Where the error of a chain was evaluated.
 *
 * @param inputPercent input, percent of the first element's range
 * @param temperatures what each temperature that has a fixed value there is, in words
 */
public record OperatingPoint(double inputPercent, List<String> temperatures) {
    /** Checks the components and copies the list. */
    public OperatingPoint {
        Checks.finite("input", inputPercent);
        temperatures = List.copyOf(Objects.requireNonNull(temperatures, "temperatures"));
    }

    static OperatingPoint of(double inputPercent, Map<String, Double> fixed) {
        return new OperatingPoint(inputPercent, fixed.entrySet().stream()
            .map(e -> e.getKey() + " " + NumberText.plain(e.getValue(), 4)
                + (e.getKey().contains(", ") ? " K" : " \u00b0C")).toList());
    }

    @Override
    public String toString() {
        return "at " + NumberText.plain(inputPercent, 4) + " % input" + temperatures.stream()
            .map(t -> ", " + t).collect(Collectors.joining());
    }
}
