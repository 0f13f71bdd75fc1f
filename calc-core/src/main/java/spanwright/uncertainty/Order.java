package spanwright.uncertainty;

/** How far the Taylor series of the model is taken (JCGM 100:2008, 5.1.2). */
public enum Order {
    /** Sensitivity coefficients only: the law of propagation of uncertainty. */
    FIRST,
    /** With the terms of next higher order, of which the product of two zero-mean inputs is all there is. */
    SECOND
}
