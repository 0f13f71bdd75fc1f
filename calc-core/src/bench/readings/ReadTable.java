import java.util.Arrays;
import java.util.Locale;
import spanwright.readings.Readings;
import tech.tablesaw.api.Table;

/** Reads a file strictly into a notebook table; prints the number of rows and the sum of the indications. */
public final class ReadTable {
    private ReadTable() { }

    public static void main(String[] args) {
        final Table table = Readings.table(args[0]).toTable();
        final double[] indicated = table.doubleColumn("Indicated (mA)").asDoubleArray();
        System.out.printf(Locale.ROOT, "%d %.4f%n", table.rowCount(), Arrays.stream(indicated).sum());
    }
}
