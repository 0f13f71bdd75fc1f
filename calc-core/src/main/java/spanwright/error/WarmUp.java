package spanwright.error;

import java.util.List;
import java.util.Objects;
import java.util.stream.IntStream;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;
import spanwright.quantity.PercentOfSpan;
import spanwright.quantity.Span;

/**
 * How long a device takes to settle after switching on, at a steady input.
 *
 * @param minutes   time from which on every reading stays within the band about the last
 * @param excursion farthest reading from the last
 * @param band      half width of the band
 * @param course    each reading, against the last, in the order of time
 */
public record WarmUp(double minutes, PercentOfSpan excursion, PercentOfSpan band, List<Moment> course) {
    /**
     * One reading on the way.
     *
     * @param minutes since switching on
     * @param off     the reading less the last one
     */
    public record Moment(double minutes, PercentOfSpan off) {
        /** Checks the components. */
        public Moment {
            Checks.finite("minutes", minutes);
            Objects.requireNonNull(off, "off");
        }
    }

    /**
     * Share of the observed time in which the output must have been settled, so that the end counts as
     * steady.
     */
    private static final double SETTLED_SHARE = 0.25;

    /** Checks the components and copies the list. */
    public WarmUp {
        Checks.notNegative("minutes", minutes);
        Objects.requireNonNull(excursion, "excursion");
        Objects.requireNonNull(band, "band");
        course = List.copyOf(course);
    }

    /**
     * From readings over time.
     *
     * @param minutes   since switching on, rising, at least 3; not modified
     * @param indicated output at each time, in the unit of the range; not modified
     * @param output    range of the output
     * @param band      half width of what counts as settled, above 0
     * @return not determined where the output was still moving in the last quarter of the time
     * @throws IllegalArgumentException if there are fewer than 3, the times do not rise, or the band is not
     *     above 0
     */
    public static Finding<WarmUp> of(double[] minutes, double[] indicated, Span output, PercentOfSpan band) {
        Checks.finitePairs(minutes, indicated, 3);
        Checks.positive("band in percent of span", band.value());
        final int last = minutes.length - 1;
        for (int i = 1; i <= last; i++) {
            if (!(minutes[i] > minutes[i - 1])) {
                throw new IllegalArgumentException("the times must rise: " + minutes[i - 1] + " before "
                    + minutes[i]);
            }
        }
        int settled = last;
        double excursion = 0;
        for (int i = last; i >= 0; i--) {
            final double off = Math.abs(output.ofSpan(indicated[i] - indicated[last]).value());
            excursion = Math.max(excursion, off);
            settled = off <= band.value() && settled == i + 1 || i == last ? i : settled;
        }
        final double steadyFrom = minutes[last] - SETTLED_SHARE * (minutes[last] - minutes[0]);
        if (minutes[settled] > steadyFrom) {
            return Finding.notDetermined("the output was still moving at "
                + NumberText.plain(minutes[settled], 4)
                + " of " + NumberText.plain(minutes[last], 4) + " minutes: watch it longer");
        }
        return Finding.of(new WarmUp(minutes[settled], new PercentOfSpan(excursion), band,
            IntStream.rangeClosed(0, last).mapToObj(i -> new Moment(minutes[i],
                output.ofSpan(indicated[i] - indicated[last]))).toList()));
    }

    @Override
    public String toString() {
        return "settled within \u00b1" + band + " after " + NumberText.plain(minutes, 4)
            + " minutes, having been "
            + NumberText.fixed(excursion.value(), 3) + " % of span off";
    }
}
