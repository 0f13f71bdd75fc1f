import java.util.ArrayList;
import java.util.List;
import spanwright.uncertainty.CoverageInterval;
import spanwright.uncertainty.InputQuantity;
import spanwright.uncertainty.MeasurementModel;
import spanwright.uncertainty.MonteCarlo;
import spanwright.uncertainty.MonteCarloResult;
import spanwright.uncertainty.Normal;
import spanwright.uncertainty.Rectangular;

/**
 * A chain of five elements and 21 inputs, the same as in chain_numpy.py: each element has an accuracy and a
 * temperature coefficient known by limits, a certificate and a repeatability; all share one ambient
 * temperature. Whole process, by the library's public interface.
 *
 * <p>Arguments: trials, seed, and if wanted the number of threads.
 */
public final class ChainMonteCarlo {
    private static final int ELEMENTS = 5;
    private static final List<String> STAGES =
        List.of("transmitter", "splitter", "field isolator", "cabinet isolator", "card");
    private static final double[] ACCURACY = {0.10, 0.10, 0.08, 0.10, 0.05};
    private static final double[] COEFFICIENT = {0.006, 0.010, 0.006, 0.008, 0.004};
    private static final double[] CERTIFICATE = {0.025, 0.020, 0.020, 0.025, 0.015};
    private static final double[] REPEATABILITY = {0.010, 0.015, 0.010, 0.012, 0.008};

    private ChainMonteCarlo() { }

    public static void main(String[] arguments) {
        final List<InputQuantity> inputs = new ArrayList<>();
        inputs.add(InputQuantity.of("T", new Rectangular(-33, 32)));
        for (int k = 0; k < ELEMENTS; k++) {
            final String stage = STAGES.get(k);
            inputs.add(InputQuantity.of(stage.concat(" accuracy"), Rectangular.plusMinus(ACCURACY[k])));
            inputs.add(InputQuantity.of(stage.concat(" coefficient"), Rectangular.plusMinus(COEFFICIENT[k])));
            inputs.add(InputQuantity.of(stage.concat(" certificate"), Normal.ofUncertainty(CERTIFICATE[k])));
            inputs.add(InputQuantity.of(stage.concat(" repeatability"),
                Normal.ofUncertainty(REPEATABILITY[k])));
        }
        final MeasurementModel chain = MeasurementModel.of("error", "% of span", inputs, x -> {
            double sum = 0;
            double coefficient = 0;
            for (int k = 0; k < ELEMENTS; k++) {
                sum += x[4 * k + 1] + x[4 * k + 3] + x[4 * k + 4];
                coefficient += x[4 * k + 2];
            }
            return sum + coefficient * x[0];
        }).withBlocks(ChainMonteCarlo::blocks);
        MonteCarlo settings = MonteCarlo.seeded(Long.parseLong(arguments[1]))
            .trials(Long.parseLong(arguments[0]));
        if (arguments.length > 2) {
            settings = settings.threads(Integer.parseInt(arguments[2]));
        }
        final MonteCarloResult result = chain.monteCarlo(settings);
        final CoverageInterval interval = result.interval(0.95);
        final StringBuilder line = new StringBuilder("mean ").append(result.mean());
        line.append(" sd ").append(result.u());
        line.append(" 95 % [").append(interval.lower()).append(", ").append(interval.upper());
        line.append("] trials ").append(result.trials());
        System.out.println(line);
    }

    private static void blocks(double[][] x, double[] out, int n) {
        final double[] t = x[0];
        for (int i = 0; i < n; i++) {
            out[i] = 0;
        }
        for (int k = 0; k < ELEMENTS; k++) {
            add(x[4 * k + 1], x[4 * k + 2], x[4 * k + 3], x[4 * k + 4], t, out, n);
        }
    }

    private static void add(double[] accuracy, double[] coefficient, double[] certificate,
        double[] repeatability,
                            double[] t, double[] out, int n) {
        for (int i = 0; i < n; i++) {
            out[i] += accuracy[i] + certificate[i] + repeatability[i] + coefficient[i] * t[i];
        }
    }
}
