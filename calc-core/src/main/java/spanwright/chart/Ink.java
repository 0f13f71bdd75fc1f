package spanwright.chart;

import java.awt.Color;

/**
 * The six colours of our pictures: from the set of M. Okabe and K. Ito, which stays distinguishable under the
 * common forms of colour blindness.
 */
enum Ink {
    BLACK(0x000000),
    BLUE(0x0072B2),
    VERMILION(0xD55E00),
    GREEN(0x009E73),
    ORANGE(0xE69F00),
    PURPLE(0xCC79A7);

    /** Grid and other things that must not speak. */
    static final Color QUIET = new Color(0xDDDDDD);
    /** Secondary text; contrast 7 : 1 on white. */
    static final Color SOFT_TEXT = new Color(0x444444);

    private final Color colour;

    Ink(int rgb) {
        this.colour = new Color(rgb);
    }

    Color colour() {
        return colour;
    }

    /**
     * The colour as a tint on white, for filled areas: 0 is white, 1 the colour itself. Opaque, so that it
     * prints.
     */
    Color tint(double strength) {
        return new Color(mix(colour.getRed(), strength), mix(colour.getGreen(), strength),
            mix(colour.getBlue(), strength));
    }

    private static int mix(int channel, double strength) {
        return (int) Math.round(255 + (channel - 255) * strength);
    }
}
