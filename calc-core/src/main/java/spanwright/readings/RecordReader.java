package spanwright.readings;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Reads one file from bytes to record. Not thread safe; used once for one file. */
final class RecordReader {
    private final RecordReading settings;
    private final Grid grid;
    private final List<Finding> findings = new ArrayList<>();
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
        final List<Finding> refusals = record.findings(Outcome.REFUSED);
        if (!refusals.isEmpty() && !(settings.leavesOutRefusedRows() && record.account().refused() > 0
            && !record.runsWithoutQuestions().isEmpty())) {
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
            final byte[] bytes = Files.readAllBytes(file);
            return DelimitedGrid.of(TextFile.decode(bytes, name(file)), name(file));
        } catch (IOException e) {
            throw new UncheckedIOException("cannot read " + file + ": " + e.getMessage(), e);
        }
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
        vote.firstComma().ifPresent(f -> findings.add(Finding.of(Fault.DECIMAL_COMMA, f.cell(), f.written(),
            "the decimal sign of this file is the comma: \"" + f.written() + "\"")));
        understood.add("cells separated by " + grid.delimiter() + ", decimal sign \"" + decimal.sign()
            + "\"");
        final RunAssembler assembler = new RunAssembler(findings);
        for (Block block : blocks) {
            read(block, decimal, assembler);
        }
        final RowAccount account = new RowAccount(splitter.comments(), splitter.headerRows(), accepted,
            repaired,
            refused);
        return new CalibrationRecord(settings, grid.file(), assembler.runs(), findings, understood, account);
    }

    private void read(Block block, DecimalSign decimal, RunAssembler assembler) {
        final CellAddress head = grid.at(block.head(), 0);
        final Optional<BlockHeader> header = new HeaderReader(settings, decimal, findings)
            .read(block.preamble(), head);
        final Optional<ColumnPlan> plan = header.flatMap(h ->
            ColumnPlan.of(block, h, grid, settings, findings));
        if (plan.isEmpty()) {
            refused += block.rows().size();
            return;
        }
        understood.addAll(plan.get().sentences());
        final RowReader rows = new RowReader(grid, block, plan.get(), decimal, findings);
        rows.read();
        accepted += rows.accepted();
        repaired += rows.repaired();
        refused += rows.refused();
        assembler.add(block.preamble(), header.get(), rows);
    }
}
