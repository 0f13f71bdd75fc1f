package spanwright.kernel.document;

import java.awt.Color;
import java.awt.Insets;
import java.util.Locale;
import java.util.regex.Pattern;
import org.scilab.forge.jlatexmath.TeXConstants;
import org.scilab.forge.jlatexmath.TeXFormula;
import org.scilab.forge.jlatexmath.TeXIcon;
import org.jsoup.nodes.Entities;

/**
 * A formula in LaTeX as a picture inside the page: SVG paths, no font, its source as the text alternative.
 */
final class Formula {
    /** Units of the picture per em of the formula. */
    private static final int EM = 1000;
    /** Size of a formula in em of the text around it, whose letters are larger. */
    private static final double SIZE = 1.15;
    /**
     * Commands that would read files or change later formulas; macros of one notebook must not reach another.
     */
    private static final Pattern REFUSED = Pattern.compile(
        "\\\\(includegraphics|newcommand|renewcommand|newenvironment|renewenvironment|externalFont|def)\\b");

    private Formula() { }

    /**
     * The SVG element; for LaTeX that cannot be drawn, its source marked as such.
     *
     * @param latex   without dollar signs
     * @param display whether it stands on a line of its own
     */
    static String html(String latex, boolean display) {
        try {
            return svg(latex.strip(), display);
        } catch (RuntimeException e) {
            // The parser reports what it cannot read, and our drawing what it refuses, by exceptions of many
            // classes.
            return "<code class=\"formula-error\" title=\"" + escaped("not drawn: " + e.getMessage()) + "\">"
                + escaped(latex.strip()) + "</code>";
        }
    }

    private static String svg(String latex, boolean display) {
        if (latex.isEmpty() || REFUSED.matcher(latex).find()) {
            throw new IllegalArgumentException("empty, or a command that is not for formulas in a page");
        }
        final TeXIcon icon = new TeXFormula(latex).createTeXIcon(
            display ? TeXConstants.STYLE_DISPLAY : TeXConstants.STYLE_TEXT, EM);
        icon.setInsets(new Insets(0, 0, 0, 0));
        icon.setForeground(Color.BLACK);
        final OutlineGraphics graphics = new OutlineGraphics();
        icon.paintIcon(null, graphics, 0, 0);
        final int height = icon.getIconHeight();
        final int width = icon.getIconWidth();
        // Italic letters and accents may reach a little over the box.
        final int margin = EM / 20;
        return String.format(Locale.ROOT, "<svg class=\"formula\" role=\"img\" aria-label=\"%s\""
                + " viewBox=\"%d %d %d %d\" style=\"width:%.3fem;height:%.3fem;vertical-align:%.3fem\">"
                + "<title>%s</title>%s</svg>",
            escaped(latex), -margin, -margin, width + 2 * margin, height + 2 * margin,
            SIZE * (width + 2.0 * margin) / EM, SIZE * (height + 2.0 * margin) / EM,
            -SIZE * (icon.getIconDepth() + margin) / (double) EM, escaped(latex), graphics.paths());
    }

    private static String escaped(String text) {
        return Entities.escape(text);
    }
}
