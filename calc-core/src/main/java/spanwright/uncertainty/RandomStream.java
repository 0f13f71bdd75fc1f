package spanwright.uncertainty;

import org.apache.commons.rng.UniformRandomProvider;

/**
 * Random numbers in blocks: 128 xoroshiro128++ generators (Blackman and Vigna) side by side, so that one
 * step of all
 * of them is a plain loop that the compiler turns into vector instructions. Each stream is set by a seed and
 * a number;
 * the 128 states of all streams are drawn by SplitMix64 from these, and the period of 2^128 makes an overlap
 * of any
 * two less likely than 1e-20 in 1e9 trials of 100 inputs.
 *
 * <p>Not thread safe: one stream belongs to one task.
 */
final class RandomStream implements UniformRandomProvider {
    static final int LANES = 128;
    private static final double UNIT = 0x1.0p-53;
    private static final long GOLDEN = 0x9e3779b97f4a7c15L;

    private final long[] s0 = new long[LANES];
    private final long[] s1 = new long[LANES];
    private final long[] bits = new long[LANES];
    private int used = LANES;

    RandomStream(long seed, long number) {
        final long key = mix(mix(seed + GOLDEN) + number * 0xd1342543de82ef95L);
        for (int lane = 0; lane < LANES; lane++) {
            s0[lane] = mix(key + (2 * lane + 1) * GOLDEN);
            s1[lane] = mix(key + (2 * lane + 2) * GOLDEN);
            if ((s0[lane] | s1[lane]) == 0) {
                s0[lane] = GOLDEN;
            }
        }
    }

    /** Finaliser of SplitMix64 (Stafford's variant 13). */
    static long mix(long value) {
        long z = value;
        z = (z ^ (z >>> 30)) * 0xbf58476d1ce4e5b9L;
        z = (z ^ (z >>> 27)) * 0x94d049bb133111ebL;
        return z ^ (z >>> 31);
    }

    /** One step of every lane. */
    private static void step(long[] s0, long[] s1, long[] bits) {
        for (int i = 0; i < LANES; i++) {
            final long a = s0[i];
            final long sum = a + s1[i];
            final long b = s1[i] ^ a;
            bits[i] = (sum << 17 | sum >>> 47) + a;
            s0[i] = (a << 49 | a >>> 15) ^ b ^ (b << 21);
            s1[i] = b << 28 | b >>> 36;
        }
    }

    @Override
    public long nextLong() {
        if (used == LANES) {
            step(s0, s1, bits);
            used = 0;
        }
        return bits[used++];
    }

    /** Fills with {@code offset + width * r}, r uniform in [0, 1) with 53 bits. */
    void fillUniform(double[] out, int n, double offset, double width) {
        final double scale = width * UNIT;
        int done = 0;
        while (done < n) {
            step(s0, s1, bits);
            final int count = Math.min(LANES, n - done);
            for (int i = 0; i < count; i++) {
                out[done + i] = offset + (bits[i] >>> 11) * scale;
            }
            done += count;
        }
        used = LANES;
    }
}
