package spanwright.notebook.show;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import spanwright.quantity.Checks;

/**
 * Computed figures beside those of a source: published, or worked by hand where the source column says so.
 * The printed digits set the tolerance: half a unit of the last printed place, asking no finer than 1e-11 of
 * the value, or what the source itself allows.
 *
 * @param title what is compared
 * @param rows  the figures
 */
public record Comparison(String title, List<Row> rows) {
    private static final double FLOOR = 1e-11;
    private static final int MOST_DIGITS = 15;

    /**
     * One figure.
     *
     * @param what     the figure, with its unit
     * @param printed  as published
     * @param computed by us
     * @param allowed  largest difference that counts as agreement
     * @param source   where it is published
     */
    public record Row(String what, String printed, double computed, double allowed, String source) {
        /** Checks the components. */
        public Row {
            Objects.requireNonNull(what, "what");
            Objects.requireNonNull(source, "source");
            Checks.finite("computed", computed);
            Checks.notNegative("allowed", allowed);
            if (!printed.matches("[-+]?[0-9.]+([eE][-+]?[0-9]+)?")) {
                throw new IllegalArgumentException("published figure \"" + printed + "\" is not a number");
            }
        }

        /** Whether computed and published agree. */
        public boolean agrees() {
            return Math.abs(computed - published()) <= allowed;
        }

        /** Decimal digits to which they agree, at most 15. */
        public int digits() {
            final double difference = Math.abs(computed - published());
            if (difference == 0) {
                return MOST_DIGITS;
            }
            final double scale = published() == 0 ? 1 : Math.abs(published());
            return (int) Math.max(0, Math.min(MOST_DIGITS, Math.floor(-Math.log10(difference / scale))));
        }

        /** Computed, with three digits more than the source prints, as far as a double has them. */
        private String computedText() {
            final int digits = Math.min(MOST_DIGITS, new BigDecimal(printed).precision() + 3);
            return String.format(Locale.ROOT, "%." + digits + "g", computed);
        }

        private double published() {
            return new BigDecimal(printed).doubleValue();
        }
    }

    /** Checks the components and copies the list. */
    public Comparison {
        Objects.requireNonNull(title, "title");
        rows = List.copyOf(rows);
    }

    /** A comparison without rows. */
    public static Comparison of(String title) {
        return new Comparison(title, List.of());
    }

    /** With a figure that must agree as printed. */
    public Comparison row(String what, String printed, double computed, String source) {
        final BigDecimal p = new BigDecimal(printed);
        return row(what, printed, computed,
            Math.max(p.ulp().doubleValue() / 2 * (1 + 1e-9), FLOOR * Math.abs(p.doubleValue())), source);
    }

    /** With a figure whose source allows a difference, such as a published simulation. */
    public Comparison row(String what, String printed, double computed, double allowed, String source) {
        final List<Row> more = new ArrayList<>(rows);
        more.add(new Row(what, printed, computed, allowed, source));
        return new Comparison(title, more);
    }

    /** How many figures agree. */
    public long agreed() {
        return rows.stream().filter(Row::agrees).count();
    }

    /** The result in one sentence. */
    public String sentence() {
        return title + ": " + agreed() + " of " + rows.size() + " figures agree with their sources"
            + (agreed() == rows.size() ? "." : "; " + rows.stream().filter(r -> !r.agrees()).map(Row::what)
                .toList()
            + " do not.");
    }

    Sheet sheet() {
        final Grid.Builder grid = Grid.of(title, "figure", "#in the source", "#computed", "#digits", "agrees",
            "source");
        for (Row row : rows) {
            grid.row(List.of(row.what(), row.printed(), row.computedText(), Integer.toString(row.digits()),
                row.agrees() ? "\u2713 yes" : "\u2717 no", row.source()),
                !row.agrees(), String.format(Locale.ROOT, "%.17g", row.computed()));
        }
        return Sheet.saying(sentence()).with(grid.build());
    }

    @Override
    public String toString() {
        return sentence();
    }
}
