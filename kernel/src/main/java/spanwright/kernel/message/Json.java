package spanwright.kernel.message;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.LinkedHashMap;
import java.util.Map;

/** JSON of the protocol: trees in and out, as UTF-8. Stateless. */
public final class Json {
    /** Deeper nesting is refused: nothing the protocol carries comes near. */
    static final int MAX_DEPTH = 500;
    /** Longest string, in characters: a cell may carry a large literal, a reply a large picture. */
    static final int MAX_STRING = 256 * 1024 * 1024;

    private static final ObjectMapper MAPPER = new ObjectMapper(JsonFactory.builder()
        .streamReadConstraints(StreamReadConstraints.builder()
            .maxNestingDepth(MAX_DEPTH).maxStringLength(MAX_STRING).build())
        .build())
        .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS);
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    private Json() { }

    /** A new empty object. */
    public static ObjectNode object() {
        return NODES.objectNode();
    }

    /** A new empty array. */
    public static ArrayNode array() {
        return NODES.arrayNode();
    }

    /**
     * Reads one JSON object.
     *
     * @param what names the part in the error, for example "header"
     * @throws MalformedMessageException if it is not JSON, not an object, or something follows it
     */
    public static ObjectNode readObject(String what, Bytes utf8) throws MalformedMessageException {
        final JsonNode node;
        try {
            node = MAPPER.readTree(utf8.shared());
        } catch (IOException e) {
            throw new MalformedMessageException(what + " of " + utf8.size() + " bytes is not JSON", e);
        }
        if (node instanceof ObjectNode object) {
            return object;
        }
        throw new MalformedMessageException(what + " is not a JSON object but " + node.getNodeType());
    }

    /** The node as UTF-8 without spaces. */
    public static Bytes write(JsonNode node) {
        try {
            return Bytes.owned(MAPPER.writeValueAsBytes(node));
        } catch (JsonProcessingException e) {
            throw new UncheckedIOException("a JSON tree could not be written", e);
        }
    }

    /**
     * The tree of an ordinary value: map (keys by toString), iterable, text, number, truth value, tree or
     * null. Not-a-number and infinity become null, anything else its text.
     */
    public static JsonNode of(Object value) {
        if (value == null) {
            return NODES.nullNode();
        } else if (value instanceof JsonNode node) {
            return node;
        } else if (value instanceof Map<?, ?> map) {
            final ObjectNode object = NODES.objectNode();
            map.forEach((k, v) -> object.set(String.valueOf(k), of(v)));
            return object;
        } else if (value instanceof Iterable<?> items) {
            final ArrayNode array = NODES.arrayNode();
            items.forEach(v -> array.add(of(v)));
            return array;
        } else if (value instanceof Boolean truth) {
            return NODES.booleanNode(truth);
        } else if (value instanceof Number number) {
            return ofNumber(number);
        }
        return NODES.textNode(value.toString());
    }

    private static JsonNode ofNumber(Number number) {
        if (number instanceof Integer || number instanceof Long || number instanceof Short
            || number instanceof Byte) {
            return NODES.numberNode(number.longValue());
        } else if (number instanceof java.math.BigInteger whole) {
            return NODES.numberNode(whole);
        } else if (number instanceof java.math.BigDecimal decimal) {
            return NODES.numberNode(decimal);
        }
        final double d = number.doubleValue();
        return Double.isFinite(d) ? NODES.numberNode(d) : NODES.nullNode();
    }

    /** The ordinary value of a tree: maps, lists, text, numbers, truth values and null. */
    public static Object plain(JsonNode node) {
        return MAPPER.convertValue(node, Object.class);
    }

    /** The ordinary map of an object. */
    public static Map<String, Object> plainMap(ObjectNode node) {
        return MAPPER.convertValue(node,
            MAPPER.getTypeFactory().constructMapType(LinkedHashMap.class, String.class, Object.class));
    }
}
