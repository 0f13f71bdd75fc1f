package spanwright.kernel.wire;

import java.util.LinkedHashMap;
import java.util.Map;

/**
 * The five ports of a kernel; 0 stands for one that is yet to be picked.
 *
 * @param shell     requests
 * @param iopub     what is published
 * @param stdin     questions to the person
 * @param control   requests that go ahead of the others
 * @param heartbeat echo
 */
public record Ports(int shell, int iopub, int stdin, int control, int heartbeat) {
    /** All to be picked. */
    public static final Ports ANY = new Ports(0, 0, 0, 0, 0);

    /** Checks the ranges. */
    public Ports {
        check("shell_port", shell);
        check("iopub_port", iopub);
        check("stdin_port", stdin);
        check("control_port", control);
        check("hb_port", heartbeat);
    }

    private static void check(String name, int port) {
        if (port >= 0 && port <= 65_535) {
            return;
        }
        throw new IllegalArgumentException(name + " is " + port + ", a port lies within 0..65535");
    }

    /** The ports by the names of the protocol. */
    public Map<String, Integer> byName() {
        final Map<String, Integer> names = new LinkedHashMap<>();
        names.put("shell_port", shell);
        names.put("iopub_port", iopub);
        names.put("stdin_port", stdin);
        names.put("control_port", control);
        names.put("hb_port", heartbeat);
        return names;
    }
}
