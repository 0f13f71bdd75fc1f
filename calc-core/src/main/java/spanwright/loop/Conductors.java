package spanwright.loop;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * Resistance of copper conductors at 20 degC, and how it grows with temperature.
 *
 * <p>Two factors are in use and both are kept, by name: 0.00393 per K for annealed copper (IEC 60028, from
 * memory), and 250 / (230 + t), that is 0.00400 per K, by which IEC 60228 brings measured values to 20 degC.
 */
public final class Conductors {
    /** Temperature coefficient of annealed copper at 20 degC, per K (in the manner of IEC 60028). */
    public static final double COPPER_PER_KELVIN = 0.00393;
    /** The coefficient that the correction factors of IEC 60228 imply, per K. */
    public static final double IEC_60228_PER_KELVIN = 0.004;

    private static final double METRES_PER_1000_FEET = 304.8;
    /** Resistivity of annealed copper at 20 degC is 1/58 ohm mm2/m (in the manner of IEC 60028). */
    private static final double COPPER_OHM_MM2_PER_KM = 1000.0 / 58;
    private static final List<Double> AREAS = List.of(0.5, 0.75, 1.0, 1.5, 2.5, 4.0);
    /**
     * Largest resistance at 20 degC in ohm/km by area (rows) and class (columns): IEC 60228, public reprints.
     */
    private static final double[][] LARGEST = {
        {36.0, 36.0, 39.0, 36.7, 40.1},
        {24.5, 24.5, 26.0, 24.8, 26.7},
        {18.1, 18.1, 19.5, 18.2, 20.0},
        {12.1, 12.1, 13.3, 12.2, 13.7},
        {7.41, 7.41, 7.98, 7.56, 8.21},
        {4.61, 4.61, 4.95, 4.7, 5.09}};
    private static final int FIRST_GAUGE = 12;
    /** Ohm per 1000 ft at 20 degC, gauges 12 to 24: a public table of copper wire. */
    private static final double[] GAUGES = {1.588, 2.003, 2.525, 3.184, 4.016, 5.064, 6.385, 8.051, 10.15,
        12.8,
        16.14, 20.36, 25.67};

    private Conductors() { }

    /** The areas of the table in mm2, ascending. */
    public static List<Double> areas() {
        return AREAS;
    }

    /**
     * Largest resistance of one conductor at 20 degC, in ohm/km.
     *
     * @throws IllegalArgumentException if the area is not in the table
     */
    public static double largestOhmsPerKm(double areaMm2, ConductorClass conductor) {
        final int row = AREAS.indexOf(areaMm2);
        if (row < 0) {
            throw new IllegalArgumentException("conductor area is " + areaMm2 + " mm\u00b2: the table has "
                + AREAS
                + "; give the measured ohm/km instead");
        }
        return LARGEST[row][conductor.column()];
    }

    /** Resistance of solid annealed copper of the full nominal area at 20 degC, in ohm/km: a lower bound. */
    public static double idealOhmsPerKm(double areaMm2) {
        return COPPER_OHM_MM2_PER_KM / areaMm2;
    }

    /**
     * Resistance of one solid copper wire by gauge at 20 degC, in ohm/km.
     *
     * @param gauge American wire gauge, 12 to 24
     * @throws IllegalArgumentException if the gauge is not in the table
     */
    public static double gaugeOhmsPerKm(int gauge) {
        final int at = gauge - FIRST_GAUGE;
        if (at < 0 || at >= GAUGES.length) {
            throw new IllegalArgumentException(String.format(Locale.ROOT,
                "gauge is %d: the table has %d to %d",
                gauge, FIRST_GAUGE, FIRST_GAUGE + GAUGES.length - 1));
        }
        return GAUGES[at] / METRES_PER_1000_FEET * 1000;
    }

    /** Factor by which IEC 60228 multiplies a resistance measured at t degC to bring it to 20 degC. */
    public static double toTwentyDegrees(double degrees) {
        return 250 / (230 + degrees);
    }

    /** The gauges of the table, thickest first. */
    public static List<Integer> gauges() {
        return Arrays.stream(GAUGES).boxed().map(r -> FIRST_GAUGE + indexOf(r)).toList();
    }

    private static int indexOf(double resistance) {
        return Arrays.binarySearch(GAUGES, resistance);
    }
}
