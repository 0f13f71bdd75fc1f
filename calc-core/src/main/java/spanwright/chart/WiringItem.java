package spanwright.chart;

import java.awt.Color;
import java.awt.Font;
import java.util.Objects;
import spanwright.quantity.Checks;

/** A thing on a wiring diagram, with the room it takes. */
sealed interface WiringItem permits WiringItem.Label, WiringItem.Part, WiringItem.Wire {
    /** The room it takes, in pixels. */
    Box box();

    /** The same thing elsewhere. */
    WiringItem moved(double dx, double dy);

    /**
     * A rectangle in pixels; y grows downwards.
     *
     * @param left   smallest x
     * @param top    smallest y
     * @param right  largest x
     * @param bottom largest y
     */
    record Box(double left, double top, double right, double bottom) {
        /** Whether two rectangles share more than an edge. */
        boolean overlaps(Box other) {
            return left < other.right && other.left < right && top < other.bottom && other.top < bottom;
        }

        Box moved(double dx, double dy) {
            return new Box(left + dx, top + dy, right + dx, bottom + dy);
        }

        Box shrunk(double by) {
            return new Box(left + by, top + by, right - by, bottom - by);
        }

        double middleX() {
            return (left + right) / 2;
        }

        double middleY() {
            return (top + bottom) / 2;
        }
    }

    /** How a text looks. */
    enum Style {
        /** Name of a device. */
        NAME(Font.BOLD, Color.BLACK),
        /** What it is, and the voltage across it. */
        PLAIN(Font.PLAIN, Color.BLACK),
        /** Potential of a wire. */
        POTENTIAL(Font.PLAIN, Ink.BLUE.colour()),
        /** Name of a terminal. */
        TERMINAL(Font.BOLD, Color.BLACK),
        /** A current that is less than was asked for. */
        SHORT(Font.BOLD, Ink.VERMILION.colour());

        private final Font font;
        private final Color colour;

        Style(int weight, Color colour) {
            this.font = new Font(Font.SANS_SERIF, weight, 12);
            this.colour = colour;
        }

        Font font() {
            return font;
        }

        Color colour() {
            return colour;
        }

        double width(String text) {
            return TextSize.width(text, font);
        }
    }

    /**
     * A line of text.
     *
     * @param text     what it says
     * @param left     where it begins
     * @param baseline where it stands
     * @param style    how it looks
     */
    record Label(String text, double left, double baseline, Style style) implements WiringItem {
        public Label {
            Checks.notBlank("text", text);
            Objects.requireNonNull(style, "style");
        }

        @Override
        public Box box() {
            return new Box(left, baseline - 10, left + style.width(text), baseline + 3);
        }

        @Override
        public Label moved(double dx, double dy) {
            return new Label(text, left + dx, baseline + dy, style);
        }
    }

    /**
     * A symbol.
     *
     * @param symbol   which
     * @param upright  whether it stands in a wire that runs up and down
     * @param box      the room it takes
     * @param railTop  of an isolator, height of its input wire; else the height of its own wire
     * @param railDown of an isolator, height of its output wire; else the height of its own wire
     */
    record Part(WiringSymbol symbol, boolean upright, Box box, double railTop, double railDown)
            implements WiringItem {
        @Override
        public Part moved(double dx, double dy) {
            return new Part(symbol, upright, box.moved(dx, dy), railTop + dy, railDown + dy);
        }
    }

    /**
     * A straight wire.
     *
     * @param x1 where it begins
     * @param y1 where it begins
     * @param x2 where it ends
     * @param y2 where it ends
     */
    record Wire(double x1, double y1, double x2, double y2) implements WiringItem {
        @Override
        public Box box() {
            return new Box(Math.min(x1, x2), Math.min(y1, y2), Math.max(x1, x2), Math.max(y1, y2));
        }

        @Override
        public Wire moved(double dx, double dy) {
            return new Wire(x1 + dx, y1 + dy, x2 + dx, y2 + dy);
        }
    }
}
