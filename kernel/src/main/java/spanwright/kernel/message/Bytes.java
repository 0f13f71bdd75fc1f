package spanwright.kernel.message;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Objects;

/** An immutable sequence of bytes, compared by its content: one frame of a message. */
public final class Bytes {
    /** No bytes. */
    public static final Bytes EMPTY = new Bytes(new byte[0]);

    private final byte[] content;

    private Bytes(byte[] content) {
        this.content = content;
    }

    /** A copy of the given bytes. */
    public static Bytes of(byte[] content) {
        return new Bytes(content.clone());
    }

    /** Takes the array over without a copy: the caller gives it away and never changes it again. */
    public static Bytes owned(byte[] content) {
        return new Bytes(Objects.requireNonNull(content, "content"));
    }

    /** The text as UTF-8. */
    public static Bytes of(String text) {
        return new Bytes(text.getBytes(StandardCharsets.UTF_8));
    }

    /** The bytes themselves, for sending and hashing; not to be changed. */
    public byte[] shared() {
        return content;
    }

    /** How many there are. */
    public int size() {
        return content.length;
    }

    /** The bytes read as UTF-8; what is not UTF-8 becomes the replacement character. */
    public String utf8() {
        return new String(content, StandardCharsets.UTF_8);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Bytes that && Arrays.equals(content, that.content);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(content);
    }

    @Override
    public String toString() {
        return content.length + " bytes";
    }
}
