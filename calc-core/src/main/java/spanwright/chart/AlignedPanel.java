package spanwright.chart;

import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.List;
import org.knowm.xchart.XYChart;
import org.knowm.xchart.internal.chartpart.Annotation;
import org.knowm.xchart.internal.chartpart.IChart;

/**
 * A chart moved to the right and made as much narrower. XChart gives the figures at the y axis the width they
 * need, so that of two panels one above the other the same x would stand at different places.
 */
final class AlignedPanel implements IChart {
    private final XYChart chart;
    private final int indent;

    private AlignedPanel(XYChart chart, int indent) {
        this.chart = chart;
        this.indent = indent;
    }

    /** Panels over the same range of x, one above the other, with their left edges in line. */
    static List<IChart> stack(Plot... plots) {
        final List<Integer> edges = new ArrayList<>();
        int most = 0;
        for (Plot plot : plots) {
            final Edge edge = new Edge();
            plot.chart().addAnnotation(edge);
            final BufferedImage trial = new BufferedImage(1, 1, BufferedImage.TYPE_INT_RGB);
            final Graphics2D graphics = trial.createGraphics();
            plot.chart().paint(graphics, Plot.WIDTH, plot.chart().getHeight());
            graphics.dispose();
            edges.add(edge.left);
            most = Math.max(most, edge.left);
        }
        final List<IChart> panels = new ArrayList<>();
        for (int k = 0; k < plots.length; k++) {
            panels.add(new AlignedPanel(plots[k].chart(), most - edges.get(k)));
        }
        return panels;
    }

    /** Draws nothing; notes where the plot begins. */
    private static final class Edge extends Annotation {
        private int left;

        Edge() {
            super(false);
        }

        @Override
        public void paint(Graphics2D graphics) {
            left = getXAxisScreenValueForMin();
        }
    }

    @Override
    public void paint(Graphics2D graphics, int width, int height) {
        graphics.translate(indent, 0);
        chart.paint(graphics, width - indent, height);
        graphics.translate(-indent, 0);
    }

    @Override
    public int getWidth() {
        return Plot.WIDTH;
    }

    @Override
    public int getHeight() {
        return chart.getHeight();
    }

    @Override
    public String getTitle() {
        return chart.getTitle();
    }
}
