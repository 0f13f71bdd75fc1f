package spanwright.readings;

import java.util.List;

/**
 * Looks for figures that no instrument gives: copied data, errors of exactly zero, last digits of 0 and 5.
 */
final class PatternCheck {
    private static final double FAR = 0.2;
    private static final int FEWEST_ZERO = 5;
    private static final int FEWEST_DIGITS = 8;
    private static final int FEWEST_COPIED = 3;

    private PatternCheck() { }

    /** Checks the figures of one run. */
    static void figures(CalibrationRun run, List<RecordFinding> findings) {
        final List<Reading> readings = run.readings();
        final boolean zero = readings.size() >= FEWEST_ZERO && readings.stream().allMatch(r ->
            Math.abs(r.indicated().value() - run.expected(r)) < 1e-9 * run.output().width());
        if (zero) {
            flag(Fault.ERRORS_ALL_ZERO, run, "the error is exactly zero in all " + readings.size()
                + " readings: no instrument does that", findings);
        } else if (readings.size() >= FEWEST_DIGITS && readings.stream().allMatch(r ->
            endsIn0Or5(r.indicated()))) {
            flag(Fault.LAST_DIGITS, run, "the last digit is 0 or 5 in all " + readings.size()
                + " readings: rounded, or made up", findings);
        }
    }

    /** Flags a run of which most readings miss the characteristic, and no other unit explained them. */
    static void farOff(CalibrationRun run, List<RecordFinding> findings) {
        final long far = run.readings().stream().filter(r -> Math.abs(r.indicated().value() - run.expected(r))
            > FAR * run.output().width()).count();
        if (2 * far > run.readings().size() && findings.stream().noneMatch(RecordFinding::isOpenQuestion)) {
            flag(Fault.OUTSIDE_RANGE, run,
                far + " of " + run.readings().size() + " readings are off by more than "
                    + "20 % of span, and no other unit explains it: are range and transfer function right?",
                findings);
        }
    }

    /** Compares as left with as found of one channel. */
    static void copies(List<RunRecord> runs, List<RecordFinding> findings) {
        for (RunRecord left : runs) {
            for (RunRecord found : runs) {
                if (left.run().phase() == Phase.AS_LEFT && found.run().phase() == Phase.AS_FOUND
                    && left.run().channel().equals(found.run().channel())
                    && left.run().conditions().equals(found.run().conditions())
                    && left.run().readings().size() >= FEWEST_COPIED
                    && texts(left.run()).equals(texts(found.run()))) {
                    flag(Fault.AS_LEFT_COPIED, left.run(), "as left equals as found in every digit of "
                        + left.run().readings().size() + " readings: copied, or not adjusted (then state"
                        + " \"Phase,as found = as left\")", findings);
                }
            }
        }
    }

    private static List<String> texts(CalibrationRun run) {
        return run.readings().stream().map(r -> r.applied().written().strip() + "|"
            + r.indicated().written().strip() + "|" + r.direction() + r.cycle()).toList();
    }

    /** Whole numbers do not count: they may be a coarse display. */
    private static boolean endsIn0Or5(Entry entry) {
        final String number = entry.written().replaceAll("[^0-9.,]", "");
        return number.matches("\\d*[.,]\\d*[05]") && entry.written().strip().matches("[-+\u2212]?[0-9.,]+.*");
    }

    private static void flag(Fault fault, CalibrationRun run, String says, List<RecordFinding> findings) {
        final Entry first = run.readings().get(0).indicated();
        findings.add(RecordFinding.of(fault, first.cell(), first.written(), says).inChannel(run.channel()));
    }
}
