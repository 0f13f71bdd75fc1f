package spanwright.chain;

import java.util.List;

/**
 * The temperature excursion of one module as a sum: {@code steady} plus the variables at these indices. The
 * calibration temperature and the steady rises are in {@code steady} already. Kelvin.
 */
record ModuleTemperature(double steady, List<Integer> variables) {
    ModuleTemperature {
        variables = List.copyOf(variables);
    }

    double excursion(double[] values) {
        double sum = steady;
        for (int v : variables) {
            sum += values[v];
        }
        return sum;
    }
}
