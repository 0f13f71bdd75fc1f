/**
 * What a calibration record says about one channel: errors, the metrics made from them, and what to do next.
 *
 * <p>Start with {@link spanwright.error.ChannelAnalysis#of}. Every error is computed from the input that was
 * actually applied, never from the nominal point. Every metric is a {@link spanwright.error.Finding}: a
 * value, or "not determined" with the reason where the record cannot tell. A missing downscale leg makes
 * hysteresis not determined, not zero.
 *
 * <p>The metrics are defined in the manner of IEC 61298-2 and ISA-51.1. Errors are in percent of the output
 * span unless a name says otherwise. Everything here is immutable.
 */
package spanwright.error;
