package spanwright.kernel.document;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Paint;
import java.awt.Polygon;
import java.awt.Rectangle;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.Stroke;
import java.awt.font.FontRenderContext;
import java.awt.font.GlyphVector;
import java.awt.geom.AffineTransform;
import java.awt.geom.Arc2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.PathIterator;
import java.awt.geom.RoundRectangle2D;
import java.util.Locale;
import java.util.Map;

/**
 * Collects what is drawn as SVG path data, glyphs as their outlines, so that the picture needs no font. Black
 * takes the colour of the text around it. Not thread safe.
 */
final class OutlineGraphics extends VectorOnlyGraphics {
    private static final FontRenderContext EXACT = new FontRenderContext(null, true, true);

    private final StringBuilder svg = new StringBuilder();
    private final StringBuilder path = new StringBuilder();
    private final RenderingHints hints = new RenderingHints(Map.of());
    private AffineTransform transform = new AffineTransform();
    private Font font = new Font(Font.SERIF, Font.PLAIN, 1);
    private Stroke stroke = new BasicStroke();
    private Color color = Color.BLACK;

    /** The path elements drawn so far. */
    String paths() {
        endPath();
        return svg.toString();
    }

    @Override
    public void fill(Shape shape) {
        final double[] c = new double[6];
        for (PathIterator p = shape.getPathIterator(transform); !p.isDone(); p.next()) {
            final int segment = p.currentSegment(c);
            final int points = segment == PathIterator.SEG_CLOSE ? 0
                : segment == PathIterator.SEG_QUADTO ? 2 : segment == PathIterator.SEG_CUBICTO ? 3 : 1;
            path.append("MLQCZ".charAt(segment));
            for (int i = 0; i < 2 * points; i++) {
                path.append(i == 0 ? "" : " ").append(number(c[i]));
            }
        }
    }

    private static String number(double value) {
        final String text = String.format(Locale.ROOT, "%.1f", value);
        return text.endsWith(".0") ? text.substring(0, text.length() - 2) : text;
    }

    private void endPath() {
        if (path.length() > 0) {
            final String ink = color.equals(Color.BLACK) ? "currentColor"
                : String.format("#%06x", color.getRGB() & 0xffffff);
            svg.append("<path fill=\"").append(ink).append("\" d=\"").append(path).append("\"/>");
            path.setLength(0);
        }
    }

    @Override
    public void setColor(Color other) {
        if (other != null && !other.equals(color)) {
            endPath();
            color = other;
        }
    }

    @Override
    public void setPaint(Paint paint) {
        if (paint instanceof Color other) {
            setColor(other);
        } else {
            throw new UnsupportedOperationException("a formula is drawn in plain colours");
        }
    }

    @Override
    public void draw(Shape shape) {
        fill(stroke.createStrokedShape(shape));
    }

    @Override
    public void drawGlyphVector(GlyphVector glyphs, float x, float y) {
        fill(glyphs.getOutline(x, y));
    }

    @Override
    public void drawString(String text, float x, float y) {
        drawGlyphVector(font.createGlyphVector(EXACT, text), x, y);
    }

    @Override
    public void drawString(String text, int x, int y) {
        drawString(text, (float) x, (float) y);
    }

    @Override
    public void drawLine(int x1, int y1, int x2, int y2) {
        draw(new Line2D.Double(x1, y1, x2, y2));
    }

    @Override
    public void fillRect(int x, int y, int width, int height) {
        fill(new Rectangle(x, y, width, height));
    }

    @Override
    public void drawRoundRect(int x, int y, int width, int height, int arcWidth, int arcHeight) {
        draw(new RoundRectangle2D.Double(x, y, width, height, arcWidth, arcHeight));
    }

    @Override
    public void fillRoundRect(int x, int y, int width, int height, int arcWidth, int arcHeight) {
        fill(new RoundRectangle2D.Double(x, y, width, height, arcWidth, arcHeight));
    }

    @Override
    public void drawOval(int x, int y, int width, int height) {
        draw(new Ellipse2D.Double(x, y, width, height));
    }

    @Override
    public void fillOval(int x, int y, int width, int height) {
        fill(new Ellipse2D.Double(x, y, width, height));
    }

    @Override
    public void drawArc(int x, int y, int width, int height, int start, int angle) {
        draw(new Arc2D.Double(x, y, width, height, start, angle, Arc2D.OPEN));
    }

    @Override
    public void fillArc(int x, int y, int width, int height, int start, int angle) {
        fill(new Arc2D.Double(x, y, width, height, start, angle, Arc2D.PIE));
    }

    @Override
    public void drawPolyline(int[] xs, int[] ys, int points) {
        for (int i = 1; i < points; i++) {
            drawLine(xs[i - 1], ys[i - 1], xs[i], ys[i]);
        }
    }

    @Override
    public void drawPolygon(int[] xs, int[] ys, int points) {
        draw(new Polygon(xs, ys, points));
    }

    @Override
    public void fillPolygon(int[] xs, int[] ys, int points) {
        fill(new Polygon(xs, ys, points));
    }

    @Override
    public void translate(int x, int y) {
        transform.translate(x, y);
    }

    @Override
    public void translate(double x, double y) {
        transform.translate(x, y);
    }

    @Override
    public void rotate(double theta) {
        transform.rotate(theta);
    }

    @Override
    public void rotate(double theta, double x, double y) {
        transform.rotate(theta, x, y);
    }

    @Override
    public void scale(double x, double y) {
        transform.scale(x, y);
    }

    @Override
    public void shear(double x, double y) {
        transform.shear(x, y);
    }

    @Override
    public void transform(AffineTransform other) {
        transform.concatenate(other);
    }

    @Override
    public void setTransform(AffineTransform other) {
        transform = new AffineTransform(other);
    }

    @Override
    public AffineTransform getTransform() {
        return new AffineTransform(transform);
    }

    @Override
    public Paint getPaint() {
        return color;
    }

    @Override
    public Color getColor() {
        return color;
    }

    @Override
    public void setBackground(Color other) {
        // An outline has none.
    }

    @Override
    public Color getBackground() {
        return Color.WHITE;
    }

    @Override
    public void setStroke(Stroke other) {
        stroke = other;
    }

    @Override
    public Stroke getStroke() {
        return stroke;
    }

    @Override
    public void setRenderingHint(RenderingHints.Key key, Object value) {
        hints.put(key, value);
    }

    @Override
    public Object getRenderingHint(RenderingHints.Key key) {
        return hints.get(key);
    }

    @Override
    public void setRenderingHints(Map<?, ?> others) {
        hints.clear();
        hints.putAll(others);
    }

    @Override
    public void addRenderingHints(Map<?, ?> others) {
        hints.putAll(others);
    }

    @Override
    public RenderingHints getRenderingHints() {
        return (RenderingHints) hints.clone();
    }

    @Override
    public FontRenderContext getFontRenderContext() {
        return EXACT;
    }

    @Override
    public Font getFont() {
        return font;
    }

    @Override
    public void setFont(Font other) {
        font = other;
    }

    @Override
    public Rectangle getClipBounds() {
        return new Rectangle(-1 << 20, -1 << 20, 1 << 21, 1 << 21);
    }

    @Override
    public Shape getClip() {
        return getClipBounds();
    }

    @Override
    public void setPaintMode() {
        // The only mode there is.
    }

    @Override
    public void dispose() {
        // Holds no resource.
    }
}
