package spanwright.chart;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.knowm.xchart.style.markers.SeriesMarkers;

class PictureTest {
    private static Picture picture() {
        final double[] x = {0, 25, 50, 75, 100};
        return Picture.of(
            "Within <0.5 % of span> at every point & both directions, "
                + "with a sentence that is so long that it has to be broken into two lines of the title",
            "Errors of five points",
            new Plot("applied input (% of span)", "error (% of span)").yRange(-0.3, 0.3)
                .marks("up", x, new double[] {0.01, 0.02, -0.03, 0.05, 0.11}, Ink.BLUE,
                    SeriesMarkers.TRIANGLE_UP)
                .marks("down", x, new double[] {0.02, 0.03, -0.01, 0.07, 0.11}, Ink.VERMILION,
                    SeriesMarkers.TRIANGLE_DOWN)
                .note(PlotNote.horizontalLimit(0.25, "tolerance +0.25", Ink.BLACK.colour(), false))
                .note(PlotNote.horizontalLimit(-0.25, "tolerance \u22120.25", Ink.BLACK.colour(), true))
                .note(PlotNote.text("up", 100, 0.11, PlotNote.Anchor.RIGHT, Ink.BLUE.colour(), -12)).chart());
    }

    @Test
    void theSvgShrinksWithThePageAndSpeaksToThoseWhoDoNotSee() {
        final String svg = picture().svg();
        assertThat(svg).startsWith("<svg ").endsWith("</svg>\n").contains("viewBox=\"0 0 720 ",
            "max-width:100%")
            .contains("<title>Within &lt;0.5 % of span&gt;", "&amp; both directions")
            .contains("<desc>Errors of five points</desc>", "font-size:12px", "lengthAdjust",
                ">tolerance +0.25</text>")
            .doesNotContain("<?xml", "<!DOCTYPE");
    }

    @Test
    void thePngIsSharpAndNotBlank() throws IOException {
        final var image = ImageIO.read(new ByteArrayInputStream(picture().png()));
        assertThat(image.getWidth()).isEqualTo(1440);
        assertThat(image.getHeight()).isEqualTo(2 * (12 + 2 * 19 + 420));
        assertThat(java.util.stream.IntStream.range(0, image.getWidth())
            .map(i -> image.getRGB(i, 500)).distinct().count()).isGreaterThan(2);
        if (System.getProperty("spanwright.pictures") != null) {
            Files.write(Path.of(System.getProperty("spanwright.pictures"), "picture.png"), picture().png());
            Files.writeString(Path.of(System.getProperty("spanwright.pictures"), "picture.svg"), picture()
                .svg());
        }
    }
}
