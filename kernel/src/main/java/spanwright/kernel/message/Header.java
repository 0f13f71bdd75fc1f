package spanwright.kernel.message;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Objects;
import java.util.concurrent.atomic.AtomicLong;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The header of a message.
 *
 * @param id       unique among messages
 * @param session  unique for each run of a client or kernel
 * @param username who sent it, may be empty
 * @param date     ISO 8601, may be empty in what is received
 * @param type     message type, for example "execute_request"
 * @param version  protocol version of the sender, for example "5.3"; may be empty
 */
public record Header(String id, String session, String username, String date, String type, String version) {
    /** The protocol version spoken here. */
    public static final String PROTOCOL_VERSION = "5.5";
    private static final AtomicLong COUNT = new AtomicLong();
    private static final Pattern VERSION = Pattern.compile("(\\d{1,4})\\.(\\d{1,4}).*");

    /** Checks the components. */
    public Header {
        Objects.requireNonNull(id, "id");
        Objects.requireNonNull(session, "session");
        Objects.requireNonNull(username, "username");
        Objects.requireNonNull(date, "date");
        Objects.requireNonNull(type, "type");
        Objects.requireNonNull(version, "version");
    }

    /** A header for a new message of this kernel. */
    public static Header fresh(String session, String type) {
        final String now = OffsetDateTime.now(ZoneOffset.UTC).format(DateTimeFormatter.ISO_OFFSET_DATE_TIME);
        return new Header(session + "_" + COUNT.incrementAndGet(), session, "kernel", now, type,
            PROTOCOL_VERSION);
    }

    /**
     * Reads a received header; only the type and the id must be there.
     *
     * @throws MalformedMessageException if a field is of the wrong type or the id or type is absent or empty
     */
    public static Header from(ObjectNode json) throws MalformedMessageException {
        final Fields f = new Fields("header", json);
        final Header header = new Header(f.text("msg_id"), f.optionalText("session").orElse(""),
            f.optionalText("username").orElse(""), f.optionalText("date").orElse(""), f.text("msg_type"),
            f.optionalText("version").orElse(""));
        if (header.id.isEmpty() || header.type.isEmpty()) {
            throw new MalformedMessageException("header: msg_id and msg_type must not be empty");
        }
        return header;
    }

    /** The header as JSON. */
    public ObjectNode json() {
        return Json.object().put("msg_id", id).put("session", session).put("username", username)
            .put("date", date).put("msg_type", type).put("version", version);
    }

    /**
     * Whether cursor positions count Unicode code points, as from version 5.2 on; before, UTF-16 units. A
     * sender without a version is taken to be new.
     */
    public boolean countsCodePoints() {
        final Matcher m = VERSION.matcher(version);
        if (!m.matches()) {
            return true;
        }
        final int major = Integer.parseInt(m.group(1));
        return major > 5 || major == 5 && Integer.parseInt(m.group(2)) >= 2;
    }
}
