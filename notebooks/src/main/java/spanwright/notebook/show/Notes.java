package spanwright.notebook.show;

import java.util.List;
import java.util.Objects;

/**
 * A short list under a heading: assumptions, warnings, repairs. Folded if it is long; empty lists show
 * nothing.
 *
 * @param heading what the list is
 * @param items   one sentence each
 */
public record Notes(String heading, List<String> items) implements Block {
    private static final int FOLD = 12;

    /** Checks the components and copies the list. */
    public Notes {
        Objects.requireNonNull(heading, "heading");
        items = List.copyOf(items);
    }

    @Override
    public String html() {
        if (items.isEmpty()) {
            return "";
        }
        final StringBuilder out = new StringBuilder();
        final boolean fold = items.size() > FOLD;
        out.append(fold ? "<details><summary>" : "<p style=\"margin:.6em 0 .2em\"><strong>")
            .append(Html.escape(heading)).append(fold ? " (" + items.size() + ")</summary>" : "</strong></p>")
            .append("<ul style=\"margin:.2em 0\">");
        items.forEach(item -> out.append("<li>").append(Html.escape(item)).append("</li>"));
        return out.append("</ul>").append(fold ? "</details>" : "").toString();
    }

    @Override
    public String text() {
        return items.isEmpty() ? "" : heading + "\n  - " + String.join("\n  - ", items);
    }
}
