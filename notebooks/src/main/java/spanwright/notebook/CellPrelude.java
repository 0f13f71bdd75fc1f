package spanwright.notebook;

import java.util.List;
import spanwright.kernel.jshell.Prelude;

/** What a cell sees without importing: the calculations, the words a person writes, tables and charts. */
public final class CellPrelude {
    private static final List<String> IMPORTS = List.of(
        "import java.util.*;",
        "import java.util.function.*;",
        "import java.util.stream.*;",
        "import java.time.*;",
        "import java.nio.file.*;",
        "import tech.tablesaw.api.*;",
        "import org.knowm.xchart.*;",
        "import spanwright.quantity.*;",
        "import spanwright.uncertainty.*;",
        "import spanwright.verdict.*;",
        "import spanwright.readings.*;",
        "import spanwright.fit.*;",
        "import spanwright.error.*;",
        "import spanwright.temperature.*;",
        "import spanwright.drift.*;",
        "import spanwright.chain.*;",
        "import spanwright.loop.*;",
        "import spanwright.chart.*;",
        "import spanwright.notebook.show.*;",
        "import spanwright.kernel.display.*;",
        "import static spanwright.kernel.display.Display.*;",
        "import static spanwright.quantity.PercentOfSpan.percentOfSpan;",
        "import static spanwright.quantity.PercentOfReading.percentOfReading;",
        "import static spanwright.quantity.PercentOfUpperRangeValue.percentOfUpperRangeValue;",
        "import static spanwright.quantity.Celsius.degC;",
        "import static spanwright.quantity.Kelvin.kelvin;",
        "import static spanwright.chain.Coverage.coverage;");

    private CellPrelude() { }

    /**
     * The prelude of every session.
     *
     * @param version of the product
     */
    public static Prelude of(String version) {
        return Prelude.ofImports(IMPORTS, version);
    }
}
