package spanwright.chain;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import spanwright.error.ChannelAnalysis;
import spanwright.error.Finding;
import spanwright.error.Hysteresis;
import spanwright.error.NonRepeatability;
import spanwright.error.PointErrors;
import spanwright.readings.CalibrationRun;
import spanwright.uncertainty.Estimate;

/**
 * The error terms that a calibration record determines, percent of span. What it cannot tell becomes a note,
 * never a zero.
 */
record MeasuredTerms(List<ErrorTerm> terms, List<String> notes, List<String> gaps) {

    static MeasuredTerms of(CalibrationRun run) {
        final ChannelAnalysis analysis = ChannelAnalysis.of(run);
        if (analysis.points().isEmpty()) {
            throw new IllegalArgumentException("channel " + run.channel()
                + ": no reading lies within the range");
        }
        final List<ErrorTerm> terms = new ArrayList<>();
        final List<String> notes = new ArrayList<>();
        final List<String> gaps = new ArrayList<>();
        analysis.notes().forEach(n -> notes.add(run.channel() + ": " + n));
        final String source = "record of " + run.channel() + ", " + run.phase() + ", from "
            + run.readings().get(0).indicated().cell();
        final ErrorTerm.Basis basis = ErrorTerm.Basis.of(Standing.MEASURED, false, source);
        terms.add(ErrorTerm.known("known error", knownError(analysis.points()), basis));
        final Finding<Hysteresis> hysteresis = analysis.hysteresis();
        if (hysteresis.isDetermined()) {
            terms.add(ErrorTerm.limit("hysteresis", Influence.HYSTERESIS,
                hysteresis.orElseThrow().largest().value() / 2, basis));
        } else {
            gaps.add(run.channel() + ": hysteresis is not determined, " + hysteresis.reason());
        }
        final Finding<NonRepeatability> spread = analysis.nonRepeatability();
        if (spread.isDetermined()) {
            terms.add(ErrorTerm.estimate("non-repeatability", Influence.REPEATABILITY,
                new Estimate(0, spread.orElseThrow().pooledSd(), spread.orElseThrow().dof()), basis));
        } else {
            gaps.add(run.channel() + ": non-repeatability is not determined, " + spread.reason());
        }
        final double step = run.readings().stream()
            .mapToDouble(r -> run.output().ofSpan(r.indicated().resolution()).value()).max().orElseThrow();
        terms.add(ErrorTerm.limit("resolution of the record", Influence.RESOLUTION, step / 2,
            ErrorTerm.Basis.of(Standing.MEASURED, true, source)));
        return new MeasuredTerms(List.copyOf(terms), List.copyOf(notes), List.copyOf(gaps));
    }

    /** Average of the mean upscale and mean downscale errors against the expected output. */
    private static ErrorProfile knownError(List<PointErrors> points) {
        final Map<Double, Double> byOutput = points.stream().collect(Collectors.groupingBy(
            p -> p.expectedPercent() / 100, TreeMap::new, Collectors.averagingDouble(PointErrors::average)));
        return new ErrorProfile(byOutput.entrySet().stream()
            .map(e -> new ErrorProfile.Knot(e.getKey(), e.getValue())).toList());
    }
}
