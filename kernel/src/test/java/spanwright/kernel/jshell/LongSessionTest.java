package spanwright.kernel.jshell;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** The short version of a long session; the long one is a script beside the benchmarks. */
class LongSessionTest {
    private static final int CELLS = 400;
    private static final long KILOBYTES_PER_CELL = 12;

    @Test
    void cellsStayFastAndLeaveLittleBehind() {
        try (Cells cells = new Cells("import java.util.*;")) {
            cells.run("int x = 0; List<Integer> list = new ArrayList<>();");
            run(cells, 100);
            final long heap = heapAfterCollection();
            final long early = fastQuarter(run(cells, 50));
            run(cells, CELLS - 100);
            final long late = fastQuarter(run(cells, 50));
            final long grown = (heapAfterCollection() - heap) / 1024 / CELLS;
            assertThat(late).as("fast quarter of 50 cells, ns").isLessThan(3 * early);
            assertThat(grown).as("kilobytes a cell").isLessThan(KILOBYTES_PER_CELL);
        }
    }

    private static long[] run(Cells cells, int count) {
        final long[] nanos = new long[count];
        for (int i = 0; i < count; i++) {
            final long begin = System.nanoTime();
            switch (i % 4) {
                case 0 -> cells.value("x + " + i);
                case 1 -> cells.shown("x = " + i + ";\nlist.add(x);");
                case 2 -> cells.shown("System.out.println(" + i + ");");
                default -> cells.value("list.size()");
            }
            nanos[i] = System.nanoTime() - begin;
        }
        return nanos;
    }

    /** Robust against a busy machine: the slow three quarters do not count. */
    private static long fastQuarter(long[] nanos) {
        final long[] sorted = nanos.clone();
        Arrays.sort(sorted);
        return sorted[sorted.length / 4];
    }

    private static long heapAfterCollection() {
        System.gc();
        return Runtime.getRuntime().totalMemory() - Runtime.getRuntime().freeMemory();
    }
}
