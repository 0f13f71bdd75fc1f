package spanwright.error;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import spanwright.fit.MinimaxAdjustment;
import spanwright.fit.MinimaxFactor;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;
import spanwright.quantity.Span;

/**
 * A device's adjustment: one gain trim that turns about a pivot, or zero and span. It gives {@link
 * TrimAdvice}: the setting for which the largest error, each in its own tolerance, is the least possible
 * (exact minimax), and whether to set it at all.
 *
 * <p>A gain trim makes {@code y' = pivot + gain (y - pivot)}. Most ratio trims pivot at 0 mA: then 4 mA moves
 * a fifth of what 20 mA moves. Ask the data sheet, or find it with {@link TrimPivot}.
 *
 * @param pivot       output that the trim does not move, in the output's unit; empty for zero and span
 * @param settability how finely the output at the upper range value can be set, in the output's unit, 0 if
 *                    not known
 * @param uncertainty expanded uncertainty of the measured errors, percent of span, 0 if not known
 * @param service     where and at which temperatures the channel is used
 */
public record Trim(OptionalDouble pivot, double settability, double uncertainty, ServiceConditions service) {
    /** A change below so many settabilities is not worth a turn (common practice, no source). */
    private static final double WORTHWHILE = 3;

    /** Checks the components. */
    public Trim {
        pivot.ifPresent(p -> Checks.finite("pivot", p));
        Checks.notNegative("settability", settability);
        Checks.notNegative("expanded uncertainty", uncertainty);
        Objects.requireNonNull(service, "service");
    }

    /** One gain trim that leaves the given output where it is: 0 mA, or 4 mA. */
    public static Trim gainAbout(double pivot) {
        return new Trim(OptionalDouble.of(pivot), 0, 0, ServiceConditions.AS_CALIBRATED);
    }

    /** Zero and span, both adjustable. */
    public static Trim zeroAndSpan() {
        return new Trim(OptionalDouble.empty(), 0, 0, ServiceConditions.AS_CALIBRATED);
    }

    /** This trim with what is known of how finely it sets, in the output's unit at the upper range value. */
    public Trim settableTo(double outputStep) {
        return new Trim(pivot, outputStep, uncertainty, service);
    }

    /** This trim with the expanded uncertainty of the measured errors, percent of span. */
    public Trim measuredWithin(double percentOfSpan) {
        return new Trim(pivot, settability, percentOfSpan, service);
    }

    /** This trim for a service other than the calibration's own conditions. */
    public Trim serving(ServiceConditions conditions) {
        return new Trim(pivot, settability, uncertainty, conditions);
    }

    /**
     * Advice for a channel as found.
     *
     * @throws IllegalArgumentException if the record has no reading within the service range, or, for zero
     *     and span, at one point only; if the pivot is where all the readings are
     */
    public TrimAdvice advise(ChannelAnalysis analysis) {
        final TrimCases cases = new TrimCases(analysis, service);
        return pivot.isPresent() ? gain(cases, pivot.getAsDouble()) : both(cases);
    }

    private TrimAdvice gain(TrimCases cases, double pivotValue) {
        final Span output = cases.run().output();
        final double p = output.percentAt(pivotValue);
        final MinimaxFactor g = MinimaxFactor.of(
            cases.figures(c -> (c.output() - p) / c.half()),
            cases.figures(c -> (c.expected() - p + c.middle()) / c.half()));
        final double[] after = cases.figures(c -> c.error() + (g.value() - 1) * (c.output() - p));
        final TrimCases.Case top = end(cases, 1);
        return advice(cases, List.of(target(cases, top, y -> (g.value() - 1) * (y - p))), after, g.fixedBy());
    }

    private TrimAdvice both(TrimCases cases) {
        final MinimaxAdjustment line = MinimaxAdjustment.of(cases.figures(TrimCases.Case::output),
            cases.figures(c -> c.error() - c.middle()), cases.figures(TrimCases.Case::half));
        final double[] after = cases.figures(c -> c.error() + line.offset() + line.tilt() * c.output());
        final List<TrimTarget> targets = new ArrayList<>();
        for (int side : new int[] {-1, 1}) {
            targets.add(target(cases, end(cases, side), y -> line.offset() + line.tilt() * y));
        }
        return advice(cases, targets, after, List.of());
    }

    /** What is adjusted, in words. */
    String means(Span output) {
        return pivot.isEmpty() ? "zero and span" : "the gain trim (pivot "
            + NumberText.plain(pivot.getAsDouble(), 4) + " " + output.symbol() + ")";
    }

