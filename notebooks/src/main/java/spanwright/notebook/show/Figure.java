package spanwright.notebook.show;

import java.util.Objects;
import spanwright.chart.Picture;

/**
 * A picture within a sheet.
 *
 * @param picture what is drawn
 */
public record Figure(Picture picture) implements Block {
    /** Checks the component. */
    public Figure {
        Objects.requireNonNull(picture, "picture");
    }

    @Override
    public String html() {
        return "<figure style=\"margin:.8em 0;break-inside:avoid\">" + picture.svg() + "</figure>";
    }

    @Override
    public String text() {
        return "[Chart] " + picture.title() + "\n" + picture.alternative();
    }
}
