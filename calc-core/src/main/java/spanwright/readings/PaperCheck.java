package spanwright.readings;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import spanwright.quantity.Celsius;
import spanwright.quantity.Span;

/** Checks what the header says against the readings: standards, ambient temperature, tag and file name. */
final class PaperCheck {
    private static final Pattern TAG = Pattern.compile("[A-Z]{1,5}-?\\d{2,6}[A-Z]?(?![A-Za-z0-9])");
    private static final Pattern SPREADSHEET = Pattern.compile("\\d+(\\.\\d+)?[eE][+]?\\d+|#+");

    private final List<RecordFinding> findings;

    PaperCheck(List<RecordFinding> findings) {
        this.findings = findings;
    }

    /** Checks the header of one run; each finding stands at the cell of the header that it is about. */
    void run(RunRecord record, Optional<Span> limits) {
        final CalibrationRun run = record.run();
        final Optional<LocalDate> day = record.header().date().map(RecordDate::day);
        for (Standard s : record.header().standards()) {
            final String all = ": all " + run.readings().size() + " readings are flagged";
            if (day.isPresent() && s.due().isPresent() && s.due().get().isBefore(day.get())) {
                flag(Fault.STANDARD_OVERDUE, run, s.cell(), s.id(), "standard " + s.id() + " was due on "
                    + s.due().get() + ", before the record of " + day.get() + all);
            }
            if (day.isPresent() && s.certified().isPresent() && s.certified().get().isAfter(day.get())) {
                flag(Fault.STANDARD_NOT_YET_CERTIFIED, run, s.cell(), s.id(), "standard " + s.id()
                    + " was certified on " + s.certified().get() + ", after the record of " + day.get()
                        + all);
            }
        }
        ambient(record, limits);
        spreadsheet(PreambleKey.TAG, "tag", run.channel(), record);
        spreadsheet(PreambleKey.SERIAL, "serial number", run.serial(), record);
    }

    private void ambient(RunRecord record, Optional<Span> limits) {
        final Optional<Celsius> ambient = record.run().conditions().ambient();
        if (ambient.isEmpty()) {
            flag(Fault.AMBIENT_MISSING, record, PreambleKey.AMBIENT, "ambient temperature is not stated: the"
                + " temperature contribution must be taken over the whole range it may have had");
        } else if (limits.isPresent() && (ambient.get().value() < limits.get().lower()
            || ambient.get().value() > limits.get().upper())) {
            flag(Fault.AMBIENT_OUTSIDE, record, PreambleKey.AMBIENT, "ambient " + ambient.get()
                + " is outside the stated limits " + limits.get() + ": the temperature contribution grows");
        }
    }

    private void spreadsheet(PreambleKey key, String what, String text, RunRecord record) {
        if (SPREADSHEET.matcher(text).matches()) {
            flag(Fault.SPREADSHEET_CHANGE, record, key, what + " \"" + text
                + "\" looks like a number that a spreadsheet made of a name such as 1E5");
        }
    }

    /** Compares the tags of the record with the one in the file name, if that has one. */
    void fileName(String file, List<RunRecord> runs) {
        final Matcher name = TAG.matcher(file);
        if (!name.find() || runs.isEmpty() || runs.stream().anyMatch(r -> r.run().channel()
            .contains(name.group()) || r.header().tag().contains(name.group()))) {
            return;
        }
        flag(Fault.TAG_MISMATCH, runs.get(0), PreambleKey.TAG, "the file name says " + name.group()
            + ", the record " + runs.get(0).run().channel());
    }

    /** At the header line, or where there is none at the first reading. */
    private void flag(Fault fault, RunRecord record, PreambleKey key, String says) {
        final Entry first = record.run().readings().get(0).indicated();
        final Optional<CellAddress> line = Optional.ofNullable(record.header().cells().get(key.word()))
            .filter(c -> key != PreambleKey.AMBIENT || record.run().readings().get(0).ambient().isEmpty());
        flag(fault, record.run(), line.orElse(first.cell()), line.isPresent()
            ? record.header().lines().get(key.word()) : first.written(), says);
    }

    private void flag(Fault fault, CalibrationRun run, CellAddress at, String written, String says) {
        findings.add(RecordFinding.of(fault, at, written, says).inChannel(run.channel()));
    }
}
