package spanwright.fit;

import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.apache.commons.statistics.distribution.FDistribution;
import org.apache.commons.statistics.distribution.TDistribution;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * Whether one reading, or one standard deviation, stands out from the others more than chance explains. The
 * suspect is shown, never dropped: whether it may be left out is for the person who knows what happened.
 *
 * <p>Limits: readings are taken as independent and normally distributed but for the suspect.
 *
 * @param kind         which test
 * @param statistic    the test statistic
 * @param critical     the value it exceeds with probability {@code significance} by chance alone
 * @param significance level of significance
 * @param suspect      index, from 0, of the reading or group that stands out most
 * @param values       the readings, or for Cochran's test the standard deviation of each group, in order
 */
public record OutlierTest(Kind kind, double statistic, double critical, double significance, int suspect,
                          List<Double> values) {
    /** Which test; published tables mix the sides, so the side is part of the name. */
    public enum Kind {
        /** Grubbs: the reading farthest from the mean, on either side. */
        GRUBBS_TWO_SIDED("Grubbs, two-sided"),
        /** Grubbs: the highest reading. */
        GRUBBS_HIGHEST("Grubbs, one-sided, highest"),
        /** Grubbs: the lowest reading. */
        GRUBBS_LOWEST("Grubbs, one-sided, lowest"),
        /** Cochran: the largest of some variances. */
        COCHRAN("Cochran, largest variance");

        private final String words;

        Kind(String words) {
            this.words = words;
        }

        @Override
        public String toString() {
            return words;
        }
    }

    /** Checks the components. */
    public OutlierTest {
        Objects.requireNonNull(kind, "kind");
        Checks.notNegative("statistic", statistic);
        Checks.positive("critical value", critical);
        Checks.inside("significance", significance, 0, 1);
        values = List.copyOf(values);
        values.forEach(v -> Checks.finite("value", v));
        Checks.within("index of the suspect", suspect, 0, values.size() - 1);
    }

    /**
     * Grubbs' test of one reading among several.
     *
     * @param side         one of the three Grubbs kinds
     * @param readings     at least 3, not all equal; not modified
     * @param significance in the open interval (0, 1), usually 0.05
     * @throws IllegalArgumentException if there are fewer than 3, all are equal, one is not finite, or the
     *     kind is none of Grubbs'
     */
    public static OutlierTest grubbs(Kind side, double[] readings, double significance) {
        if (side == Kind.COCHRAN) {
            throw new IllegalArgumentException("Cochran's test takes groups of readings, not readings");
        }
        final double[] v = Checks.finiteAll("readings", readings, 3);
        final Sample sample = Sample.of(v);
        if (sample.sd() == 0 || Sums.range(v) == 0) {
            throw new IllegalArgumentException("all " + v.length + " readings equal " + v[0]
                + ": none stands out");
        }
        int suspect = 0;
        for (int i = 1; i < v.length; i++) {
            suspect = distance(side, v[i], sample.mean()) > distance(side, v[suspect], sample.mean()) ? i
                : suspect;
        }
        return new OutlierTest(side, distance(side, v[suspect], sample.mean()) / sample.sd(),
            grubbsCritical(side, v.length, significance), significance, suspect,
            Arrays.stream(v).boxed().toList());
    }

    /**
     * Critical value of Grubbs' test, from Student's t at the significance by the number of readings (by
     * twice that number, two-sided).
     *
     * @param side         one of the three Grubbs kinds
     * @param readings     number of readings, at least 3
     * @param significance in the open interval (0, 1)
     */
    public static double grubbsCritical(Kind side, int readings, double significance) {
        Checks.atLeast("number of readings", readings, 3);
        Checks.inside("significance", significance, 0, 1);
        final double tail = significance / (side == Kind.GRUBBS_TWO_SIDED ? 2.0 * readings : readings);
        final double t = TDistribution.of(readings - 2).inverseSurvivalProbability(tail);
        // Written with the reciprocal so that a t of any size keeps its digits.
        return (readings - 1) / Math.sqrt(readings * (1 + (readings - 2) / (t * t)));
    }

    /**
     * Cochran's test of the largest variance among groups of equal size.
     *
     * @param groups       at least 2, all of the same count, not all without scatter
     * @param significance in the open interval (0, 1), usually 0.05
     * @throws IllegalArgumentException if there are fewer than 2 groups, their counts differ, or none has
     *     scatter
     */
    public static OutlierTest cochran(List<Sample> groups, double significance) {
        Checks.atLeast("number of groups", groups.size(), 2);
        final int count = groups.get(0).count();
        double sum = 0;
        int suspect = 0;
        for (int i = 0; i < groups.size(); i++) {
            final Sample g = groups.get(i);
            if (g.count() != count) {
                throw new IllegalArgumentException("group " + (i + 1) + " has " + g.count()
                    + " readings, group 1 has "
                    + count + ": Cochran's test needs equal numbers");
            }
            sum += g.sd() * g.sd();
            suspect = g.sd() > groups.get(suspect).sd() ? i : suspect;
        }
        if (sum == 0) {
            throw new IllegalArgumentException("no group has any scatter: none stands out");
        }
        final double largest = groups.get(suspect).sd();
        return new OutlierTest(Kind.COCHRAN, largest * largest / sum,
            cochranCritical(groups.size(), count, significance), significance, suspect,
            groups.stream().map(Sample::sd).toList());
    }

    /**
     * Critical value of Cochran's test (in the manner of ISO 5725-2), from the F distribution at the
     * significance by the number of groups.
     *
     * @param groups       number of groups, at least 2
     * @param readings     in each group, at least 2
     * @param significance in the open interval (0, 1)
     */
    public static double cochranCritical(int groups, int readings, double significance) {
        Checks.atLeast("number of groups", groups, 2);
        Checks.atLeast("number of readings in a group", readings, 2);
        Checks.inside("significance", significance, 0, 1);
        final double f = FDistribution.of(readings - 1, (groups - 1.0) * (readings - 1))
            .inverseSurvivalProbability(significance / groups);
        return 1 / (1 + (groups - 1) / f);
    }

    /**
     * Share of a group in the sum of all variances, for Cochran's test.
     *
     * @param group index from 0
     */
    public double shareOfVariance(int group) {
        return values.get(group) * values.get(group) / values.stream().mapToDouble(v -> v * v).sum();
    }

    /**
     * Beyond which values a reading would be suspected: mean less and plus the critical value in standard
     * deviations of these readings. Empty for Cochran's test and on the side that a one-sided test leaves.
     */
    public Optional<Double> lowerLimit() {
        return kind == Kind.GRUBBS_TWO_SIDED || kind == Kind.GRUBBS_LOWEST ? Optional.of(limit(-1))
            : Optional.empty();
    }

    /** As {@link #lowerLimit()}, upwards. */
    public Optional<Double> upperLimit() {
        return kind == Kind.GRUBBS_TWO_SIDED || kind == Kind.GRUBBS_HIGHEST ? Optional.of(limit(1))
            : Optional.empty();
    }

    private double limit(int side) {
        final Sample sample = Sample.of(values.stream().mapToDouble(v -> v).toArray());
        return sample.mean() + side * critical * sample.sd();
    }

    /** Whether the suspect stands out more than chance explains. */
    public boolean isSuspected() {
        return statistic > critical;
    }

    private static double distance(Kind side, double value, double mean) {
        switch (side) {
            case GRUBBS_HIGHEST:
                return value - mean;
            case GRUBBS_LOWEST:
                return mean - value;
            default:
                return Math.abs(value - mean);
        }
    }

    @Override
    public String toString() {
        return kind + ": " + NumberText.fixed(statistic, 3) + (isSuspected() ? " exceeds "
            : " does not exceed ")
            + NumberText.fixed(critical, 3) + " (significance " + NumberText.plain(significance, 3)
            + "); number "
            + (suspect + 1) + " stands out most";
    }
}
