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

    /** Checks the header of one run. */
    void run(RunRecord record, Optional<Span> limits) {
        final CalibrationRun run = record.run();
        final Entry first = run.readings().get(0).indicated();
        final Optional<LocalDate> day = record.header().date().map(RecordDate::day);
        for (Standard s : record.header().standards()) {
            final int n = run.readings().size();
            if (day.isPresent() && s.due().isPresent() && s.due().get().isBefore(day.get())) {
                flag(Fault.STANDARD_OVERDUE, run, first, "standard " + s.id() + " was due on " + s.due().get()
                    + ", before the record of " + day.get() + ": all " + n + " readings are flagged");
            }
            if (day.isPresent() && s.certified().isPresent() && s.certified().get().isAfter(day.get())) {
                flag(Fault.STANDARD_NOT_YET_CERTIFIED, run, first, "standard " + s.id() + " was certified on "
                    + s.certified().get() + ", after the record of " + day.get() + ": all " + n
                    + " readings are flagged");
            }
        }
        ambient(run, first, limits);
        if (SPREADSHEET.matcher(run.channel()).matches() || SPREADSHEET.matcher(run.serial()).matches()) {
            flag(Fault.SPREADSHEET_CHANGE, run, first, "tag \"" + run.channel() + "\" or serial \""
                + run.serial()
                + "\" looks like a number that a spreadsheet made of a tag such as 1E5");
        }
    }

    private void ambient(CalibrationRun run, Entry first, Optional<Span> limits) {
        final Optional<Celsius> ambient = run.conditions().ambient();
        if (ambient.isEmpty()) {
            flag(Fault.AMBIENT_MISSING, run, first, "ambient temperature is not stated: the temperature"
                + " contribution must be taken over the whole range it may have had");
        } else if (limits.isPresent() && (ambient.get().value() < limits.get().lower()
            || ambient.get().value() > limits.get().upper())) {
            flag(Fault.AMBIENT_OUTSIDE, run, first, "ambient " + ambient.get()
                + " is outside the stated limits "
                + limits.get() + ": the temperature contribution grows");
        }
    }

    /** Compares the tags of the record with the one in the file name, if that has one. */
    void fileName(String file, List<RunRecord> runs) {
        final Matcher name = TAG.matcher(file);
        if (!name.find() || runs.isEmpty() || runs.stream().anyMatch(r -> r.run().channel()
            .contains(name.group()) || r.header().tag().contains(name.group()))) {
            return;
        }
        final CalibrationRun run = runs.get(0).run();
        flag(Fault.TAG_MISMATCH, run, run.readings().get(0).indicated(), "the file name says " + name.group()
            + ", the record " + run.channel());
    }

    private void flag(Fault fault, CalibrationRun run, Entry at, String says) {
        findings.add(RecordFinding.of(fault, at.cell(), at.written(), says).inChannel(run.channel()));
    }
}
