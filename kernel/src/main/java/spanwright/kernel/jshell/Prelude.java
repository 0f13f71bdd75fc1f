package spanwright.kernel.jshell;

import java.util.List;
import java.util.Objects;

/**
 * What a session knows before its first cell.
 *
 * @param imports       import declarations, each complete: {@code import java.util.*;}
 * @param snippets      declarations and statements run after the imports, each as in a cell of its own
 * @param kernelVersion version of the product, for the banner and kernel_info
 */
public record Prelude(List<String> imports, List<String> snippets, String kernelVersion) {
    /** Copies the lists. */
    public Prelude {
        imports = List.copyOf(imports);
        snippets = List.copyOf(snippets);
        Objects.requireNonNull(kernelVersion, "kernelVersion");
    }

    /** Imports only. */
    public static Prelude ofImports(List<String> imports, String kernelVersion) {
        return new Prelude(imports, List.of(), kernelVersion);
    }
}
