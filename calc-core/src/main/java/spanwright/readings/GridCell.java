package spanwright.readings;

import java.util.Objects;

/**
 * The text of one cell and, from a workbook, what kind of cell it is.
 *
 * @param text     as it stands
 * @param kind     text, or what the workbook says
 * @param decimals decimals that the cell displays, -1 if the text itself shows them
 */
record GridCell(String text, Kind kind, int decimals) {
    /** Kind of cell. */
    enum Kind {
        /** Text, all there is in a text file. */
        TEXT,
        /** A number in a workbook. */
        NUMBER,
        /** A date in a workbook. */
        DATE
    }

    static final GridCell EMPTY = new GridCell("", Kind.TEXT, -1);

    GridCell {
        Objects.requireNonNull(text, "text");
        Objects.requireNonNull(kind, "kind");
    }

    static GridCell text(String text) {
        return text.isEmpty() ? EMPTY : new GridCell(text, Kind.TEXT, -1);
    }

    boolean isBlank() {
        return Characters.plain(text).isEmpty();
    }
}
