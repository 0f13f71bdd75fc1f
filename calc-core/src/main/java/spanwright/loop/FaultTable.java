package spanwright.loop;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import spanwright.quantity.Checks;
import spanwright.quantity.NumberText;

/**
 * What a loop does with each fault, one at a time.
 *
 * @param loop      its name
 * @param milliamps current the process asks for, in mA
 * @param rows      one for each fault
 */
public record FaultTable(String loop, double milliamps, List<Row> rows) {
    /** Whether the loop of the transmitter lives on. */
    public enum Survival {
        /** It carries what it must. */
        YES("yes"),
        /** It carries less than the largest current it must signal. */
        SHORT("only in part"),
        /** It is broken, and every device in it with it. */
        NO("no"),
        /** The data of the device do not tell. */
        NOT_DETERMINED("not determined");

        private final String words;

        Survival(String words) {
            this.words = words;
        }

        @Override
        public String toString() {
            return words;
        }
    }

    /** What limits in the manner of NE 43 make of the readings with a fault. */
    public enum Flagging {
        /** Every wrong reading is flagged as a failure. */
        FLAGGED("flagged"),
        /** A wrong reading passes for a measurement, or lies where it is neither. */
        NOT_FLAGGED("not flagged"),
        /** Every reading is right. */
        NOTHING_WRONG("nothing wrong to flag"),
        /** The data of the device do not tell. */
        NOT_DETERMINED("not determined");

        private final String words;

        Flagging(String words) {
            this.words = words;
        }

        @Override
        public String toString() {
            return words;
        }
    }

    /**
     * One fault.
     *
     * @param fault    what goes wrong
     * @param readings what each receiver reads
     * @param primary  whether the loop of the transmitter lives on
     * @param note     what to know
     */
    public record Row(LoopFault fault, List<ReceiverReading> readings, Survival primary, String note) {
        /** Checks the components and copies the list. */
        public Row {
            Objects.requireNonNull(fault, "fault");
            readings = List.copyOf(readings);
            Objects.requireNonNull(primary, "primary");
            Objects.requireNonNull(note, "note");
        }

        /**
         * Whether every wrong reading would be flagged as a failure by limits in the manner of NE 43; empty
         * if a reading is not determined.
         *
         * @param right the reading without a fault, in mA
         */
        public Optional<Boolean> isFlagged(double right) {
            if (readings.stream().anyMatch(r -> r.milliamps().isEmpty())) {
                return Optional.empty();
            }
            return Optional.of(readings.stream()
                .filter(r -> r.isWrong(right).orElseThrow())
                .allMatch(r -> r.ne43().orElseThrow().isFlagged()));
        }

        /** Readings that are wrong and that limits in the manner of NE 43 do not flag: nobody notices. */
        public List<ReceiverReading> unnoticed(double right) {
            return readings.stream().filter(r -> r.isWrong(right).orElse(false)
                && !r.ne43().orElseThrow().isFlagged()).toList();
        }

        /** What limits in the manner of NE 43 make of it, the right reading being this, in mA. */
        public Flagging flagging(double right) {
            if (!unnoticed(right).isEmpty()) {
                return Flagging.NOT_FLAGGED;
            }
            if (readings.stream().anyMatch(r -> r.milliamps().isEmpty())) {
                return Flagging.NOT_DETERMINED;
            }
            return readings.stream().anyMatch(r -> r.isWrong(right).orElseThrow()) ? Flagging.FLAGGED
                : Flagging.NOTHING_WRONG;
        }

        @Override
        public String toString() {
            return fault + ": " + readings.stream().map(ReceiverReading::toString)
                .collect(Collectors.joining("; "))
                + "; primary loop survives: " + primary + ". " + note;
        }
    }

    /** Checks the components and copies the list. */
    public FaultTable {
        Checks.notBlank("name of the loop", loop);
        Checks.finite("current in mA", milliamps);
        rows = List.copyOf(rows);
    }

    /** One fault, by its kind and place. */
    public Row row(LoopFault.Kind kind, String at) {
        return rows.stream().filter(r -> r.fault().equals(new LoopFault(kind, at))).findFirst()
            .orElseThrow(() -> new IllegalArgumentException("no fault " + kind + " at " + at + " in "
                + loop));
    }

    /** Whether limits in the manner of NE 43 would flag what a fault makes of the readings. */
    public Flagging flagging(Row row) {
        return row.flagging(milliamps);
    }

    static FaultTable of(CurrentLoop loop, double milliamps) {
        final LoopState sound = loop.at(milliamps);
        if (!sound.isSolved() || sound.circuits().stream().anyMatch(CircuitState::isShort)) {
            throw new IllegalArgumentException("faults of " + loop.name() + " at " + milliamps
                + " mA: the sound loop does not carry it. " + sound.sentence());
        }
        final FaultCase cases = new FaultCase(loop, sound);
        return new FaultTable(loop.name(), milliamps, faults(loop).stream().map(cases::row).toList());
    }

    private static List<LoopFault> faults(CurrentLoop loop) {
        final List<LoopFault> faults = new ArrayList<>();
        final List<LoopElement> all = Pairing.all(loop.elements()).toList();
        for (LoopElement element : all) {
            if (element instanceof Isolator) {
                faults.add(new LoopFault(LoopFault.Kind.OPEN_OUTPUT, element.name()));
                faults.add(new LoopFault(LoopFault.Kind.SHORTED_OUTPUT, element.name()));
            }
            if (isInput(element)) {
                faults.add(new LoopFault(LoopFault.Kind.OPEN_INPUT, element.name()));
            }
            if (element instanceof Transmitter) {
                faults.add(new LoopFault(LoopFault.Kind.SHORTED_OUTPUT, element.name()));
            }
            if (isInput(element) || element instanceof Transmitter) {
                faults.add(new LoopFault(LoopFault.Kind.REVERSED, element.name()));
            }
        }
        loop.circuit().all().forEach(c -> c.supply().filter(s -> !c.isActive()).ifPresent(s -> {
            faults.add(new LoopFault(LoopFault.Kind.BROKEN_COMMON, c.name()));
            faults.add(new LoopFault(LoopFault.Kind.SUPPLY_AT_MINIMUM, c.name()));
        }));
        return faults;
    }

    private static boolean isInput(LoopElement element) {
        return element instanceof Isolator || element instanceof Burden b && b.kind().reads();
    }

    @Override
    public String toString() {
        return "Faults of " + loop + " at " + NumberText.plain(milliamps, 5) + " mA"
            + rows.stream().map(r -> "\n" + r + " By NE 43 limits: " + r.flagging(milliamps) + ".")
                .collect(Collectors.joining());
    }
}
