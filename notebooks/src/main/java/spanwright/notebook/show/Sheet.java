package spanwright.notebook.show;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import spanwright.chart.Picture;
import spanwright.kernel.display.MimeBundle;
import spanwright.quantity.Checks;

/**
 * A result as it is shown: the sentence first, then what stands behind it.
 *
 * @param sentence the number, its unit and its condition, in one plain sentence
 * @param blocks   tables, pictures and notes in reading order
 */
public record Sheet(String sentence, List<Block> blocks) {
    /** Checks the components and copies the list. */
    public Sheet {
        Checks.notBlank("sentence", sentence);
        blocks = List.copyOf(blocks);
    }

    /** A sheet that has only its sentence so far. */
    public static Sheet saying(String sentence) {
        return new Sheet(sentence, List.of());
    }

    /** This sheet with one more block. */
    public Sheet with(Block block) {
        final List<Block> more = new ArrayList<>(blocks);
        more.add(block);
        return new Sheet(sentence, more);
    }

    /** This sheet with a picture. */
    public Sheet with(Picture picture) {
        return with(new Figure(picture));
    }

    /** This sheet with notes, if there are any. */
    public Sheet notes(String heading, List<String> items) {
        return items.isEmpty() ? this : with(new Notes(heading, items));
    }

    /** The representations for a front end. */
    public MimeBundle bundle() {
        final String html = "<div><p style=\"margin:.2em 0 .6em\"><strong>" + Html.escape(sentence)
            + "</strong></p>" + blocks.stream().map(Block::html).collect(Collectors.joining("\n")) + "</div>";
        final String text = sentence + blocks.stream().map(Block::text).filter(t -> !t.isEmpty())
            .map(t -> "\n\n" + t).collect(Collectors.joining());
        return MimeBundle.text(text).with(MimeBundle.HTML, html);
    }
}
