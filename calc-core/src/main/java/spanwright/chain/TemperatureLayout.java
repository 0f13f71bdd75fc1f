package spanwright.chain;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import spanwright.quantity.Celsius;
import spanwright.temperature.Ambient;
import spanwright.temperature.Place;
import spanwright.temperature.TemperatureRise;
import spanwright.uncertainty.Rectangular;

/**
 * Which temperatures a chain meets, and which module shares which. Elements in the chain's ambient share its
 * outdoor temperature; those in the same place share its rises; an element with an ambient of its own shares
 * nothing.
 */
final class TemperatureLayout {
    /** Name of the temperature that elements without an ambient of their own share. */
    static final String OUTDOOR = "outdoor temperature";

    private final List<TemperatureVariable> variables = new ArrayList<>();
    private final Map<String, Integer> indexOf = new LinkedHashMap<>();
    private final Map<String, ModuleTemperature> modules = new LinkedHashMap<>();
    private final List<String> missing = new ArrayList<>();

    private TemperatureLayout() { }

    static TemperatureLayout of(List<ChainElement> elements, Optional<Ambient> shared) {
        final TemperatureLayout layout = new TemperatureLayout();
        for (ChainElement element : elements) {
            if (element.terms().stream().anyMatch(t -> t.basis().perKelvin())) {
                layout.place(element, shared);
            }
        }
        return layout;
    }

    private void place(ChainElement element, Optional<Ambient> shared) {
        final Optional<Ambient> ambient = element.site().own().or(() -> shared);
        final Optional<Celsius> calibration = element.site().calibration();
        if (ambient.isEmpty()) {
            missing.add("the ambient temperatures of " + element.name());
        }
        if (calibration.isEmpty()) {
            missing.add("the temperature at calibration of " + element.name());
        }
        if (ambient.isPresent() && calibration.isPresent()) {
            final String where = element.site().own().isPresent() ? "temperature at " + element.name()
                : OUTDOOR;
            modules.put(element.name(),
                module(ambient.get(), element.site().place(), calibration.get(), where));
        }
    }

    private ModuleTemperature module(Ambient ambient, Place place, Celsius calibration, String where) {
        final List<Integer> used = new ArrayList<>();
        double steady = -calibration.value();
        used.add(variable(new TemperatureVariable(where, ambient.lowest().value(),
            ambient.highest().value(), ambient.distribution())));
        for (TemperatureRise rise : ambient.rises()) {
            if (rise.place() == place && rise.isSteady()) {
                steady += rise.most();
            } else if (rise.place() == place) {
                used.add(variable(new TemperatureVariable(where + ", " + rise.cause() + " " + place,
                    rise.least(), rise.most(), ambient.distribution()
                        .map(d -> new Rectangular(rise.least(), rise.most())))));
            }
        }
        return new ModuleTemperature(steady, used);
    }

    private int variable(TemperatureVariable variable) {
        return indexOf.computeIfAbsent(variable.name(), name -> {
            variables.add(variable);
            return variables.size() - 1;
        });
    }

    List<TemperatureVariable> variables() {
        return variables;
    }

    Optional<ModuleTemperature> module(String element) {
        return Optional.ofNullable(modules.get(element));
    }

    List<String> missing() {
        return missing;
    }

    /**
     * All corners of the temperature ranges. An error that is a sum of products of coefficient and excursion
     * is convex in the temperatures, so its largest bound lies in a corner.
     *
     * @param onlyUnspread only those variables of which no distribution is known; the others stay at their
     *                     mean
     */
    List<double[]> corners(boolean onlyUnspread) {
        List<double[]> corners = new ArrayList<>();
        corners.add(new double[variables.size()]);
        for (int v = 0; v < variables.size(); v++) {
            final TemperatureVariable variable = variables.get(v);
            final List<double[]> more = new ArrayList<>();
            for (double[] corner : corners) {
                for (double value : ends(variable, onlyUnspread)) {
                    final double[] next = corner.clone();
                    next[v] = value;
                    more.add(next);
                }
            }
            corners = more;
        }
        return corners;
    }

    private static double[] ends(TemperatureVariable variable, boolean onlyUnspread) {
        if (onlyUnspread && variable.isRandom()) {
            return new double[] {variable.distribution().orElseThrow().mean()};
        }
        return variable.isSteady() ? new double[] {variable.low()}
            : new double[] {variable.low(), variable.high()};
    }
}
