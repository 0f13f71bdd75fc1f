/**
 * Calibration records: files in, typed readings out, and a log of everything that was repaired, refused,
 * asked or flagged.
 *
 * <p>Every number keeps the cell it came from and the text that stood there. An absent reading is absent, not
 * zero and not NaN. The applied input that was actually read counts, not the nominal point.
 *
 * <h2>The form of a record</h2>
 * A text file (comma, semicolon or tab; UTF-8, UTF-16 or Latin-1) or an XLSX workbook: header lines, then a
 * table whose heads carry units. Lines that begin with # are remarks.
 *
 * <pre>{@code
 * Tag,LT-101A
 * Serial,KF-0417
 * Date,2026-03-14
 * Technician,T-07
 * Input range,4 to 20 mA
 * Output range,4 to 20 mA
 * Transfer,linear
 * Tolerance,0.1 % of span
 * Supply,24.0 V
 * Load,250 ohm
 * Ambient,23.1 degC
 * Phase,as found
 * Standard,S-01; certificate C-2211; due 2026-12-01; U 0.003 mA; k 2
 *
 * Cycle,Point (%),Direction,Applied (mA),Indicated (mA)
 * 1,0,up,4.000,4.003
 * 1,25,up,8.001,8.006
 * }</pre>
 *
 * <p><b>Header lines.</b> A key in the first cell, its value behind it. Both ranges are needed; they may be
 * said in the call instead. Known keys: Tag, Serial, Channel, Location, Work order, Procedure, Date, Zone,
 * Technician, Reviewer, Input range, Output range, Input scale, Output scale (engineering units that stand
 * for the range), Transfer (linear, square root), Tolerance, Tolerance basis, Setting tolerance, Supply,
 * Load, Warm-up, Ambient, Ambient limits, Humidity, Phase (as found, as left, as found = as left), Adjusted
 * (yes, no), Standard (one line each: name; certificate; certified date; due date; U with unit; k), Remark.
 * Other lines are flagged and not used.
 *
 * <p><b>Table, long form.</b> One row per reading; columns in any order: Applied and Indicated are needed;
 * Point (%), Direction, Cycle, Phase, Tag, Channel, Serial, Ambient, Time and Remark are understood; a time
 * of day takes the day of the header, and needs a zone there, in the cell or in the call. Rows of several
 * channels, phases and ambient temperatures may stand in one table.
 *
 * <p><b>Table, wide form.</b> One row per point, one column per direction, phase or cycle: "As found up
 * (mA)", "As left down (mA)", "Up 2 (mA)".
 *
 * <p><b>Units</b> stand in the head, as (mA), [mA], ", mA" or "_mA", or behind each number. A voltage across
 * a resistor is written "V across 250 ohm" or "mV across 10 ohm"; "% of span" goes through the range. A
 * number without a unit is refused.
 *
 * <p><b>Several tables.</b> Header lines after a table begin the next one; lines that are not repeated hold
 * on. So a chamber record is one table per ambient temperature, or one table with a column "Ambient (degC)".
 *
 * <h2>Other tables</h2>
 * {@link spanwright.readings.Readings#table(String)} reads any table of numbers and text under one row of
 * heads, as strictly: published data, logs of any length. {@link spanwright.readings.Readings#check(String)}
 * reads a folder and says what became of each file; {@link spanwright.readings.TagHistory} joins the records
 * of a tag.
 *
 * <h2>Out again</h2>
 * {@link spanwright.readings.CalibrationRecord#toTable()} has a row for each reading, absent ones too, with
 * the text and the place of its cells. {@link spanwright.readings.CalibrationRecord#writeCsv} writes the
 * record as it was read, cell for cell, with what the call said put in.
 *
 * <h2>What is read strictly</h2> One decimal sign per file; digits are never grouped; {@link
 * spanwright.readings.Fault} lists what is refused, asked, repaired and flagged. A question is answered in
 * the call:
 * {@code Readings.reading(file).accepting(Fault.COLUMNS_SWAPPED).read()}.
 */
package spanwright.readings;
