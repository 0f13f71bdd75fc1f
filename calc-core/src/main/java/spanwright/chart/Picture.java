package spanwright.chart;

import de.erichseifert.vectorgraphics2d.Document;
import de.erichseifert.vectorgraphics2d.Processors;
import de.erichseifert.vectorgraphics2d.VectorGraphics2D;
import de.erichseifert.vectorgraphics2d.intermediate.CommandSequence;
import de.erichseifert.vectorgraphics2d.util.PageSize;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import javax.imageio.ImageIO;
import org.knowm.xchart.internal.chartpart.IChart;
import spanwright.quantity.Checks;

/**
 * A finished picture: a sentence as its title, one chart or several on the same scale under it, and a text
 * alternative. Drawn anew at each request; not changed by it. Not thread safe, since XChart's charts are not.
 */
public final class Picture {
    private static final int MARGIN = 12;
    private static final int LINE = 19;
    private static final Font TITLE_FONT = new Font(Font.SANS_SERIF, Font.BOLD, 14);

    private final String title;
    private final String alternative;
    private final List<IChart> panels;
    private final boolean titled;
    private final int panelWidth;
    private final int panelHeight;

    Picture(String title, String alternative, List<? extends IChart> panels) {
        this(title, alternative, panels, true);
    }

    private Picture(String title, String alternative, List<? extends IChart> panels, boolean titled) {
        this.title = Checks.notBlank("title", title);
        this.alternative = Checks.notBlank("text alternative", alternative);
        this.panels = List.copyOf(panels);
        this.titled = titled;
        Checks.atLeast("number of panels", this.panels.size(), 1);
        this.panelWidth = this.panels.stream().mapToInt(IChart::getWidth).max().orElseThrow();
        this.panelHeight = this.panels.get(0).getHeight();
    }

    /** A picture of one chart. */
    static Picture of(String title, String alternative, IChart chart) {
        return new Picture(title, alternative, List.of(Objects.requireNonNull(chart, "chart")));
    }

    /** A chart of the user's own, drawn as it is: no sentence of ours above it. */
    public static Picture ofChart(IChart chart) {
        final String own = Objects.requireNonNull(chart, "chart").getTitle();
        final String title = own == null || own.isBlank() ? "Chart" : own;
        return new Picture(title, title, List.of(chart), false);
    }

    /** The sentence above the chart. */
    public String title() {
        return title;
    }

    /** What the picture shows, for those who do not see it. */
    public String alternative() {
        return alternative;
    }

    /** Width in pixels. */
    public int width() {
        return panelWidth;
    }

    /** Height in pixels, the title included. */
    public int height() {
        return titleHeight() + panelHeight * panels.size();
    }

    /** The picture as an SVG element with title and description. */
    public String svg() {
        final VectorGraphics2D graphics = new VectorGraphics2D();
        paint(graphics);
        final CommandSequence commands = graphics.getCommands();
        final Document document = Processors.get("svg").getDocument(commands,
            new PageSize(width(), height()));
        final ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try {
            document.writeTo(bytes);
        } catch (IOException e) {
            throw new UncheckedIOException("writing to memory failed", e);
        }
        return SvgText.finish(bytes.toString(StandardCharsets.UTF_8), title, alternative, width(), height());
    }

    /**
     * The picture as a PNG file at twice the size in pixels, so that it stays sharp on dense screens and
     * paper.
     */
    public byte[] png() {
        final int scale = 2;
        final BufferedImage image =
            new BufferedImage(width() * scale, height() * scale, BufferedImage.TYPE_INT_RGB);
        final Graphics2D graphics = image.createGraphics();
        graphics.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        graphics.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING,
            RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        graphics.scale(scale, scale);
        paint(graphics);
        graphics.dispose();
        final ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try {
            ImageIO.write(image, "png", bytes);
        } catch (IOException e) {
            throw new UncheckedIOException("writing to memory failed", e);
        }
        return bytes.toByteArray();
    }

    private void paint(Graphics2D graphics) {
        graphics.setColor(Color.WHITE);
        graphics.fillRect(0, 0, width(), height());
        graphics.setFont(TITLE_FONT);
        graphics.setColor(Color.BLACK);
        int baseline = MARGIN + LINE - 5;
        for (String line : titled ? titleLines() : List.<String>of()) {
            graphics.drawString(line, MARGIN, baseline);
            baseline += LINE;
        }
        int top = titleHeight();
        for (IChart panel : panels) {
            graphics.translate(0, top);
            panel.paint(graphics, panel.getWidth(), panel.getHeight());
            graphics.translate(0, -top);
            top += panelHeight;
        }
    }

    private int titleHeight() {
        return !titled ? 0 : MARGIN + LINE * titleLines().size();
    }

    private List<String> titleLines() {
        final List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : title.split(" ")) {
            final String longer = line.isEmpty() ? word : line + " " + word;
            if (!line.isEmpty() && TextSize.width(longer, TITLE_FONT) > panelWidth - 2 * MARGIN) {
                lines.add(line.toString());
                line = new StringBuilder(word);
            } else {
                line = new StringBuilder(longer);
            }
        }
        lines.add(line.toString());
        return lines;
    }

    @Override
    public String toString() {
        return title;
    }
}
