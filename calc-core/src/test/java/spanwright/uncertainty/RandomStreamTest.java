package spanwright.uncertainty;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.Set;
import java.util.function.Consumer;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.core.source64.SplitMix64;
import org.apache.commons.rng.simple.RandomSource;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

class RandomStreamTest {
    private static final int BLOCK = RandomStream.BLOCK;

    @Test
    @DisplayName("Each lane is xoroshiro128++, its state drawn by SplitMix64, both as in Commons RNG")
    void lanesAreXoroshiro() {
        final long key = RandomStream.keyOf(42, 7);
        final SplitMix64 states = new SplitMix64(key);
        final UniformRandomProvider[] lanes = new UniformRandomProvider[BLOCK];
        for (int lane = 0; lane < BLOCK; lane++) {
            lanes[lane] = RandomSource.XO_RO_SHI_RO_128_PP.create(
                new long[] {states.nextLong(), states.nextLong()});
        }
        final RandomStream stream = new RandomStream(42, 7);
        for (int step = 0; step < 5; step++) {
            final long[] numbers = new long[BLOCK];
            final long[] lower = stream.nextHalves();
            for (int lane = 0; lane < BLOCK; lane++) {
                numbers[lane] = lanes[lane].nextLong();
                assertEquals((int) numbers[lane], (int) lower[lane], "lane " + lane + ", step " + step);
            }
            final long[] upper = stream.nextHalves();
            for (int lane = 0; lane < BLOCK; lane++) {
                assertEquals((int) (numbers[lane] >>> 32), (int) upper[lane], "lane " + lane);
            }
        }
    }

    @Test
    void singleNumbersComeFromTheSameLanes() {
        final RandomStream blocks = new RandomStream(1, 2);
        final RandomStream singles = new RandomStream(1, 2);
        for (int step = 0; step < 3; step++) {
            final long[] lower = blocks.nextHalves().clone();
            final long[] upper = blocks.nextHalves();
            for (int lane = 0; lane < BLOCK; lane++) {
                assertEquals(upper[lane] << 32 | lower[lane] & 0xffff_ffffL, singles.nextLong());
            }
        }
    }

    @Test
    void restartMakesTheStreamAsNew() {
        final RandomStream stream = new RandomStream(1, 2);
        stream.nextLong();
        stream.nextHalves();
        stream.restart(3, 4);
        final RandomStream fresh = new RandomStream(3, 4);
        assertArrayEquals(fresh.nextHalves(), stream.nextHalves());
        for (int i = 0; i < BLOCK + 1; i++) {
            assertEquals(fresh.nextLong(), stream.nextLong());
        }
    }

    @Test
    void streamsOfNeighbouringSeedsAndNumbersHaveNothingInCommon() {
        final Set<Long> seen = new HashSet<>();
        for (long seed = 0; seed < 8; seed++) {
            for (long number = 0; number < 8; number++) {
                final RandomStream stream = new RandomStream(seed, number);
                for (int lane = 0; lane < BLOCK; lane++) {
                    assertTrue(seen.add(stream.nextLong()));
                }
            }
        }
        assertNotEquals(RandomStream.keyOf(0, 1), RandomStream.keyOf(1, 0));
    }

    @Test
    void uniformNumbersFillTheirRangeEvenly() {
        final RandomStream stream = new RandomStream(5, 0);
        final double[] out = new double[BLOCK];
        final int bins = 64;
        final long[] counts = new long[bins];
        final int blocks = 2000;
        for (int b = 0; b < blocks; b++) {
            stream.fillUniform(out, BLOCK, 3, 2);
            for (final double v : out) {
                assertTrue(v > 1 && v < 5, () -> "outside (1, 5): " + v);
                counts[(int) ((v - 1) / 4 * bins)]++;
            }
        }
        assertEven(counts, blocks * (double) BLOCK / bins);
    }

    @Test
    void aPartlyFilledBlockLeavesTheRestAlone() {
        final double[] out = new double[BLOCK];
        new RandomStream(5, 0).fillUniform(out, 3, 10, 1);
        assertTrue(out[2] >= 9 && out[2] <= 11);
        assertEquals(0, out[3]);
    }

    @Test
    @DisplayName("Ziggurat: the strips close at the top, and the numbers are normal by a chi-squared test")
    void zigguratIsNormal() {
        assertEquals(1, Ziggurat.closure(), 1e-10);
        assertEquals(1, Ziggurat.tailClosure(), 1e-10);
        final RandomStream stream = new RandomStream(9, 0);
        final double[] out = new double[BLOCK];
        final int bins = 200;
        final long[] counts = new long[bins];
        final int blocks = 8000;
        double outermost = 0;
        for (int b = 0; b < blocks; b++) {
            Ziggurat.fill(stream, out, BLOCK, 10, 3);
            for (final double v : out) {
                final double z = (v - 10) / 3;
                outermost = Math.max(outermost, Math.abs(z));
                counts[Math.min(bins - 1, (int) (Normal.standardCumulative(z) * bins))]++;
            }
        }
        assertEven(counts, blocks * (double) BLOCK / bins);
        assertTrue(outermost > 4.2, "the tail beyond the last strip is drawn too");
    }

