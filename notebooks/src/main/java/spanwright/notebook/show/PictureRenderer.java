package spanwright.notebook.show;

import java.util.Optional;
import org.knowm.xchart.internal.chartpart.IChart;
import spanwright.chart.Picture;
import spanwright.kernel.display.MimeBundle;
import spanwright.kernel.display.Renderer;

/**
 * Shows our pictures, and XChart charts made in a cell, as SVG, with PNG beside it for front ends that
 * cannot, and the alternative as text.
 */
public final class PictureRenderer implements Renderer {
    /** For the service loader. */
    public PictureRenderer() { }

    @Override
    public Optional<MimeBundle> render(Object value) {
        if (value instanceof IChart chart) {
            return render(Picture.ofChart(chart));
        }
        if (value instanceof Picture picture) {
            return Optional.of(MimeBundle.text(picture.title() + "\n" + picture.alternative())
                .with(MimeBundle.SVG, picture.svg())
                .with(MimeBundle.PNG, picture.png()));
        }
        return Optional.empty();
    }
}
