package spanwright.kernel.wire;

/** The channels that carry messages; the heartbeat carries none. */
public enum Channel {
    /** Requests in order. */
    SHELL,
    /** Requests that go ahead of the others. */
    CONTROL,
    /** Questions to the person and their answers. */
    STDIN,
    /** What is published to all clients. */
    IOPUB
}
