package spanwright.kernel.interpreter;

import java.util.List;

/**
 * What could stand at the cursor.
 *
 * @param items best first
 * @param start where the text to be replaced begins
 * @param end   where it ends
 */
public record Completions(List<Item> items, int start, int end) {
    /** Copies the list. */
    public Completions {
        items = List.copyOf(items);
    }

    /**
     * One suggestion.
     *
     * @param text      replaces the text between start and end
     * @param type      function, class, instance, keyword, module or property
     * @param signature of a function, empty otherwise
     */
    public record Item(String text, String type, String signature) { }
}
