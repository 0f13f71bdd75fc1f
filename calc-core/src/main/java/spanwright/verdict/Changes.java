package spanwright.verdict;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoublePredicate;
import spanwright.quantity.NumberText;

/** What would change the decision at a point, found by asking the rule about other uncertainties. */
final class Changes {
    private static final double SMALLEST_FACTOR = 1e-6;
    private static final double LARGEST_FACTOR = 1000;

    private Changes() { }

    static List<String> of(JudgedPoint point, DecisionRule rule) {
        final double beyond = -point.limit().orElseThrow().room(point.finding().error());
        if (point.word().isAccepted()) {
            return ofAccepted(point, rule);
        }
        return beyond >= 0 ? List.of("The error lies " + figure(beyond) + " % of span beyond the limit:"
            + " correct or adjust it, or have a wider limit agreed; a smaller uncertainty alone does not"
            + " help.") : ofNotShown(point, rule);
    }

    private static List<String> ofAccepted(JudgedPoint point, DecisionRule rule) {
        final List<String> changes = new ArrayList<>();
        point.margin().filter(room -> room.value() > 0).ifPresent(room -> changes.add("An error nearer to"
            + " the limit by more than " + figure(room.value()) + " % of span would end the acceptance."));
        boundary(f -> !word(point, rule, f).isAccepted(), 1, LARGEST_FACTOR).ifPresent(f ->
            changes.add("An expanded uncertainty above " + ofNow(point, f) + " would end the acceptance."));
        if (point.word() == Word.MEETS_WITH_STATED_RISK) {
            boundary(f -> word(point, rule, f) != Word.MEETS, SMALLEST_FACTOR, 1).ifPresent(f ->
                changes.add("An expanded uncertainty of at most " + ofNow(point, f)
                    + " would take the stated risk away."));
        }
        return changes;
    }

    private static List<String> ofNotShown(JudgedPoint point, DecisionRule rule) {
        final List<String> changes = new ArrayList<>();
        boundary(f -> !word(point, rule, f).isAccepted(), SMALLEST_FACTOR, 1).ifPresent(f ->
            changes.add("An expanded uncertainty of at most " + ofNow(point, f)
                + " would make the result accepted."));
        if (point.acceptance().flatMap(Acceptance::zone).isPresent()) {
            point.margin().ifPresent(m -> changes.add("An error further from the limit by "
                + figure(-m.value()) + " % of span would be accepted."));
        }
        return changes;
    }

    private static String ofNow(JudgedPoint point, double factor) {
        final double now = point.finding().uncertainty().orElseThrow().expanded();
        return figure(factor * now) + " % of span (now " + figure(now) + ")";
    }

    /** Where a condition that fails at the small and holds at the large end begins to hold, by halving. */
    private static Optional<Double> boundary(DoublePredicate holds, double from, double to) {
        double low = from;
        double high = to;
        if (holds.test(low) || !holds.test(high)) {
            return Optional.empty();
        }
        for (int i = 0; i < 60 && high - low > 1e-6 * low; i++) {
            final double middle = (low + high) / 2;
            if (holds.test(middle)) {
                high = middle;
            } else {
                low = middle;
            }
        }
        return Optional.of(low);
    }

    private static Word word(JudgedPoint point, DecisionRule rule, double factor) {
        final MeasurementUncertainty u = point.finding().uncertainty().orElseThrow().times(factor);
        final ToleranceInterval limit = point.limit().orElseThrow();
        return JudgedPoint.decide(point.finding(), u, limit, rule.acceptance(limit, u));
    }

    private static String figure(double value) {
        return NumberText.significant(value, 2);
    }
}
