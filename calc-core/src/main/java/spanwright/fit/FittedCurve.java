package spanwright.fit;

import spanwright.uncertainty.Estimate;

/** A line or curve fitted to readings, with the uncertainty of the curve itself. */
public interface FittedCurve {
    /** What it was fitted to. */
    FittedData data();

    /** Returns y of the curve at x, with the uncertainty of the curve. */
    Estimate at(double x);

    /**
     * Confidence band at x: where the curve itself lies.
     *
     * @param coverage in the open interval (0, 1), for this one x
     * @throws IllegalArgumentException if the coverage is out of range
     */
    default Interval confidenceBand(double x, double coverage) {
        return StudentT.about(at(x), coverage);
    }

    /** How far the y of a reading, counted from 0, lies above the curve. */
    default double residual(int index) {
        return data().y(index) - at(data().x(index)).value();
    }
}
