/**
 * Calibration records: files in, typed readings out, and a log of everything that was repaired, refused or
 * asked.
 *
 * <p>Every number keeps the cell it came from and the text that stood there. An absent reading is absent,
 * not zero and
 * not NaN. The applied input that was actually read counts, not the nominal point.
 */
package spanwright.readings;
