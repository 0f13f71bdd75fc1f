package spanwright.reference;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * A published data set under test-data/published, read by column name. Lines that begin with # are its
 * source.
 */
public final class PublishedData {
    private final String name;
    private final List<String> columns;
    private final List<List<String>> rows;

    private PublishedData(String name, List<String> columns, List<List<String>> rows) {
        this.name = name;
        this.columns = columns;
        this.rows = rows;
    }

    /** Where the test data lie, whatever the working folder of the test. */
    public static Path folder() {
        final String set = System.getProperty("spanwright.testData");
        return set == null ? Path.of("..", "test-data") : Path.of(set);
    }

    public static PublishedData load(String name) {
        final Path file = folder().resolve("published").resolve(name + ".csv");
        final List<List<String>> cells = new ArrayList<>();
        try {
            for (String line : Files.readAllLines(file, StandardCharsets.UTF_8)) {
                if (!line.startsWith("#") && !line.isBlank()) {
                    cells.add(List.of(line.split(",", -1)));
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return new PublishedData(name, cells.get(0), cells.subList(1, cells.size()));
    }

    public List<String> texts(String column) {
        final int at = columns.indexOf(column);
        if (at < 0) {
            throw new IllegalArgumentException(name + " has no column " + column + ", only " + columns);
        }
        return rows.stream().map(r -> r.get(at).strip()).toList();
    }

    public double[] numbers(String column) {
        return texts(column).stream().mapToDouble(Double::parseDouble).toArray();
    }

    /** Rows as lists of cells, for tables that are looked up by several columns. */
    public List<List<String>> rows() {
        return rows;
    }

    @Override
    public String toString() {
        return String.format(Locale.ROOT, "%s (%d rows)", name, rows.size());
    }
}
