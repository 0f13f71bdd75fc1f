package spanwright.readings;

import it.unimi.dsi.fastutil.doubles.DoubleArrayList;
import it.unimi.dsi.fastutil.ints.Int2IntOpenHashMap;
import it.unimi.dsi.fastutil.ints.Int2ObjectOpenHashMap;
import it.unimi.dsi.fastutil.objects.Object2IntOpenHashMap;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import javax.measure.Unit;
import spanwright.quantity.UnitSymbols;
import tech.tablesaw.api.DoubleColumn;
import tech.tablesaw.api.StringColumn;
import tech.tablesaw.columns.Column;
import tech.tablesaw.columns.strings.IntDictionaryMap;

/**
 * One column of a table: all numbers or all text. Numbers keep the decimals they were written with.
 * Immutable.
 *
 * <p>Rows are counted from 0 here; {@link ReadingsTable#cell} gives the line of the file.
 */
public final class TableColumn {
    private final String head;
    private final String name;
    private final String unit;
    private final boolean numeric;
    private final ColumnBuilder[] parts;
    private final int[] starts;
    private final int[][] codes;
    private final List<String> texts;

    private TableColumn(TableLayout.Head head, List<ColumnBuilder> parts, int[][] codes, List<String> texts) {
        this.head = head.head();
        this.name = head.words();
        this.unit = parts.get(0).unit();
        this.numeric = codes.length == 0;
        this.parts = parts.toArray(ColumnBuilder[]::new);
        this.starts = new int[parts.size() + 1];
        for (int i = 0; i < parts.size(); i++) {
            starts[i + 1] = starts[i] + parts.get(i).size();
        }
        this.codes = codes;
        this.texts = texts;
    }

    /** Joins the parts of a column that were read side by side, which nobody changes any more. */
    static TableColumn join(TableLayout.Head head, List<ColumnBuilder> parts) {
        if (parts.stream().noneMatch(ColumnBuilder::isText)) {
            return new TableColumn(head, parts, new int[0][], List.of());
        }
        final TextDictionary all = new TextDictionary();
        final int[][] codes = new int[parts.size()][];
        for (int p = 0; p < codes.length; p++) {
            final ColumnBuilder part = parts.get(p);
            part.turnToText();
            codes[p] = part.codes();
            final List<byte[]> keys = part.dictionary().keys();
            final int[] map = new int[keys.size()];
            for (int k = 0; k < map.length; k++) {
                map[k] = all.code(keys.get(k), 0, keys.get(k).length);
            }
            for (int i = 0; i < part.size() && p > 0; i++) {
                codes[p][i] = map[codes[p][i]];
            }
        }
        return new TableColumn(head, parts, codes,
            all.keys().stream().map(k -> ColumnBuilder.decode(k, 0, k.length)).toList());
    }

    /** The head as it stands in the file. */
    public String head() {
        return head;
    }

    /** The words of the head, without its unit. */
    public String name() {
        return name;
    }

    /** The unit that the head or the call states, empty if there is none. */
    public Optional<Unit<?>> unit() {
        return unit.isEmpty() ? Optional.empty() : UnitSymbols.find(unit);
    }

    /** Whether every cell is a number or absent. */
    public boolean isNumeric() {
        return numeric;
    }

    /** Number of rows. */
    public int size() {
        return starts[starts.length - 1];
    }

    /** Whether a cell holds neither number nor text. */
    public boolean isAbsent(int row) {
        return numeric ? Double.isNaN(value(row)) : text(row).isEmpty();
    }

    /** The number of a row, empty where it is absent or the column is text. */
    public OptionalDouble number(int row) {
        return numeric && !isAbsent(row) ? OptionalDouble.of(value(row)) : OptionalDouble.empty();
    }

    /** The decimal sign of the file. */
    DecimalSign sign() {
        return parts[0].sign();
    }

    /** The text of a cell exactly as it was written. */
    public String written(int row) {
        if (!numeric) {
            return text(row);
        }
        final int p = part(row);
        final int own = row - starts[p];
        return ColumnBuilder.written(parts[p].values()[own], parts[p].decimals()[own], parts[p].kept(), own,
            parts[p].sign());
    }

    /** The step of the last digit that was written in a row, in the unit of the column. */
    double resolution(int row) {
        final int p = part(row);
        return Math.pow(10, -parts[p].decimals()[row - starts[p]]);
    }

    /** A copy of the numbers, with NaN where one is absent. */
    double[] values() {
        final double[] all = new double[size()];
        for (int p = 0; p < parts.length; p++) {
            System.arraycopy(parts[p].values(), 0, all, starts[p], parts[p].size());
        }
        return all;
    }

    /** A column of the notebook table around numbers that nobody else holds, which spares a copy of them. */
    private static final class NumbersColumn extends DoubleColumn {
        NumbersColumn(String head, double[] own) {
            super(head, DoubleArrayList.wrap(own));
        }
    }

    private double value(int row) {
        final int p = part(row);
        return parts[p].values()[row - starts[p]];
    }

    private String text(int row) {
        final int p = part(row);
        return texts.get(codes[p][row - starts[p]]);
    }

    private int part(int row) {
        int p = 0;
        while (row >= starts[p + 1]) {
            p++;
        }
        return p;
    }

    /** As a column of a notebook table, named by its head; an absent number is missing there. */
    Column<?> toColumn() {
        return numeric ? new NumbersColumn(head, values()) : toTexts();
    }

    private StringColumn toTexts() {
        final int[] keys = new int[texts.size()];
        final int[] counts = new int[keys.length];
        for (int k = 0; k < keys.length; k++) {
            // Tablesaw keeps its missing text, the empty one, under the largest key.
            keys[k] = texts.get(k).isEmpty() ? Integer.MAX_VALUE : k;
        }
        final int[] data = new int[size()];
        for (int p = 0; p < codes.length; p++) {
            for (int i = 0; i < parts[p].size(); i++) {
                final int code = codes[p][i];
                data[starts[p] + i] = keys[code];
                counts[code]++;
            }
        }
        final Int2ObjectOpenHashMap<String> toText = new Int2ObjectOpenHashMap<>(keys.length);
        final Object2IntOpenHashMap<String> toKey = new Object2IntOpenHashMap<>(keys.length);
        final Int2IntOpenHashMap toCount = new Int2IntOpenHashMap(keys.length);
        toKey.defaultReturnValue(Integer.MIN_VALUE);
        for (int k = 0; k < keys.length; k++) {
            toText.put(keys[k], texts.get(k));
            toKey.put(texts.get(k), keys[k]);
            toCount.put(keys[k], counts[k]);
        }
        return StringColumn.createInternal(head, new IntDictionaryMap.IntDictionaryBuilder()
            .setNextIndex(keys.length).setKeyToValue(toText).setValueToKey(toKey).setKeyToCount(toCount)
            .setValues(data).build());
    }

    @Override
    public String toString() {
        return "\"" + head + "\": " + size() + (isNumeric() ? " numbers" : " texts")
            + (unit.isEmpty() ? "" : " in " + unit);
    }
}
