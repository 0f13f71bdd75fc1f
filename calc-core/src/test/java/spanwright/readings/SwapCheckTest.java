package spanwright.readings;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Locale;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;

/** When the reader asks whether columns are exchanged, and when it must not. */
class SwapCheckTest {
    private static final String HEAD = """
        Tag,MK-8
        Date,2026-03-14
        Input range,%s
        Output range,%s
        Transfer,%s
        Ambient,23 degC
        Phase,as found
        Point (%%),Direction,Applied (mA),Indicated (mA)
        """;

    private static boolean asks(String text) {
        return RecordText.read(text).questions().stream().anyMatch(f -> f.fault() == Fault.COLUMNS_SWAPPED);
    }

    /** Readings of a channel with its own zero and span error, as they should stand, or exchanged. */
    private static String record(int range, boolean root, double zero, double span, boolean swapped,
        long seed) {
        final String[][] ranges = {{"4 to 20 mA", "4 to 20 mA"}, {"4 to 20 mA", "0 to 20 mA"},
            {"0 to 20 mA", "4 to 20 mA"}, {"4 to 20 mA", "20 to 60 mA"}};
        final double[][] limits = {{4, 20, 4, 20}, {4, 20, 0, 20}, {0, 20, 4, 20}, {4, 20, 20, 60}};
        final double[] l = limits[range];
        final Random random = new Random(seed);
        final StringBuilder out = new StringBuilder(String.format(Locale.ROOT, HEAD, ranges[range][0],
            ranges[range][1], root ? "square root" : "linear"));
        for (int p : new int[] {5, 25, 50, 75, 100, 75, 50, 25, 5}) {
            final double in = l[0] + (l[1] - l[0]) * p / 100 + 0.003 * random.nextGaussian();
            final double x = (in - l[0]) / (l[1] - l[0]);
            final double y = root ? Math.sqrt(x) : x;
            final double indicated = l[2] + (l[3] - l[2]) * (y * (1 + span / 100) + zero / 100);
            out.append(String.format(Locale.ROOT, "%d,up,%.4f,%.4f%n", p, swapped ? indicated : in,
                swapped ? in : indicated));
        }
        return out.toString();
    }

    @Property(tries = 300)
    void neverAsksAboutASoundRecord(@ForAll @IntRange(max = 3) int range, @ForAll boolean root,
                                    @ForAll @DoubleRange(min = -3, max = 3) double zero,
                                    @ForAll @DoubleRange(min = -3, max = 3) double span, @ForAll long seed) {
        assertThat(asks(record(range, root, zero, span, false, seed))).isFalse();
    }

    @Property(tries = 300)
    void alwaysAsksWhereRangesOrCharacteristicTell(@ForAll @IntRange(max = 3) int range, @ForAll boolean root,
                                                   @ForAll @DoubleRange(min = -0.5, max = 0.5) double zero,
                                                   @ForAll @DoubleRange(min = -0.5, max = 0.5) double span,
                                                   @ForAll long seed) {
        final boolean tells = range > 0 || root;
        assertThat(asks(record(range, root, zero, span, true, seed))).isEqualTo(tells);
    }
}
