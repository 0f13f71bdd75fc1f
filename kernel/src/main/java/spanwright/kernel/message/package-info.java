/**
 * The messages of the Jupyter protocol as values: what a client may ask ({@link
 * spanwright.kernel.message.Request}), what it is answered ({@link spanwright.kernel.message.Reply}) and what
 * is published meanwhile ({@link spanwright.kernel.message.Event}). JSON is written and read here and nowhere
 * else on the protocol side.
 *
 * <p>Reading is strict in types and lenient in keys: a value of the wrong type makes the message malformed,
 * an unknown key is ignored, an absent dictionary is an empty one. Writing never produces NaN or infinity,
 * which are not JSON: they become null.
 *
 * <p>Source: "Messaging in Jupyter", the protocol's documentation, version 5.5.
 */
package spanwright.kernel.message;
