package spanwright.kernel.message;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What counts as JSON is RFC 8259; that there are no NaN and infinity in it: section 6. */
class JsonTest {

    @Test
    void writesNoNumberThatIsNoJson() {
        final Map<String, Object> values = new LinkedHashMap<>();
        values.put("nan", Double.NaN);
        values.put("inf", Float.NEGATIVE_INFINITY);
        values.put("d", 0.25);
        values.put("n", null);
        values.put("list", Arrays.asList(1, 2L, true, "\u00b0C"));
        assertThat(Json.write(Json.of(values)).utf8())
            .isEqualTo("{\"nan\":null,\"inf\":null,\"d\":0.25,\"n\":null,\"list\":[1,2,true,\"\u00b0C\"]}");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "{", "[]", "null", "3", "{\"a\":NaN}", "{} {}", "{\"a\":1,}", "{'a':1}",
        "nul"})
    void refusesWhatIsNoJsonObject(String text) {
        assertThatThrownBy(() -> Json.readObject("content", Bytes.of(text)))
            .isInstanceOf(MalformedMessageException.class).hasMessageContaining("content");
    }

    @Test
    void refusesNestingThatWouldOverflowTheStack() {
        final Bytes deep = Bytes.of("{\"a\":" + "[".repeat(100_000) + "]".repeat(100_000) + "}");
        assertThatThrownBy(() -> Json.readObject("content", deep))
            .isInstanceOf(MalformedMessageException.class);
    }

    @Test
    void refusesBytesThatAreNoUtf8() {
        final byte[] bytes = {'{', '"', (byte) 0xff, (byte) 0xfe, '"', ':', '1', '}'};
        assertThatThrownBy(() -> Json.readObject("header", Bytes.of(bytes)))
            .isInstanceOf(MalformedMessageException.class);
    }

    @Test
    void takesACellOfTwentyMillionCharacters() throws MalformedMessageException {
        final String code = "x".repeat(21_000_000);
        final Bytes content = Bytes.of("{\"code\":\"" + code + "\"}");
        assertThat(Json.readObject("content", content).get("code").textValue()).hasSize(code.length());
    }

    @Test
    void turnsTreesIntoOrdinaryValuesAndBack() throws MalformedMessageException {
        final String text = "{\"a\":[1,2.5,\"x\",true,null],\"b\":{\"c\":{}}}";
        final Map<String, Object> plain = Json.plainMap(Json.readObject("data", Bytes.of(text)));
        assertThat(plain.get("a")).isEqualTo(Arrays.asList(1, 2.5, "x", true, null));
        assertThat(Json.write(Json.of(plain)).utf8()).isEqualTo(text);
        assertThat(List.copyOf(plain.keySet())).containsExactly("a", "b");
    }
}
