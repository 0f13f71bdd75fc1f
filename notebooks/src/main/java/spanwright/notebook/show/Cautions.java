package spanwright.notebook.show;

import java.util.List;
import java.util.stream.Collectors;

/**
 * A short box with what to heed before a result leads to field work. Never folded.
 *
 * @param sentences one caution each, at least one
 */
public record Cautions(List<String> sentences) implements Block {
    /** Copies the list. */
    public Cautions {
        sentences = List.copyOf(sentences);
        if (sentences.isEmpty()) {
            throw new IllegalArgumentException("a box of cautions has no caution");
        }
    }

    @Override
    public String html() {
        return "<div role=\"note\" style=\"border:1px solid #888;border-left:4px solid #d55e00;"
            + "padding:.4em .8em;margin:.6em 0;font-size:.85em;line-height:1.4\"><b>Before field work.</b> "
            + sentences.stream().map(Html::escape).collect(Collectors.joining(" ")) + "</div>";
    }

    @Override
    public String text() {
        return "Before field work\n  - " + String.join("\n  - ", sentences);
    }
}
