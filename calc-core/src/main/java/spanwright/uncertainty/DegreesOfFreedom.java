package spanwright.uncertainty;

import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * How well a standard uncertainty is known: a positive count, whole or effective (JCGM 100:2008, G.4), or
 * unlimited where u is taken as exactly known. Unlimited is a state of its own, so that no infinity enters a
 * calculation.
 */
public final class DegreesOfFreedom {
    /** The uncertainty is taken as exactly known. */
    public static final DegreesOfFreedom UNLIMITED = new DegreesOfFreedom(0);

    private final double count;

    private DegreesOfFreedom(double count) {
        this.count = count;
    }

    /**
     * A finite number of degrees of freedom.
     *
     * @param count above 0; need not be whole
     * @throws IllegalArgumentException if the count is zero, negative or not finite
     */
    public static DegreesOfFreedom of(double count) {
        return new DegreesOfFreedom(Checks.positive("degrees of freedom", count));
    }

    /** Whether u is taken as exactly known. */
    public boolean isUnlimited() {
        return count == 0;
    }

    /**
     * The count.
     *
     * @throws IllegalStateException if unlimited
     */
    public double count() {
        if (isUnlimited()) {
            throw new IllegalStateException("the degrees of freedom are unlimited: there is no count");
        }
        return count;
    }

    /** One over the count, 0 where unlimited: the form in which formulas need no special case. */
    public double reciprocal() {
        return isUnlimited() ? 0 : 1 / count;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof DegreesOfFreedom d && Double.compare(d.count, count) == 0;
    }

    @Override
    public int hashCode() {
        return Double.hashCode(count);
    }

    @Override
    public String toString() {
        if (isUnlimited()) {
            return "unlimited";
        }
        return count == Math.rint(count) ? NumberText.fixed(count, 0) : NumberText.significant(count, 3);
    }
}
