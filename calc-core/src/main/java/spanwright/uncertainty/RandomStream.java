package spanwright.uncertainty;

import org.apache.commons.rng.UniformRandomProvider;

/**
 * Random numbers in blocks: 512 xoroshiro128++ generators (Blackman and Vigna) side by side, so that one step
 * of all of them is a plain loop that the compiler turns into vector instructions. A stream is set by a seed
 * and a number; the states of its 512 generators are drawn by SplitMix64 from both. Their period is 2^128, so
 * that an overlap of any two among 1e9 trials of 100 inputs is less likely than 1e-15.
 *
 * <p>A block of draws takes 32 bits for each, so that one step serves two blocks. A rectangular input thus
 * has 2^32 different values, its limits 2^-32 of the width apart from them; a normal input has steps of at
 * most two millionths of its standard uncertainty. Both are far below what 1e9 trials tell apart.
 *
 * <p>Not thread safe: one stream at a time belongs to one task.
 */
final class RandomStream implements UniformRandomProvider {
    /** Generators side by side, and the most values filled at once. */
    static final int BLOCK = 512;
    private static final long TWO = Double.doubleToRawLongBits(2);
    private static final long GOLDEN = 0x9e3779b97f4a7c15L;

    private final long[] s0 = new long[BLOCK];
    private final long[] s1 = new long[BLOCK];
    private final long[] ready = new long[BLOCK];
    private final long[] bits = new long[BLOCK];
    private final long[] mantissas = new long[BLOCK];
    private final int[] indices = new int[BLOCK];
    private int used;
    private boolean halfLeft;

    RandomStream(long seed, long number) {
        restart(seed, number);
    }

    /** Makes this the stream of another seed and number, as if new. */
    void restart(long seed, long number) {
        final long key = keyOf(seed, number);
        for (int lane = 0; lane < BLOCK; lane++) {
            s0[lane] = mix(key + (2 * lane + 1) * GOLDEN);
            s1[lane] = mix(key + (2 * lane + 2) * GOLDEN);
            if ((s0[lane] | s1[lane]) == 0) {
                s0[lane] = GOLDEN;
            }
        }
        used = BLOCK;
        halfLeft = false;
    }

    /** Where the SplitMix64 that draws the states begins. */
    static long keyOf(long seed, long number) {
        return mix(mix(seed + GOLDEN) + number * 0xd1342543de82ef95L);
    }

    /** Finaliser of SplitMix64 (Stafford's variant 13). */
    private static long mix(long value) {
        long z = value;
        z = (z ^ (z >>> 30)) * 0xbf58476d1ce4e5b9L;
        z = (z ^ (z >>> 27)) * 0x94d049bb133111ebL;
        return z ^ (z >>> 31);
    }

    /** One step of every generator into {@code out}. */
    private static void step(long[] s0, long[] s1, long[] out) {
        for (int i = 0; i < BLOCK; i++) {
            final long a = s0[i];
            final long c = s1[i];
            final long sum = a + c;
            final long b = c ^ a;
            out[i] = (sum << 17 | sum >>> 47) + a;
            s0[i] = (a << 49 | a >>> 15) ^ b ^ (b << 21);
            s1[i] = b << 28 | b >>> 36;
        }
    }

    @Override
    public long nextLong() {
        if (used == BLOCK) {
            step(s0, s1, ready);
            used = 0;
        }
        return ready[used++];
    }

    /**
     * A block of patterns of which the lower 32 bits are random and the upper ones not to be used; the array
     * is used again by the next call. Two calls take one step of the generators: the first gives the lower
     * halves of their numbers, the second the upper ones.
     */
    long[] nextHalves() {
        if (halfLeft) {
            lower(bits);
        } else {
            step(s0, s1, bits);
        }
        halfLeft = !halfLeft;
        return bits;
    }

    private static void lower(long[] bits) {
        for (int i = 0; i < BLOCK; i++) {
            bits[i] >>>= 32;
        }
    }

    /** Scratch space for a list of positions within a block. */
    int[] indices() {
        return indices;
    }

    /**
     * Numbers from 2 up to 4, as bits: of each pattern the lower 32 bits but those masked out, and half a
     * step more. Such numbers have one exponent, so that their bits need no conversion, only to be read as a
     * double. The array is used again by the next call.
     */
    long[] mantissas(long[] halves, long mask) {
        toMantissas(halves, mask, mantissas);
        return mantissas;
    }

    private static void toMantissas(long[] halves, long mask, long[] out) {
        final long middle = TWO | (mask & -mask) << 19;
        for (int i = 0; i < BLOCK; i++) {
            out[i] = (halves[i] & mask) << 20 | middle;
        }
    }

    /**
     * Fills {@code out[0..n)} with {@code centre + half * r}, r uniform in (-1, 1): the middle of one of 2^32
     * steps.
     */
    void fillUniform(double[] out, int n, double centre, double half) {
        scale(mantissas(nextHalves(), 0xffff_ffffL), out, n, half, centre);
    }

    private static void scale(long[] mantissas, double[] out, int n, double half, double centre) {
        for (int t = 0; t < n; t++) {
            out[t] = (Double.longBitsToDouble(mantissas[t]) - 3) * half + centre;
        }
    }
}
