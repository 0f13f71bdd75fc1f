package spanwright.kernel.document;

import java.awt.Color;
import java.awt.Composite;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.GraphicsConfiguration;
import java.awt.Image;
import java.awt.Rectangle;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.image.BufferedImage;
import java.awt.image.BufferedImageOp;
import java.awt.image.ImageObserver;
import java.awt.image.RenderedImage;
import java.awt.image.renderable.RenderableImage;
import java.text.AttributedCharacterIterator;

/** The drawing calls that a formula has no use for: raster pictures, clips, composites. Each is refused. */
abstract class VectorOnlyGraphics extends Graphics2D {
    private static UnsupportedOperationException refused() {
        return new UnsupportedOperationException("a formula holds glyphs and lines only, no pictures");
    }

    @Override
    public boolean drawImage(Image image, AffineTransform at, ImageObserver observer) {
        throw refused();
    }

    @Override
    public void drawImage(BufferedImage image, BufferedImageOp op, int x, int y) {
        throw refused();
    }

    @Override
    public void drawRenderedImage(RenderedImage image, AffineTransform at) {
        throw refused();
    }

    @Override
    public void drawRenderableImage(RenderableImage image, AffineTransform at) {
        throw refused();
    }

    @Override
    public void drawString(AttributedCharacterIterator text, int x, int y) {
        throw refused();
    }

    @Override
    public void drawString(AttributedCharacterIterator text, float x, float y) {
        throw refused();
    }

    @Override
    public boolean hit(Rectangle rectangle, Shape shape, boolean onStroke) {
        throw refused();
    }

    @Override
    public GraphicsConfiguration getDeviceConfiguration() {
        throw refused();
    }

    @Override
    public void setComposite(Composite composite) {
        throw refused();
    }

    @Override
    public Composite getComposite() {
        throw refused();
    }

    @Override
    public void clip(Shape shape) {
        throw refused();
    }

    @Override
    public Graphics create() {
        throw refused();
    }

    @Override
    public void setXORMode(Color other) {
        throw refused();
    }

    @Override
    public FontMetrics getFontMetrics(Font font) {
        throw refused();
    }

    @Override
    public void clipRect(int x, int y, int width, int height) {
        throw refused();
    }

    @Override
    public void setClip(int x, int y, int width, int height) {
        throw refused();
    }

    @Override
    public void setClip(Shape shape) {
        throw refused();
    }

    @Override
    public void copyArea(int x, int y, int width, int height, int dx, int dy) {
        throw refused();
    }

    @Override
    public void clearRect(int x, int y, int width, int height) {
        throw refused();
    }

    @Override
    public boolean drawImage(Image image, int x, int y, ImageObserver observer) {
        throw refused();
    }

    @Override
    public boolean drawImage(Image image, int x, int y, int width, int height, ImageObserver observer) {
        throw refused();
    }

    @Override
    public boolean drawImage(Image image, int x, int y, Color background, ImageObserver observer) {
        throw refused();
    }

    @Override
    public boolean drawImage(Image image, int x, int y, int width, int height, Color back,
            ImageObserver observer) {
        throw refused();
    }

    @Override
    public boolean drawImage(Image image, int a, int b, int c, int d, int e, int f, int g,
            int h, ImageObserver observer) {
        throw refused();
    }

    @Override
    public boolean drawImage(Image image, int a, int b, int c, int d, int e, int f, int g,
            int h, Color back, ImageObserver observer) {
        throw refused();
    }
}
