package spanwright.chart;

import java.awt.Font;
import java.awt.font.FontRenderContext;

/** Width of text in pixels, the same whatever it is drawn on. */
final class TextSize {
    private static final FontRenderContext PLAIN = new FontRenderContext(null, true, true);

    private TextSize() { }

    static double width(String text, Font font) {
        return font.getStringBounds(text, PLAIN).getWidth();
    }
}
