package spanwright.kernel.wire;

import java.util.regex.Pattern;

/**
 * The key pair of the kernel for CurveZMQ, each key in Z85 (ZeroMQ RFC 32), 40 characters.
 *
 * @param publicKey what clients must know
 * @param secretKey what only the kernel may know, apart from the connection file
 */
public record CurveKeys(String publicKey, String secretKey) {
    private static final Pattern Z85 = Pattern.compile("[0-9a-zA-Z.\\-:+=^!/*?&<>()\\[\\]{}@%$#]{40}");

    /** Checks the components. */
    public CurveKeys {
        check("curve_publickey", publicKey);
        check("curve_secretkey", secretKey);
    }

    private static void check(String name, String key) {
        if (Z85.matcher(key).matches()) {
            return;
        }
        throw new IllegalArgumentException(
            name + " has " + key.length() + " characters, 40 characters of Z85 are needed");
    }

    /** Says that there are keys, not what they are. */
    @Override
    public String toString() {
        return "CurveKeys[" + publicKey + ", secret not shown]";
    }
}
