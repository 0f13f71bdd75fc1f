/**
 * What time does: how reliable a population of instruments is between calibrations, and what interval keeps a
 * stated reliability.
 */
package spanwright.drift;
