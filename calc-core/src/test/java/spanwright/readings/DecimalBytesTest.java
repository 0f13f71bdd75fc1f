package spanwright.readings;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class DecimalBytesTest {
    private static byte[] bytes(String text) {
        return (text + ",").getBytes(StandardCharsets.US_ASCII);
    }

    @Property
    void readsTheSameDoubleAsTheJdkAndGivesTheTextBack(
        @ForAll @LongRange(min = -999_999_999_999_999L, max = 999_999_999_999_999L) long digits,
        @ForAll @IntRange(max = 14) int places) {
        final String text = new BigDecimal(BigInteger.valueOf(digits), places).toPlainString();
        final DecimalBytes parser = new DecimalBytes(DecimalSign.POINT);
        final double value = parser.read(bytes(text), 0);
        if (text.replaceAll("\\D", "").length() > 15) {
            assertTrue(Double.isNaN(value), text);
        } else {
            assertEquals(Double.parseDouble(text), value, text);
            assertEquals(text.length(), parser.end());
            assertEquals(text, ColumnBuilder.written(value, parser.decimals(), Map.of(), 0,
                DecimalSign.POINT));
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "-", ".", "-.5", ".5", "5.", "+5", "007", "-0", "-0.00", "1234567890123456",
        "x", " 1"})
    void leavesEverythingElseToTheFullParser(String text) {
        assertTrue(Double.isNaN(new DecimalBytes(DecimalSign.POINT).read(bytes(text), 0)), text);
    }
}
