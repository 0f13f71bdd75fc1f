package spanwright.kernel.message;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Objects;
import java.util.Optional;

/**
 * The fields of a JSON object, read strictly: a field of the wrong type is an error that names it; null
 * counts as absent.
 */
public final class Fields {
    private final String what;
    private final ObjectNode object;

    /**
     * Reads fields of an object.
     *
     * @param what names the object in errors
     */
    public Fields(String what, ObjectNode object) {
        this.what = Objects.requireNonNull(what, "what");
        this.object = Objects.requireNonNull(object, "object");
    }

    private Optional<JsonNode> field(String name) {
        final JsonNode node = object.get(name);
        return node == null || node.isNull() ? Optional.empty() : Optional.of(node);
    }

    private MalformedMessageException wrong(String name, JsonNode node, String wanted) {
        return new MalformedMessageException(
            what + ": " + name + " is " + node.getNodeType() + ", " + wanted + " is needed");
    }

    /** A text that must be there. */
    public String text(String name) throws MalformedMessageException {
        final Optional<String> text = optionalText(name);
        if (text.isPresent()) {
            return text.get();
        }
        throw new MalformedMessageException(what + ": " + name + " is missing");
    }

    /** A text that may be absent. */
    public Optional<String> optionalText(String name) throws MalformedMessageException {
        final Optional<JsonNode> node = field(name);
        if (node.isPresent() && !node.get().isTextual()) {
            throw wrong(name, node.get(), "a text");
        }
        return node.map(JsonNode::textValue);
    }

    /** A truth value, with what absence means. */
    public boolean flag(String name, boolean absent) throws MalformedMessageException {
        final Optional<JsonNode> node = field(name);
        if (node.isPresent() && !node.get().isBoolean()) {
            throw wrong(name, node.get(), "true or false");
        }
        return node.map(JsonNode::booleanValue).orElse(absent);
    }

    /** A whole number within the range of int that may be absent; 3.0 counts as 3. */
    public Optional<Integer> whole(String name) throws MalformedMessageException {
        final Optional<JsonNode> node = field(name);
        if (node.isEmpty()) {
            return Optional.empty();
        }
        final JsonNode n = node.get();
        if (n.isNumber() && n.canConvertToInt() && n.doubleValue() == Math.rint(n.doubleValue())) {
            return Optional.of(n.intValue());
        }
        throw wrong(name, n, "a whole number within int");
    }

    /** An object; empty if absent. */
    public ObjectNode dict(String name) throws MalformedMessageException {
        final Optional<JsonNode> node = field(name);
        if (node.isEmpty()) {
            return Json.object();
        }
        if (node.get() instanceof ObjectNode dict) {
            return dict;
        }
        throw wrong(name, node.get(), "an object");
    }
}
