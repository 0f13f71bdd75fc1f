/**
 * Turns requests into answers: one cell at a time, and beside it, on threads of their own, completion and
 * inspection, and whatever must be answered at once (who are you, interrupt, shutdown).
 *
 * <p>{@link spanwright.kernel.dispatch.KernelServer} is one kernel in this process; {@link
 * spanwright.kernel.dispatch.KernelProcess} is a process that is nothing but a kernel.
 *
 * <p>Every request on shell and control gives exactly one "busy" and one "idle", in this order, around its
 * reply. A malformed message gives nothing but a line in the log.
 */
package spanwright.kernel.dispatch;