    @Test
    @DisplayName("Ziggurat: beyond 4.1 standard deviations lie as many as the normal distribution says")
    void zigguratTail() {
        final RandomStream stream = new RandomStream(10, 0);
        final double[] out = new double[BLOCK];
        final int blocks = 40_000;
        int beyond = 0;
        for (int b = 0; b < blocks; b++) {
            Ziggurat.fill(stream, out, BLOCK, 0, 1);
            for (final double v : out) {
                beyond += Math.abs(v) > 4.1 ? 1 : 0;
            }
        }
        final double expected = 2 * Normal.standardCumulative(-4.1) * blocks * BLOCK;
        assertEquals(expected, beyond, 4 * Math.sqrt(expected));
    }

    @Test
    @DisplayName("Two blocks that share their numbers are independent: chi-squared, 32 by 32 cells")
    void blocksFromOneNumberAreIndependent() {
        final RandomStream stream = new RandomStream(12, 0);
        final double[] first = new double[BLOCK];
        final double[] second = new double[BLOCK];
        final long[] cells = new long[32 * 32];
        final int blocks = 4000;
        for (int b = 0; b < blocks; b++) {
            Ziggurat.fill(stream, first, BLOCK, 0, 1);
            stream.fillUniform(second, BLOCK, 16, 16);
            for (int t = 0; t < BLOCK; t++) {
                final int row = (int) (32 * Normal.standardCumulative(first[t]));
                cells[32 * row + (int) second[t]]++;
            }
        }
        assertEven(cells, blocks * (double) BLOCK / cells.length);
    }

    @Test
    @DisplayName("Moments of rectangular and of normal draws (textbook results)")
    void moments() {
        final RandomStream stream = new RandomStream(13, 0);
        assertMoments(new double[] {0, 1.0 / 3, 0, 1.0 / 5},
            new double[] {1.0 / 3, 1.0 / 5, 1.0 / 7, 1.0 / 9}, out -> stream.fillUniform(out, BLOCK, 0, 1));
        assertMoments(new double[] {0, 1, 0, 3, 0, 15},
            new double[] {1, 3, 15, 105, 945, 10395}, out -> Ziggurat.fill(stream, out, BLOCK, 0, 1));
    }

    /**
     * Moments of first, second, ... order agree within four standard errors; {@code squares} are those of 2k.
     */
    private static void assertMoments(double[] expected, double[] squares, Consumer<double[]> draws) {
        final double[] out = new double[BLOCK];
        final double[] sums = new double[expected.length];
        final int blocks = 8000;
        for (int b = 0; b < blocks; b++) {
            draws.accept(out);
            for (final double v : out) {
                double power = 1;
                for (int k = 0; k < sums.length; k++) {
                    power *= v;
                    sums[k] += power;
                }
            }
        }
        final double n = blocks * (double) BLOCK;
        for (int k = 0; k < sums.length; k++) {
            final double error = Math.sqrt((squares[k] - expected[k] * expected[k]) / n);
            assertEquals(expected[k], sums[k] / n, 4 * error, "moment of order " + (k + 1));
        }
    }

    @Test
    @DisplayName("Normal draws fill a narrow band evenly: no gaps between the steps of a rectangle")
    void normalDrawsFillANarrowBand() {
        final RandomStream stream = new RandomStream(14, 0);
        final double[] out = new double[BLOCK];
        final long[] counts = new long[50];
        final double from = Normal.standardCumulative(0.9);
        final double width = Normal.standardCumulative(0.91) - from;
        int inside = 0;
        for (int b = 0; b < 40_000; b++) {
            Ziggurat.fill(stream, out, BLOCK, 0, 1);
            for (final double v : out) {
                final double share = (Normal.standardCumulative(Math.abs(v)) - from) / width;
                if (share >= 0 && share < 1) {
                    counts[(int) (share * counts.length)]++;
                    inside++;
                }
            }
        }
        assertEven(counts, inside / (double) counts.length);
    }

    private static void assertEven(long[] counts, double expected) {
        double chi = 0;
        for (final long count : counts) {
            chi += (count - expected) * (count - expected) / expected;
        }
        final double p = ChiSquaredDistribution.of(counts.length - 1).survivalProbability(chi);
        assertTrue(p > 1e-4, "chi-squared " + chi + ", p = " + p);
    }
}
