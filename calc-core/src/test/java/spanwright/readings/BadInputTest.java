package spanwright.readings;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import spanwright.reference.PublishedData;

/** The bad input that every first user meets: one sentence each, with file, row and column. */
class BadInputTest {
    @Test
    void saysThatAUnitIsMissing() {
        says("unit-missing.csv", "16:4: column \"Indicated\" has no unit: write it in the head, such as"
            + " \"Indicated (mA)\", in the cells, or in the call");
    }

    @Test
    void saysThatAColumnIsMissing() {
        says("column-missing.csv", "16:1: no column for the applied input: head one like \"Applied (mA)\", or"
            + " name it in the call with column(...).as(ColumnRole.APPLIED)");
    }

    @Test
    void saysThatTextStandsInANumber() {
        says("text-in-number.csv", "20:4: \"16.O11\": no number: digits with one decimal sign \".\" are"
            + " allowed, and a unit behind them");
    }

    @Test
    void saysThatTwoReadingsLookExchanged() {
        says("readings-swapped.csv", "19:4: \"12.008\" at readings-swapped.csv:18:4 and \"8.006\" at"
            + " readings-swapped.csv:19:4 are far off as they stand, and right when exchanged; proposed:"
            + " exchange the two readings");
    }

    @Test
    void saysThatTheFileIsEmpty() {
        says("empty.csv", "1:1: the file is empty: a row of column names and at least one row of readings are"
            + " needed");
    }

    private static void says(String file, String message) {
        final var e = assertThrows(ReadingsFormatException.class, () ->
            Readings.read(PublishedData.folder().resolve("faults").resolve(file)).runs());
        assertEquals(file + ":" + message, e.getMessage());
    }
}
