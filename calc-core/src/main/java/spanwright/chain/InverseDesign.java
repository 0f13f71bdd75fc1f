package spanwright.chain;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleFunction;
import java.util.function.ToDoubleFunction;
import spanwright.quantity.Celsius;
import spanwright.quantity.Checks;
import spanwright.quantity.PercentOfSpan;
import spanwright.temperature.Ambient;

/**
 * Questions the other way round: what must the elements be like for the chain to meet a target? The measure
 * is the GUM figure (known error plus expanded uncertainty), largest over inputs and temperatures. Answers
 * are found by halving to one part in 1e6; an empty answer means that no value will do.
 *
 * @param chain    the chain as it stands
 * @param target   plus and minus
 * @param coverage share of the errors to be covered
 */
public record InverseDesign(MeasuringChain chain, PercentOfSpan target, Coverage coverage) {
    private static final int STEPS = 40;
    private static final int MOST_ELEMENTS = 100;

    /** Checks the components. */
    public InverseDesign {
        Objects.requireNonNull(chain, "chain");
        Objects.requireNonNull(coverage, "coverage");
        Checks.positive("target", target.value());
    }

    /**
     * The limit each of n equal stages may have: target over the root of {@code n (1 + (n - 1) r)}.
     *
     * @param n           number of stages, at least 1
     * @param correlation of each pair, 0 to 1; 1 is the worst case
     */
    public static PercentOfSpan stageLimit(PercentOfSpan target, int n, double correlation) {
        Checks.atLeast("number of stages", n, 1);
        Checks.within("correlation", correlation, 0, 1);
        return new PercentOfSpan(target.value() / Math.sqrt(n * (1 + (n - 1) * correlation)));
    }

    /**
     * The accuracy rating that every element may have, the same for all. It takes the place of ratings and of
     * what records found (known error, hysteresis, non-repeatability); everything else is as it stands.
     */
    public Optional<PercentOfSpan> equalAccuracy() {
        return largest(target.value(), a -> withRatings(name -> a)).stream().mapToObj(PercentOfSpan::new)
            .findFirst();
    }

    /**
     * The accuracy rating of each element where accuracy costs: cost over rating is spent on each, and the
     * sum is least where ratings go with the cube root of the cost (method of Lagrange, terms adding in
     * quadrature).
     *
     * @param cost relative cost of a unit of accuracy of each element, above 0, for all elements
     */
    public Optional<Map<String, PercentOfSpan>> costWeightedAccuracy(Map<String, Double> cost) {
        for (ChainElement e : chain.elements()) {
            if (!cost.containsKey(e.name())) {
                throw new IllegalArgumentException("no cost is given for " + e.name());
            }
            Checks.positive("cost of " + e.name(), cost.get(e.name()));
        }
        final OptionalDouble scale = largest(target.value() / Math.cbrt(
            cost.values().stream().mapToDouble(Double::doubleValue).min().orElseThrow()),
            s -> withRatings(name -> s * Math.cbrt(cost.get(name))));
        if (scale.isEmpty()) {
            return Optional.empty();
        }
        final Map<String, PercentOfSpan> ratings = new LinkedHashMap<>();
        chain.elements().forEach(e -> ratings.put(e.name(),
            new PercentOfSpan(scale.getAsDouble() * Math.cbrt(cost.get(e.name())))));
        return Optional.of(ratings);
    }

    /** How many elements like this one may stand in a row after the chain, 0 to 100. */
    public int howManyMore(ChainElement like) {
        final List<ChainElement> longer = new ArrayList<>(chain.elements());
        int n = 0;
        while (n < MOST_ELEMENTS) {
            longer.add(like.named(like.name() + " " + (n + 1)));
            if (!meets(chain.withElements(longer))) {
                return n;
            }
            n++;
        }
        return n;
    }

    /**
     * The largest guaranteed temperature coefficient that an element may have, percent of span per kelvin.
     */
    public OptionalDouble largestCoefficient(String element) {
        final ChainElement e = chain.element(element);
        final List<ErrorTerm> others = new ArrayList<>(
            e.terms().stream().filter(t -> !t.basis().perKelvin()).toList());
        return largest(target.value(), a -> {
            final List<ErrorTerm> terms = new ArrayList<>(others);
            terms.add(ErrorTerm.limit("temperature", Influence.TEMPERATURE, a,
                ErrorTerm.Basis.of(Standing.ASSUMED, true, "sought").actingPerKelvin()));
            return chain.with(e.withTerms(terms));
        });
    }

    /**
     * The widest outdoor range about the middle of the present one, nothing said of how often a temperature
     * occurs.
     *
     * @throws IllegalArgumentException if the chain has no ambient
     */
    public Optional<Ambient> widestAmbient() {
        final Ambient now = chain.ambient().orElseThrow(
            () -> new IllegalArgumentException("the chain has no ambient: " + chain));
        final double middle = (now.lowest().value() + now.highest().value()) / 2;
        final DoubleFunction<Ambient> about = half -> new Ambient(new Celsius(middle - half),
            new Celsius(middle + half), Optional.empty(), now.rises());
        return largest(200, half -> chain.in(about.apply(half))).stream().mapToObj(about).findFirst();
    }

    private MeasuringChain withRatings(ToDoubleFunction<String> rating) {
        return chain.withElements(chain.elements().stream().map(e -> {
            final List<ErrorTerm> terms = new ArrayList<>(
                e.terms().stream().filter(t -> !isHeldByRating(t.influence())).toList());
            terms.add(ErrorTerm.limit("accuracy rating", Influence.ACCURACY_RATING,
                rating.applyAsDouble(e.name()), ErrorTerm.Basis.of(Standing.ASSUMED, true, "sought")));
            return e.withTerms(terms);
        }).toList());
    }

    /** What a rating takes the place of: all that a calibration finds but the standard it is made with. */
    private static boolean isHeldByRating(Influence influence) {
        return influence.isFoundByCalibration() && influence != Influence.STANDARD;
    }

    private boolean meets(MeasuringChain changed) {
        return new Evaluation(changed, coverage).largestGum() <= target.value();
    }

    /** The largest value up to a bound with which the chain meets the target; empty if not even 0 does. */
    private OptionalDouble largest(double bound, DoubleFunction<MeasuringChain> with) {
        if (!meets(with.apply(0))) {
            return OptionalDouble.empty();
        }
        if (meets(with.apply(bound))) {
            return OptionalDouble.of(bound);
        }
        double low = 0;
        double high = bound;
        for (int i = 0; i < STEPS && high - low > 1e-6 * high; i++) {
            final double middle = (low + high) / 2;
            if (meets(with.apply(middle))) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return OptionalDouble.of(low);
    }
}
