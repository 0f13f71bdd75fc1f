package spanwright.chart;

import java.util.Comparator;
import java.util.stream.IntStream;
import spanwright.quantity.Checks;

/** Keeps labels beside their lines apart. */
final class Labels {
    private Labels() { }

    /**
     * The places nearest to the wanted ones, in their order, at least a gap apart: neighbours that would
     * touch are set as one block about the mean of what they want.
     *
     * @param wanted places, in any order; not modified
     * @param gap    least distance, above 0
     * @return the places, in the order given
     */
    static double[] spread(double[] wanted, double gap) {
        Checks.positive("gap", gap);
        final int n = wanted.length;
        final int[] order = IntStream.range(0, n).boxed().sorted(Comparator.comparingDouble(i -> wanted[i]))
            .mapToInt(Integer::intValue).toArray();
        // Blocks from the lowest: first label, count, and the sum of where its members want the block to
        // begin.
        final int[] first = new int[n];
        final int[] count = new int[n];
        final double[] begin = new double[n];
        int blocks = 0;
        for (int k = 0; k < n; k++) {
            first[blocks] = k;
            count[blocks] = 1;
            begin[blocks] = wanted[order[k]];
            blocks++;
            while (blocks > 1 && begin[blocks - 2] + gap * count[blocks - 2] > begin[blocks - 1]) {
                final int a = blocks - 2;
                final int both = count[a] + count[a + 1];
                begin[a] = (begin[a] * count[a] + (begin[a + 1] - gap * count[a]) * count[a + 1]) / both;
                count[a] = both;
                blocks--;
            }
        }
        final double[] places = new double[n];
        for (int b = 0; b < blocks; b++) {
            for (int j = 0; j < count[b]; j++) {
                places[order[first[b] + j]] = begin[b] + gap * j;
            }
        }
        return places;
    }
}
