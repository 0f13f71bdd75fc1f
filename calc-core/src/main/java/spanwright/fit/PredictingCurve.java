package spanwright.fit;

import spanwright.uncertainty.DegreesOfFreedom;
import spanwright.uncertainty.Estimate;

/** A fitted curve that knows the scatter of single readings about it, and so where the next one will lie. */
public interface PredictingCurve extends FittedCurve {
    /** Standard deviation of a single reading of weight 1 about the curve. */
    double residualSd();

    /** Degrees of freedom of the residuals. */
    DegreesOfFreedom dof();

    /** What one more reading of weight 1 at x will indicate: the curve's uncertainty and the scatter. */
    default Estimate oneReadingAt(double x) {
        final Estimate y = at(x);
        return new Estimate(y.value(), Math.hypot(y.u(), residualSd()), y.dof());
    }

    /**
     * Prediction band at x: where one more reading of weight 1 will lie.
     *
     * @param coverage in the open interval (0, 1), for this one x
     * @throws IllegalArgumentException if the coverage is out of range
     */
    default Interval predictionBand(double x, double coverage) {
        return StudentT.about(oneReadingAt(x), coverage);
    }

    /**
     * How many of the readings lie within the prediction band at their own x, a reading of another weight
     * within a band as much wider or narrower.
     *
     * @param coverage in the open interval (0, 1)
     */
    default int readingsWithin(double coverage) {
        int within = 0;
        for (int i = 0; i < data().size(); i++) {
            final Estimate curve = at(data().x(i));
            final Estimate reading = new Estimate(curve.value(),
                Math.hypot(curve.u(), residualSd() / Math.sqrt(data().weight(i))), curve.dof());
            within += StudentT.about(reading, coverage).contains(data().y(i)) ? 1 : 0;
        }
        return within;
    }
}
