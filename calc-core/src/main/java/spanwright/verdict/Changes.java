package spanwright.verdict;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoublePredicate;
import spanwright.quantity.NumberText;

/** What would change the decision at a point, found by asking the rule about other uncertainties. */
final class Changes {
    private static final double UP = 1.25;
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
        nearestChange(f -> word(point, rule, f).isAccepted(), UP, LARGEST_FACTOR).ifPresent(f ->
            changes.add("An expanded uncertainty above " + ofNow(point, f, 1)
                + " would end the acceptance."));
        if (point.word() == Word.MEETS_WITH_STATED_RISK) {
            nearestChange(f -> word(point, rule, f) == Word.MEETS, 1 / UP, SMALLEST_FACTOR).ifPresent(f ->
                changes.add("An expanded uncertainty of at most " + ofNow(point, f, -1)
                    + " would take the stated risk away."));
        }
        return changes;
    }

    private static List<String> ofNotShown(JudgedPoint point, DecisionRule rule) {
        final List<String> changes = new ArrayList<>();
        nearestChange(f -> word(point, rule, f).isAccepted(), 1 / UP, SMALLEST_FACTOR).ifPresent(f ->
            changes.add("An expanded uncertainty of at most " + ofNow(point, f, -1)
                + " would make the result accepted."));
        if (point.acceptance().flatMap(Acceptance::zone).isPresent()) {
            point.margin().ifPresent(m -> changes.add("An error further from the limit by "
                + figure(-m.value()) + " % of span would be accepted."));
        }
        return changes;
    }

    /** Rounded outwards to two digits, so that who keeps to the printed figure keeps to the exact one. */
    private static String ofNow(JudgedPoint point, double factor, int direction) {
        final double now = point.finding().uncertainty().orElseThrow().expanded();
        final double place = Math.pow(10, Math.floor(Math.log10(factor * now)) - 1);
        final double places = factor * now / place;
        final double rounded = Math.abs(places - Math.rint(places)) < 1e-4 ? Math.rint(places)
            : direction > 0 ? Math.ceil(places) : Math.floor(places);
        return figure(rounded * place) + " % of span (now " + figure(now) + ")";
    }

    /**
     * The factor nearest to 1 at which a condition changes, going down or up. Steps first, since a guard band
     * solved for a population need not change one way only; halving then.
     */
    private static Optional<Double> nearestChange(DoublePredicate condition, double step, double last) {
        final boolean now = condition.test(1);
        double near = 1;
        double far = step;
        while (condition.test(far) == now) {
            near = far;
            far *= step;
            if (step > 1 ? far > last : far < last) {
                return Optional.empty();
            }
        }
        while (Math.abs(far - near) > 1e-6 * near) {
            final double middle = (near + far) / 2;
            if (condition.test(middle) == now) {
                near = middle;
            } else {
                far = middle;
            }
        }
        return Optional.of(step > 1 ? near : far);
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
