package spanwright.kernel.display;

import java.util.Base64;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;

/**
 * One value in several representations, keyed by MIME type, as in the Jupyter protocol. Text representations
 * are strings, binary ones base64 strings without line breaks, JSON ones maps, lists, strings and finite
 * numbers.
 *
 * @param data     representations, richest last or first does not matter: the front end chooses
 * @param metadata by MIME type, often empty
 */
public record MimeBundle(Map<String, Object> data, Map<String, Object> metadata) {
    /** Plain text. */
    public static final String TEXT = "text/plain";
    /** An HTML fragment. */
    public static final String HTML = "text/html";
    /** A vector picture. */
    public static final String SVG = "image/svg+xml";
    /** A raster picture, base64. */
    public static final String PNG = "image/png";
    /** Markdown. */
    public static final String MARKDOWN = "text/markdown";
    /** A formula. */
    public static final String LATEX = "text/latex";

    /** Copies the maps, keeping their order. */
    public MimeBundle {
        data = Collections.unmodifiableMap(new LinkedHashMap<>(Objects.requireNonNull(data, "data")));
        metadata = Collections.unmodifiableMap(
            new LinkedHashMap<>(Objects.requireNonNull(metadata, "metadata")));
    }

    /** A bundle of plain text only. */
    public static MimeBundle text(String text) {
        return new MimeBundle(Map.of(TEXT, text), Map.of());
    }

    /** This bundle with one more representation. */
    public MimeBundle with(String mimeType, Object representation) {
        final Map<String, Object> more = new LinkedHashMap<>(data);
        more.put(mimeType, Objects.requireNonNull(representation, mimeType));
        return new MimeBundle(more, metadata);
    }

    /** This bundle with one more binary representation, encoded as base64. */
    public MimeBundle with(String mimeType, byte[] representation) {
        return with(mimeType, Base64.getEncoder().encodeToString(representation));
    }

    /** This bundle with metadata for one MIME type. */
    public MimeBundle withMetadata(String mimeType, Map<String, Object> values) {
        final Map<String, Object> more = new LinkedHashMap<>(metadata);
        more.put(mimeType, Map.copyOf(values));
        return new MimeBundle(data, more);
    }
}
