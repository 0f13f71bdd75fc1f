/**
 * The interpreter on the JShell API, in the process of the kernel.
 *
 * <p>A cell is split into units; statements in a row, and a last expression whose value is shown, are
 * compiled as one block, which is several times faster than one by one. JShell compiles; {@link
 * spanwright.kernel.jshell.JShellInterpreter} runs what it made on a thread of its own, so that the real
 * object of the last expression is at hand and the cell can be stopped: by {@code Thread.stop} up to JDK 19,
 * and by the checks that later JDKs weave into each method and loop.
 */
package spanwright.kernel.jshell;
