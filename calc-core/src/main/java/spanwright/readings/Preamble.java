package spanwright.readings;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * The header lines that hold for one table: its own, and those of the tables above it that it does not
 * replace.
 *
 * @param values one value per key
 * @param standards lines that name a standard
 */
record Preamble(Map<PreambleKey, Value> values, List<Value> standards) {
    /**
     * What stands behind a key.
     *
     * @param text the cells joined by spaces, with plain spaces and signs
     * @param cell the first of them
     */
    record Value(String text, CellAddress cell) { }

    static final Preamble EMPTY = new Preamble(Map.of(), List.of());

    Preamble {
        values = Map.copyOf(values);
        standards = List.copyOf(standards);
    }

    Optional<Value> find(PreambleKey key) {
        return Optional.ofNullable(values.get(key));
    }

    String text(PreambleKey key) {
        return find(key).map(Value::text).orElse("");
    }

    /** The key of a header line, or nothing if the row is none. */
    static Optional<PreambleKey> key(GridRow row) {
        final String first = row.cell(0).text();
        final int colon = first.indexOf(':');
        if (colon > 0 && row.lastFilled() == 0) {
            return PreambleKey.of(first.substring(0, colon));
        }
        return PreambleKey.of(first);
    }

    /** What stands behind the key of a header line. */
    static Value value(GridRow row, Grid grid) {
        final String first = row.cell(0).text();
        final int colon = first.indexOf(':');
        if (colon > 0 && row.lastFilled() == 0) {
            return new Value(Characters.plain(first.substring(colon + 1)), grid.at(row, 0));
        }
        final String text = row.cells().stream().skip(1).map(c -> Characters.plain(c.text()))
            .filter(t -> !t.isEmpty()).collect(Collectors.joining(" "));
        return new Value(text, grid.at(row, Math.min(1, Math.max(0, row.lastFilled()))));
    }

    /** This preamble with the lines of a further one, which replace lines of the same key. */
    Preamble with(Map<PreambleKey, Value> more, List<Value> moreStandards) {
        final Map<PreambleKey, Value> all = new EnumMap<>(PreambleKey.class);
        all.putAll(values);
        if (more.containsKey(PreambleKey.PHASE) || more.containsKey(PreambleKey.TAG)) {
            all.remove(PreambleKey.ADJUSTED);
        }
        all.putAll(more);
        final List<Value> both = new ArrayList<>(moreStandards.isEmpty() ? standards : moreStandards);
        return new Preamble(all, both);
    }
}
