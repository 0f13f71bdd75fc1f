package spanwright.kernel.wire;

import java.nio.charset.StandardCharsets;
import java.security.InvalidKeyException;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;
import spanwright.kernel.message.Bytes;

/**
 * Signs and checks the four JSON frames of a message by HMAC (RFC 2104), over the bytes as they are sent.
 * Immutable and safe in any thread: each signature uses its own copy of the keyed state.
 */
public final class Signer {
    private static final Map<String, String> ALGORITHMS = Map.of(
        "hmac-md5", "HmacMD5", "hmac-sha1", "HmacSHA1", "hmac-sha224", "HmacSHA224",
        "hmac-sha256", "HmacSHA256",
        "hmac-sha384", "HmacSHA384", "hmac-sha512", "HmacSHA512");

    private final Optional<Mac> keyed;

    private Signer(Optional<Mac> keyed) {
        this.keyed = keyed;
    }

    /**
     * A signer for a scheme and key; with an empty key nothing is signed or checked, as the protocol has it.
     *
     * @throws IllegalArgumentException if the scheme is unknown
     */
    public static Signer of(String scheme, Bytes key) {
        final String algorithm = ALGORITHMS.get(scheme);
        if (algorithm == null) {
            throw new IllegalArgumentException("signature_scheme '" + scheme + "' is none of "
                + ALGORITHMS.keySet().stream().sorted().toList());
        }
        if (key.size() == 0) {
            return new Signer(Optional.empty());
        }
        try {
            final Mac mac = Mac.getInstance(algorithm);
            mac.init(new SecretKeySpec(key.shared(), algorithm));
            return new Signer(Optional.of(mac));
        } catch (NoSuchAlgorithmException | InvalidKeyException e) {
            throw new IllegalArgumentException("this Java cannot sign by " + scheme, e);
        }
    }

    /** Whether signatures are made and checked at all. */
    public boolean signs() {
        return keyed.isPresent();
    }

    /** The signature of the frames as lower-case hex, empty if there is no key. */
    public Bytes sign(List<Bytes> frames) {
        if (keyed.isEmpty()) {
            return Bytes.EMPTY;
        }
        final Mac mac = copy(keyed.get());
        frames.forEach(f -> mac.update(f.shared()));
        return Bytes.owned(HexFormat.of().formatHex(mac.doFinal()).getBytes(StandardCharsets.US_ASCII));
    }

    /** Whether the signature is that of the frames; takes the same time wherever it differs. */
    public boolean accepts(Bytes signature, List<Bytes> frames) {
        return keyed.isEmpty() || MessageDigest.isEqual(sign(frames).shared(), signature.shared());
    }

    private static Mac copy(Mac mac) {
        try {
            return (Mac) mac.clone();
        } catch (CloneNotSupportedException e) {
            throw new IllegalStateException("the HMAC of this Java cannot be copied", e);
        }
    }
}