    private TrimAdvice advice(TrimCases cases, List<TrimTarget> targets, double[] after,
                              List<Integer> fixedBy) {
        final double[] before = cases.figures(TrimCases.Case::error);
        final OptionalDouble use = cases.toleranceUse(after);
        final OptionalDouble usedNow = cases.toleranceUse(before);
        final double gained = cases.largest(before).value() - cases.largest(after).value();
        final List<String> small = tooSmall(cases, targets, gained);
        final List<String> warnings = warnings(cases, targets);
        final List<String> reasons = new ArrayList<>();
        TrimAdvice.Action action = TrimAdvice.Action.ADJUST;
        if (use.isPresent() && use.getAsDouble() > 1) {
            action = TrimAdvice.Action.CANNOT_HELP;
            reasons.add("the best setting still leaves " + NumberText.fixed(use.getAsDouble(), 2)
                + " times the tolerance; replace the device or correct in the receiver");
        } else if (usedNow.isEmpty() || usedNow.getAsDouble() <= 1) {
            reasons.addAll(small);
            action = reasons.isEmpty() ? action : TrimAdvice.Action.DO_NOT_TOUCH;
        } else {
            // Out of tolerance something must be done, but what speaks against the turn is not kept back.
            warnings.addAll(0, small);
        }
        return new TrimAdvice(cases.run(), this, action, targets, cases.largest(before),
            cases.largest(after), use, cases.trimmed(after), fixedBy, reasons, warnings);
    }

    /** Why a change is not worth a turn that lessens the largest error by so many percent of span. */
    private List<String> tooSmall(TrimCases cases, List<TrimTarget> targets, double gained) {
        final Span output = cases.run().output();
        final double change = largestChange(targets);
        final String wanted =
            "the wanted change of " + NumberText.significant(change, 2) + " " + output.symbol();
        final List<String> reasons = new ArrayList<>();
        if (change < WORTHWHILE * settability) {
            reasons.add(wanted + " is below three times what can be set ("
                + NumberText.significant(settability, 2) + ")");
        } else if (gained / 100 * output.width() < settability) {
            reasons.add("the best setting lessens the largest error by " + NumberText.significant(gained, 2)
                + " % of span only, less than what can be set (" + NumberText.significant(settability, 2)
                + " " + output.symbol() + ")");
        }
        final double u = uncertainty / 100 * output.width();
        if (change < u) {
            reasons.add(wanted + " is below the uncertainty of the measurement ("
                + NumberText.significant(u, 2) + ")");
        }
        return reasons;
    }

    private List<String> warnings(TrimCases cases, List<TrimTarget> targets) {
        final List<String> warnings = new ArrayList<>();
        if (!cases.hasTolerance()) {
            warnings.add(cases.withoutTolerance() + ": whether adjustment can help is not determined");
        }
        if (settability == 0) {
            warnings.add("how finely the trim can be set was not given");
        }
        if (uncertainty == 0) {
            warnings.add("the uncertainty of the measured errors was not given");
        }
        if (targets.size() > 1) {
            warnings.add("zero and span may act on each other: set in turn until both hold");
        }
        warnings.add("record the as-found readings first; approach from one side, wait, read again, then take"
            + " all points as left");
        return warnings;
    }

    private static double largestChange(List<TrimTarget> targets) {
        return targets.stream().mapToDouble(t -> Math.abs(t.setTo() - t.readsNow())).max().orElseThrow();
    }

    /** The case at the top (side 1) or bottom (side -1) of the scale, upscale where it was read so. */
    private static TrimCases.Case end(TrimCases cases, int side) {
        TrimCases.Case end = cases.all().get(0);
        for (TrimCases.Case c : cases.all()) {
            end = side * c.position() > side * end.position() ? c : end;
        }
        return end;
    }

    /** The target at calibration temperature: the technician adjusts there. */
    private TrimTarget target(TrimCases cases, TrimCases.Case c,
                              DoubleUnaryOperator change) {
        final Span output = cases.run().output();
        final double shift = service.shift(c.temperature(), c.expected());
        final double ideal = output.percentAt(cases.run().transfer().ideal(cases.run().input(), output,
            cases.run().input().valueAt(c.position())));
        final double now = ideal + c.error() - shift;
        return new TrimTarget(cases.run().input().valueAt(c.position()), cases.run().input().symbol(),
            output.valueAt(now + change.applyAsDouble(now)), output.symbol(), output.valueAt(now));
    }
}
