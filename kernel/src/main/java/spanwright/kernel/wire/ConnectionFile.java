package spanwright.kernel.wire;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import spanwright.kernel.message.Bytes;
import spanwright.kernel.message.Fields;
import spanwright.kernel.message.Json;
import spanwright.kernel.message.MalformedMessageException;

/**
 * What a client tells a kernel about where and how to listen. Keys that are not known are kept when the file
 * is written again, and otherwise ignored.
 *
 * @param ip              address to bind
 * @param ports           the five ports, 0 for one to be picked
 * @param key             of the signatures; empty for none
 * @param signatureScheme for example "hmac-sha256"
 * @param curve           keys of encryption, if it is asked for
 * @param registration    where to announce the ports, if the client asks the kernel to pick them (JEP 66)
 * @param json            the whole file
 */
public record ConnectionFile(String ip, Ports ports, Bytes key, String signatureScheme,
                             Optional<CurveKeys> curve, Optional<Registration> registration,
                             ObjectNode json) {
    private static final FileAttribute<Set<PosixFilePermission>> OWNER_ONLY =
        PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------"));

    /**
     * Where a kernel announces the ports it picked.
     *
     * @param ip       address of the client
     * @param port     port of the client
     * @param kernelId name under which the client knows this kernel
     */
    public record Registration(String ip, int port, String kernelId) { }

    /** Checks the components. */
    public ConnectionFile {
        Objects.requireNonNull(ip, "ip");
        Objects.requireNonNull(ports, "ports");
        Objects.requireNonNull(key, "key");
        Objects.requireNonNull(signatureScheme, "signatureScheme");
        Objects.requireNonNull(curve, "curve");
        Objects.requireNonNull(registration, "registration");
        json = json.deepCopy();
    }

    /** A description for this machine only, all ports to be picked, signed by HMAC-SHA256. */
    public static ConnectionFile local(String key) {
        return new ConnectionFile("127.0.0.1", Ports.ANY, Bytes.of(key), "hmac-sha256", Optional.empty(),
            Optional.empty(), Json.object().put("transport", "tcp").put("ip", "127.0.0.1").put("key", key)
                .put("signature_scheme", "hmac-sha256"));
    }

    /**
     * Reads a connection file.
     *
     * @throws IOException              if it cannot be read or is not a JSON object
     * @throws IllegalArgumentException if the transport is not tcp or a value is out of range; names file and
     *                                  value
     */
    public static ConnectionFile read(Path file) throws IOException {
        try {
            return of(Json.readObject("connection file", Bytes.owned(Files.readAllBytes(file))));
        } catch (MalformedMessageException e) {
            throw new IOException(file + ": " + e.getMessage(), e);
        } catch (IllegalArgumentException e) {
            throw new IllegalArgumentException(file + ": " + e.getMessage(), e);
        }
    }

    private static ConnectionFile of(ObjectNode json) throws MalformedMessageException {
        final Fields f = new Fields("connection file", json);
        final String transport = f.optionalText("transport").orElse("tcp");
        if (!transport.equals("tcp")) {
            throw new IllegalArgumentException("transport is '" + transport
                + "', this kernel speaks tcp only; start it with transport tcp");
        }
        final Optional<String> publicKey = f.optionalText("curve_publickey");
        final Optional<String> secretKey = f.optionalText("curve_secretkey");
        if (publicKey.isPresent() != secretKey.isPresent()) {
            throw new IllegalArgumentException(
                "curve_publickey and curve_secretkey must both be there or both be absent");
        }
        return new ConnectionFile(f.optionalText("ip").orElse("127.0.0.1"), ports(f),
            Bytes.of(f.optionalText("key").orElse("")),
            f.optionalText("signature_scheme").filter(s -> !s.isEmpty()).orElse("hmac-sha256"),
            publicKey.map(k -> new CurveKeys(k, secretKey.orElseThrow())), registration(f), json);
    }

    private static Ports ports(Fields f) throws MalformedMessageException {
        return new Ports(f.whole("shell_port").orElse(0), f.whole("iopub_port").orElse(0),
            f.whole("stdin_port").orElse(0), f.whole("control_port").orElse(0), f.whole("hb_port").orElse(0));
    }

    private static Optional<Registration> registration(Fields f) throws MalformedMessageException {
        final Optional<Integer> port = f.whole("registration_port");
        if (port.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new Registration(f.optionalText("registration_ip").orElse("127.0.0.1"), port.get(),
            f.text("kernel_id")));
    }

    /** This description with ports that were picked. */
    public ConnectionFile withPorts(Ports picked) {
        final ObjectNode more = json.deepCopy();
        for (final Map.Entry<String, Integer> port : picked.byName().entrySet()) {
            more.put(port.getKey(), port.getValue());
        }
        return new ConnectionFile(ip, picked, key, signatureScheme, curve, registration, more);
    }

    /**
     * Writes it, readable by the owner only, in one step, so that a client never sees half a file.
     *
     * @throws IOException if the file cannot be written
     */
    public void write(Path file) throws IOException {
        final Path folder = file.toAbsolutePath().getParent();
        final boolean posix = FileSystems.getDefault().supportedFileAttributeViews().contains("posix");
        final Path draft = posix
            ? Files.createTempFile(folder, ".connection", ".json", OWNER_ONLY)
            : Files.createTempFile(folder, ".connection", ".json");
        try {
            Files.writeString(draft, json.toPrettyString() + "\n", StandardCharsets.UTF_8);
            Files.move(draft, file, StandardCopyOption.REPLACE_EXISTING);
        } finally {
            Files.deleteIfExists(draft);
        }
    }

    /** Leaves the keys out: this is what goes into logs. */
    @Override
    public String toString() {
        return "tcp://" + ip + " " + ports.byName() + " " + signatureScheme
            + (curve.isPresent() ? " encrypted" : "");
    }
}
