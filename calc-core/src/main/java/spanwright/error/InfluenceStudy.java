package spanwright.error;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import spanwright.fit.Interval;
import spanwright.fit.LinearRegression;
import spanwright.fit.NoFitException;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;
import spanwright.quantity.Span;
import spanwright.uncertainty.Estimate;

/**
 * What influences do to an output while its own input stands still: the other channels of the module, the
 * supply, the load. Found by least squares over settings that were varied, all influences together, so that
 * two which were moved at once are told apart or refused.
 *
 * @param subject    the output that was watched: "CH1 at 50 %"
 * @param influences what each does, the largest effect first
 * @param scatter    standard deviation of a reading about the fit, percent of span
 */
public record InfluenceStudy(String subject, List<MeasuredInfluence> influences, double scatter) {
    private static final double COVERAGE = 0.95;

    /** Checks the components and copies the list. */
    public InfluenceStudy {
        Checks.notBlank("subject", subject);
        influences = List.copyOf(influences);
        Checks.notNegative("scatter", scatter);
    }

    /**
     * What the other channels of a module do to one.
     *
     * @param subject   the channel watched and where its own input stood
     * @param output    its output range
     * @param indicated its readings, n values in the unit of the range
     * @param channels  the other channels
     * @param percent   for each reading, where each other channel stood, percent of its span; n rows
     * @return not determined where there are too few readings, or two channels were always moved together
     */
    public static Finding<InfluenceStudy> ofChannels(String subject, Span output, double[] indicated,
                                                     List<String> channels, double[][] percent) {
        return of(subject, output, indicated, channels, "%", percent);
    }

    /** What one quantity, such as the supply in volt or the load in ohm, does to an output. */
    public static Finding<InfluenceStudy> ofOne(String subject, Span output, double[] indicated, String name,
                                                String unit, double[] settings) {
        return of(subject, output, indicated, List.of(name), unit,
            IntStream.range(0, settings.length).mapToObj(i -> new double[] {settings[i]})
                .toArray(double[][]::new));
    }

    private static Finding<InfluenceStudy> of(String subject, Span output, double[] indicated,
        List<String> names,
                                              String unit, double[][] settings) {
        Objects.requireNonNull(output, "output");
        final double[] y = Checks.finiteAll("readings", indicated, 1);
        if (settings.length != y.length) {
            throw new IllegalArgumentException(y.length + " readings but " + settings.length + " settings");
        }
        if (y.length < names.size() + 2) {
            return Finding.notDetermined(names.size() + " influences need " + (names.size() + 2)
                + " readings; there are " + y.length);
        }
        for (int i = 0; i < y.length; i++) {
            y[i] = 100 * y[i] / output.width();
        }
        final LinearRegression fit;
        try {
            fit = LinearRegression.fit(settings, y);
        } catch (NoFitException e) {
            return Finding.notDetermined("the influences (" + String.join(", ", names)
                + ") were not varied by themselves: " + e.getMessage());
        }
        final List<MeasuredInfluence> found = new ArrayList<>();
        for (int j = 0; j < names.size(); j++) {
            final int column = j;
            final var range = IntStream.range(0, y.length).mapToDouble(i -> settings[i][column])
                .summaryStatistics();
            final Estimate effect = fit.coefficient(j + 1);
            found.add(new MeasuredInfluence(names.get(j), unit, effect, Interval.about(effect, COVERAGE),
                range.getMax() - range.getMin()));
        }
        found.sort(Comparator.comparingDouble(i -> -Math.abs(i.overRange().value())));
        return Finding.of(new InfluenceStudy(subject, found, fit.residualSd()));
    }

    /**
     * What the supply voltage does at a place on the scale, from runs of one channel at several supplies.
     *
     * @param percent place on the scale in percent, 0 for zero, 100 for the upper range value
     */
    public static Finding<InfluenceStudy> ofSupply(List<ChannelAnalysis> runs, double percent) {
        return ofRuns(runs, percent, "supply", "V", a -> a.run().conditions().supplyVolts());
    }

    /** What the load does at a place on the scale, from runs of one channel at several loads. */
    public static Finding<InfluenceStudy> ofLoad(List<ChannelAnalysis> runs, double percent) {
        return ofRuns(runs, percent, "load", "ohm", a -> a.run().conditions().loadOhms());
    }

    private static Finding<InfluenceStudy> ofRuns(List<ChannelAnalysis> runs, double percent, String name,
                                                  String unit, Function<ChannelAnalysis,
                                                      OptionalDouble> condition) {
        Checks.finite("place on the scale", percent);
        final List<ChannelAnalysis> usable = runs.stream()
            .filter(a -> condition.apply(a).isPresent() && a.errorLine().isDetermined()).toList();
        if (usable.size() < 3) {
            return Finding.notDetermined("the influence of the " + name
                + " needs three runs that state it; there are "
                + usable.size() + " of " + runs.size());
        }
        final ChannelAnalysis first = usable.get(0);
        final double width = first.run().output().width();
        return ofOne(first.run().channel() + " at " + NumberText.plain(percent, 4) + " %",
            first.run().output(),
            usable.stream().mapToDouble(a -> a.errorLine().orElseThrow().at(percent).value() / 100 * width)
                .toArray(),
            name, unit, usable.stream().mapToDouble(a -> condition.apply(a).getAsDouble()).toArray());
    }

    /** The influences that are told from none. */
    public List<MeasuredInfluence> shown() {
        return influences.stream().filter(MeasuredInfluence::isShown).toList();
    }

    @Override
    public String toString() {
        return subject + ":" + influences.stream().map(i -> "\n" + i).collect(Collectors.joining());
    }
}
