package spanwright.uncertainty;

/**
 * Standard normal numbers in blocks, by a ziggurat of 1024 equal parts (after Marsaglia and Tsang 2000, with
 * the strips inscribed under the curve as McFarland 2016 has them): 1021 parts are rectangles that lie wholly
 * under the curve, so that 997 of 1000 numbers cost one product and nothing is compared. The last 3 parts are
 * what the rectangles leave out: the tail, the piece beside each rectangle and the cap.
 *
 * <p>Of 32 random bits the lower 10 choose the part and the other 22 give the place within its rectangle, so
 * that neither tells of the other. What the rectangles leave out is drawn from 53 bits.
 */
final class Ziggurat {
    private static final int PARTS = 1024;
    private static final int RECTANGLES = PARTS - 3;
    /** Of 32 random bits, those that give the place within a rectangle; the lower ones choose it. */
    private static final long PLACE = 0x1_0000_0000L - PARTS;
    /** Area of a part, of half the curve exp(-x^2 / 2). */
    private static final double AREA = Math.sqrt(Math.PI / 2) / PARTS;
    /** Right edge of the topmost rectangle: the root at which the lowest one ends on the axis. */
    private static final double TOP = 0.17030914885187994;
    /** Area of the tail, exp(-x^2 / 2) integrated from the lowest right edge (SciPy 1.10.1, norm.sf). */
    private static final double TAIL_AREA = 7.15774793584565e-05;
    /** Right edge of each rectangle, the lowest first; 1 for the other parts. */
    private static final double[] EDGE = new double[PARTS];
    /** The curve at each right edge, where the rectangle's upper side meets it. */
    private static final double[] UPPER = new double[RECTANGLES];
    /**
     * Areas of the tail, of the boxes that hold the pieces beside the rectangles, and of the cap's box, added
     * up.
     */
    private static final double[] LEFT_OUT = new double[RECTANGLES + 1];
    /** For equal steps of the area left out, the region to look at first. */
    private static final int[] GUIDE = new int[PARTS];

    /** All of these but the cap, which is nearly half of them and so worth a question of its own. */
    private static final double BESIDE;

    static {
        layRectangles();
        addLeftOut();
        BESIDE = LEFT_OUT[RECTANGLES - 1];
    }

    private Ziggurat() { }

    private static void layRectangles() {
        double x = TOP;
        double upper = Math.exp(-x * x / 2);
        for (int i = RECTANGLES - 1; i >= 0; i--) {
            EDGE[i] = x;
            UPPER[i] = upper;
            upper -= AREA / x;
            x = Math.sqrt(-2 * Math.log(upper));
        }
        for (int i = RECTANGLES; i < PARTS; i++) {
            EDGE[i] = 1;
        }
    }

    private static void addLeftOut() {
        LEFT_OUT[0] = TAIL_AREA;
        for (int i = 1; i < RECTANGLES; i++) {
            LEFT_OUT[i] = LEFT_OUT[i - 1] + (EDGE[i - 1] - EDGE[i]) * (UPPER[i] - UPPER[i - 1]);
        }
        LEFT_OUT[RECTANGLES] = LEFT_OUT[RECTANGLES - 1] + TOP * (1 - UPPER[RECTANGLES - 1]);
        int region = 0;
        for (int step = 0; step < PARTS; step++) {
            while (LEFT_OUT[region] * PARTS < step * LEFT_OUT[RECTANGLES]) {
                region++;
            }
            GUIDE[step] = region;
        }
    }

    /**
     * The area that the rectangles leave out, over that of three parts: 1 if the topmost begins at the right
     * place. For the test.
     */
    static double closure() {
        double area = Math.sqrt(2 * Math.PI) * Normal.standardCumulative(-EDGE[0]);
        for (int i = 1; i <= RECTANGLES; i++) {
            final double inner = i == RECTANGLES ? 0 : EDGE[i];
            final double between = Normal.standardCumulative(EDGE[i - 1]) - Normal.standardCumulative(inner);
            area += Math.sqrt(2 * Math.PI) * between - (EDGE[i - 1] - inner) * UPPER[i - 1];
        }
        return area / ((PARTS - RECTANGLES) * AREA);
    }

    /** The area taken for the tail, over what the normal distribution has there; 1. For the test. */
    static double tailClosure() {
        return TAIL_AREA / (Math.sqrt(2 * Math.PI) * Normal.standardCumulative(-EDGE[0]));
    }

    /** Fills {@code out[0..n)} with {@code mean + sd * z}. */
    static void fill(RandomStream random, double[] out, int n, double mean, double sd) {
        final long[] halves = random.nextHalves();
        final int[] rest = random.indices();
        final int count = fillRectangles(halves, random.mantissas(halves, PLACE), out, n, rest);
        for (int k = 0; k < count; k++) {
            out[rest[k]] = leftOut(random);
        }
        if (mean != 0 || sd != 1) {
            scale(out, n, sd, mean);
        }
    }

    private static void scale(double[] out, int n, double factor, double offset) {
        for (int t = 0; t < n; t++) {
            out[t] = out[t] * factor + offset;
        }
    }

    /**
     * Points of the rectangles that the patterns choose. Lists and counts the places where they choose none;
     * there it puts a number uniform in [-1, 1).
     */
    private static int fillRectangles(long[] halves, long[] places, double[] out, int n, int[] rest) {
        int count = 0;
        for (int t = 0; t < n; t++) {
            final int part = (int) halves[t] & PARTS - 1;
            out[t] = (Double.longBitsToDouble(places[t]) - 3) * EDGE[part];
            if (part >= RECTANGLES) {
                rest[count++] = t;
            }
        }
        return count;
    }

    /** A point of the regions that the rectangles leave out. */
    private static double leftOut(RandomStream random) {
        while (true) {
            final double choice = 2 * random.nextDouble() - 1;
            final double area = Math.abs(choice) * LEFT_OUT[RECTANGLES];
            final int region = area > BESIDE ? RECTANGLES : regionOf(area, Math.abs(choice));
            final double x = region == 0 ? tail(random) : inBox(random, region);
            if (x >= 0) {
                return Math.copySign(x, choice);
            }
        }
    }

    private static int regionOf(double area, double share) {
        int region = GUIDE[(int) (share * PARTS)];
        while (LEFT_OUT[region] < area) {
            region++;
        }
        return region;
    }

    /** A point under the curve in the box left of an edge, above the rectangle that ends there; or -1. */
    private static double inBox(RandomStream random, int region) {
        final double left = region == RECTANGLES ? 0 : EDGE[region];
        final double top = region == RECTANGLES ? 1 : UPPER[region];
        final double x = left + (EDGE[region - 1] - left) * random.nextDouble();
        final double y = UPPER[region - 1] + (top - UPPER[region - 1]) * random.nextDouble();
        // Below 1 - x^2 / 2 a point lies under the curve: near the top this decides nearly always.
        return y < 1 - x * x / 2 || y < Math.exp(-x * x / 2) ? x : -1;
    }

    /** Marsaglia's method for the tail of the normal distribution. */
    private static double tail(RandomStream random) {
        double x;
        double y;
        do {
            x = -Math.log(1 - random.nextDouble()) / EDGE[0];
            y = -Math.log(1 - random.nextDouble());
        } while (2 * y < x * x);
        return EDGE[0] + x;
    }
}
