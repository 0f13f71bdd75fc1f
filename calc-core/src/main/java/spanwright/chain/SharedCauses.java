package spanwright.chain;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Lists what elements have in common, by the three kinds of cause. */
final class SharedCauses {
    private SharedCauses() { }

    static List<String> of(MeasuringChain chain) {
        final List<String> causes = new ArrayList<>();
        final TemperatureLayout layout = TemperatureLayout.of(chain.elements(), chain.ambient());
        final Map<String, List<String>> temperatures = new LinkedHashMap<>();
        final Map<String, List<String>> standards = new LinkedHashMap<>();
        for (ChainElement e : chain.elements()) {
            layout.module(e.name()).ifPresent(m -> m.variables().forEach(v -> temperatures
                .computeIfAbsent(layout.variables().get(v).name(), n -> new ArrayList<>()).add(e.name())));
            e.terms().forEach(t -> t.basis().standardId().ifPresent(id -> standards
                .computeIfAbsent(id, n -> new ArrayList<>()).add(e.name())));
        }
        temperatures.forEach((name, elements) -> add(causes, name, elements));
        standards.forEach((id, elements) -> add(causes, "calibration standard " + id, elements));
        chain.shared().forEach(s -> causes.add(s.toString()));
        return List.copyOf(causes);
    }

    private static void add(List<String> causes, String name, List<String> elements) {
        if (elements.size() > 1) {
            causes.add(name + ": shared by " + String.join(", ", elements));
        }
    }
}
