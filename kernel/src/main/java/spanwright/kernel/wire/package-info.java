/**
 * Messages as frames on ZeroMQ sockets: the connection file, signatures, framing, and the one thread that
 * owns the sockets. What a frame means is not decided here.
 *
 * <p>{@link spanwright.kernel.wire.Envelope} and {@link spanwright.kernel.wire.Signer} are pure functions of
 * bytes, so that they can be tested with broken input in great number.
 */
package spanwright.kernel.wire;
