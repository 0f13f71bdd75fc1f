package spanwright.readings;

import java.nio.file.Path;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import spanwright.quantity.UnitSymbols;

/**
 * How a plain table is to be read, where its heads do not say it. Immutable; each method gives a changed
 * copy.
 *
 * <pre>{@code
 * var norris = Readings.tableReading("Norris.csv").unit("x", "ppm").unit("y", "ppm").read();
 * }</pre>
 */
public final class TableReading {
    private final Path file;
    private final Map<String, String> units;
    private final Map<String, ColumnBuilder.Need> needs;
    private final Optional<DecimalSign> decimal;

    private TableReading(Path file, Map<String, String> units, Map<String, ColumnBuilder.Need> needs,
                         Optional<DecimalSign> decimal) {
        this.file = Objects.requireNonNull(file, "file");
        this.units = Map.copyOf(units);
        this.needs = Map.copyOf(needs);
        this.decimal = decimal;
    }

    static TableReading of(Path file) {
        return new TableReading(file, Map.of(), Map.of(), Optional.empty());
    }

    /**
     * The unit of a column whose head states none; the column must then hold numbers.
     *
     * @throws IllegalArgumentException if the unit is not known
     */
    public TableReading unit(String column, String unit) {
        UnitSymbols.parse(unit);
        final Map<String, String> more = new TreeMap<>(units);
        more.put(Objects.requireNonNull(column, "column"), unit);
        return new TableReading(file, more, needs, decimal).numbers(column);
    }

    /** The column must hold numbers: anything else in it is refused. */
    public TableReading numbers(String column) {
        return need(column, ColumnBuilder.Need.NUMBERS);
    }

    /** The column holds text, even where it looks like numbers: tags, serial numbers. */
    public TableReading text(String column) {
        return need(column, ColumnBuilder.Need.TEXT);
    }

    /** The decimal sign, where the file leaves it open. */
    public TableReading decimal(DecimalSign sign) {
        return new TableReading(file, units, needs, Optional.of(sign));
    }

    /**
     * Reads the table.
     *
     * @throws ReadingsFormatException      if anything in it is refused
     * @throws java.io.UncheckedIOException if the file cannot be opened
     */
    public ReadingsTable read() {
        return TableReader.read(this);
    }

    private TableReading need(String column, ColumnBuilder.Need need) {
        final Map<String, ColumnBuilder.Need> more = new TreeMap<>(needs);
        more.put(Objects.requireNonNull(column, "column"), need);
        return new TableReading(file, units, more, decimal);
    }

    Path file() {
        return file;
    }

    Optional<DecimalSign> decimal() {
        return decimal;
    }

    /** The unit that the call states for a column, by its head or its words; empty if none. */
    String unit(TableLayout.Head head) {
        return units.getOrDefault(head.head(), units.getOrDefault(head.words(), head.unit()));
    }

    ColumnBuilder.Need need(TableLayout.Head head) {
        final ColumnBuilder.Need open = head.unit().isEmpty() ? ColumnBuilder.Need.OPEN
            : ColumnBuilder.Need.NUMBERS;
        return needs.getOrDefault(head.head(), needs.getOrDefault(head.words(), open));
    }

    /** Columns that the call names and that must be there. */
    java.util.Set<String> named() {
        return needs.keySet();
    }
}
