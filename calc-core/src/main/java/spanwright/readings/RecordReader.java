package spanwright.readings;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Reads one file from bytes to record. Not thread safe; used once for one file. */
final class RecordReader {
    private final RecordReading settings;
    private final Grid grid;
    private final List<RecordFinding> findings = new ArrayList<>();
    private final List<String> understood = new ArrayList<>();
    private int accepted;
    private int repaired;
    private int refused;

    private RecordReader(RecordReading settings, Grid grid) {
        this.settings = settings;
        this.grid = grid;
        findings.addAll(grid.findings());
    }

    /** Reads strictly: whatever is refused is thrown, unless the call leaves refused rows out. */
    static CalibrationRecord read(RecordReading settings) {
        final CalibrationRecord record = readAll(settings, grid(settings.file()));
        final List<RecordFinding> refusals = record.findings(Outcome.REFUSED);
        if (!refusals.isEmpty() && !(settings.leavesOutRefusedRows() && record.account().refused() > 0
            && !record.allRuns().isEmpty())) {
            throw new ReadingsFormatException(refusals.get(0), record.findings());
        }
        return record;
    }

    /** Reads everything that can be read, and lists the rest. */
    static CalibrationRecord readAll(RecordReading settings, Grid grid) {
        return new RecordReader(settings, grid).record();
    }

    static Grid grid(Path file) {
        try {
            if (Workbooks.isWorkbook(file)) {
                return Workbooks.grid(file);
            }
            return grid(name(file), Files.readAllBytes(file));
        } catch (IOException e) {
            throw new UncheckedIOException("cannot read " + file + ": " + e.getMessage(), e);
        }
    }

    static Grid grid(String name, byte[] bytes) {
        return DelimitedGrid.of(TextFile.decode(bytes, name), name);
    }

    static String name(Path file) {
        return Optional.ofNullable(file.getFileName()).orElse(file).toString();
    }

    private CalibrationRecord record() {
        final BlockSplitter splitter = new BlockSplitter(grid, settings);
        final List<Block> blocks = splitter.split();
        findings.addAll(splitter.findings());
        final DecimalVote vote = new DecimalVote();
        vote.count(grid, blocks);
        final DecimalSign decimal = vote.decide(settings);
        vote.firstComma().ifPresent(f -> findings.add(RecordFinding.of(Fault.DECIMAL_COMMA, f.cell(),
            f.written(), "the decimal sign of this file is the comma: \"" + f.written() + "\"")));
        understood.add("cells separated by " + grid.delimiter() + ", decimal sign \"" + decimal.sign()
            + "\"");
        final RunAssembler assembler = new RunAssembler(settings, findings);
        final RecordCopy copy = new RecordCopy(grid, settings, decimal);
        for (Block block : blocks) {
            read(block, copy, assembler);
        }
        final List<RunRecord> runs = assembler.runs();
        copy.runs(runs, findings);
        commas(vote, runs);
        if (runs.isEmpty() && findings.stream().noneMatch(f -> f.outcome() == Outcome.REFUSED
            || f.isOpenQuestion())) {
            findings.add(RecordFinding.of(Fault.EMPTY_FILE, grid.start(), "", "no reading in the file"));
        }
        findings.sort(Comparator.comparingInt((RecordFinding f) -> f.cell().row())
            .thenComparingInt(f -> f.cell().column()));
        final RowAccount account = new RowAccount(splitter.comments(), splitter.headerRows(), accepted,
            repaired, refused);
        return new CalibrationRecord(settings, copy, runs, findings, understood, account);
    }

    private void read(Block block, RecordCopy copy, RunAssembler assembler) {
        final DecimalSign decimal = copy.decimal();
        final CellAddress head = grid.at(block.head(), 0);
        final Optional<BlockHeader> header = new HeaderReader(settings, decimal, findings)
            .read(block.preamble(), head);
        final Optional<RowReader> rows = header
            .flatMap(h -> new BlockReader(settings, grid, h, decimal, findings).read(block, understood));
        if (rows.isEmpty()) {
            refused += block.rows().size();
            copy.refused(block);
            return;
        }
        accepted += rows.get().accepted();
        repaired += rows.get().repaired();
        refused += rows.get().refused();
        copy.table(block, header.get(), rows.get().plan());
        assembler.add(block.preamble(), header.get(), rows.get());
    }

    /** Where every comma may separate thousands, the decimal comma must at least make sense of the ranges. */
    private void commas(DecimalVote vote, List<RunRecord> runs) {
        final boolean unclear = vote.mayBeThousands() && settings.decimal().isEmpty()
            && runs.stream().anyMatch(r -> outside(r.run()));
        if (!unclear) {
            return;
        }
        final RecordFinding comma = vote.firstComma().orElseThrow();
        final String says = "the comma in \"" + comma.written()
            + "\" may separate thousands or decimals, and so"
            + " in every number, and as decimals they do not fit the ranges";
        if (settings.accepts(Fault.COMMA_UNCLEAR)) {
            findings.add(RecordFinding.of(Fault.ANSWERED, comma.cell(), comma.written(),
                "commas read as decimal commas, as told in the call"));
        } else {
            findings.add(RecordFinding.question(Fault.COMMA_UNCLEAR, comma.cell(), comma.written(), says,
                "read them as decimal commas"));
        }
    }

    private static boolean outside(CalibrationRun run) {
        final long out = run.readings().stream().filter(r -> {
            final double in = run.input().percentAt(r.applied().value());
            return in < -10 || in > 110;
        }).count();
        return 2 * out > run.readings().size();
    }
}
