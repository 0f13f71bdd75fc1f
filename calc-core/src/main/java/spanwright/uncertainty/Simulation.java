package spanwright.uncertainty;

import java.util.Arrays;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.atomic.AtomicReference;

/**
 * One Monte Carlo run. The trials are cut into tasks whose number depends on nothing but the number of
 * trials; each task has its own random stream, counts are whole numbers, and sums are combined in the order
 * of the tasks. So the threads that take the tasks cannot change the result.
 */
final class Simulation {
    private static final int BLOCK = RandomStream.BLOCK;
    private static final int MOST_TASKS = 1024;
    private static final int LEAST_BLOCKS = 16;
    private static final int PILOT_BLOCKS = 8;
    private static final long PILOT_STREAM = -1;
    private static final long TICK_MILLIS = 100;

    private final MeasurementModel model;
    private final MonteCarlo settings;
    private final InputBlocks inputs;
    private final long trials;
    private final long trialsOfTask;
    private final int tasks;
    private final double[][] sums;
    private final AtomicInteger nextTask = new AtomicInteger();
    private final AtomicLong done = new AtomicLong();
    private final AtomicReference<Throwable> failure = new AtomicReference<>();
    private volatile boolean cancelled;
    private Grid grid;
    private double reference;
    private Tally total;

    Simulation(MeasurementModel model, MonteCarlo settings) {
        this.model = model;
        this.settings = settings;
        this.inputs = new InputBlocks(model);
        this.trials = settings.trials();
        final long blocks = (trials + BLOCK - 1) / BLOCK;
        this.trialsOfTask = Math.max(LEAST_BLOCKS, (blocks + MOST_TASKS - 1) / MOST_TASKS) * BLOCK;
        this.tasks = (int) ((trials + trialsOfTask - 1) / trialsOfTask);
        this.sums = new double[tasks][];
    }

    MonteCarloResult run() {
        pilot();
        total = new Tally(grid, reference);
        final Thread[] workers = new Thread[Math.min(settings.threads(), tasks)];
        for (int i = 0; i < workers.length; i++) {
            workers[i] = new Thread(this::work, "monte-carlo-" + i);
            workers[i].setDaemon(true);
            workers[i].start();
        }
        await(workers);
        if (failure.get() instanceof Error error) {
            throw error;
        }
        if (failure.get() instanceof RuntimeException exception) {
            throw exception;
        }
        return result();
    }

    /** A few trials of their own stream, not counted, that show where the outcomes lie. */
    private void pilot() {
        final TrialBlocks blocks = new TrialBlocks(model, inputs);
        blocks.restart(settings.seed(), PILOT_STREAM);
        final double[] sample = new double[PILOT_BLOCKS * BLOCK];
        for (int i = 0; i < PILOT_BLOCKS; i++) {
            System.arraycopy(i == 0 ? blocks.nextChecked(BLOCK) : blocks.next(BLOCK), 0, sample, i * BLOCK,
                BLOCK);
        }
        Arrays.sort(sample);
        if (!(Math.abs(sample[sample.length - 1]) <= Double.MAX_VALUE
            && Math.abs(sample[0]) <= Double.MAX_VALUE)) {
            throw notFinite(blocks, "one of the first trials");
        }
        grid = Grid.around(sample);
        reference = sample[sample.length / 2];
    }

    private void await(Thread[] workers) {
        try {
            for (final Thread worker : workers) {
                worker.join(TICK_MILLIS);
                while (worker.isAlive()) {
                    settings.progress().ifPresent(p -> p.at(done.get(), trials));
                    worker.join(TICK_MILLIS);
                }
            }
        } catch (InterruptedException e) {
            cancelled = true;
            Thread.currentThread().interrupt();
            throw new MonteCarloStoppedException(done.get(), trials);
        }
        settings.progress().ifPresent(p -> p.at(done.get(), trials));
    }

    private void work() {
        try {
            final TrialBlocks blocks = new TrialBlocks(model, inputs);
            final Tally tally = new Tally(grid, reference);
            int task = nextTask.getAndIncrement();
            while (task < tasks && !cancelled) {
                workTask(task, blocks, tally);
                task = nextTask.getAndIncrement();
            }
            synchronized (total) {
                tally.addInto(total);
            }
        } catch (RuntimeException | Error e) {
            failure.compareAndSet(null, e);
            cancelled = true;
        }
    }

    private void workTask(int task, TrialBlocks blocks, Tally tally) {
        blocks.restart(settings.seed(), task);
        final long size = Math.min(trialsOfTask, trials - task * trialsOfTask);
        for (long at = 0; at < size && !cancelled; at += BLOCK) {
            final int n = (int) Math.min(BLOCK, size - at);
            final int bad = tally.add(blocks.next(n), n);
            if (bad >= 0) {
                throw notFinite(blocks, "the trial at " + blocks.describe(bad));
            }
            done.addAndGet(n);
        }
        sums[task] = tally.takeSums();
    }

    private IllegalArgumentException notFinite(TrialBlocks blocks, String which) {
        return new IllegalArgumentException(which + " gave no finite " + model.measurand()
            + ": the model must be finite wherever the distributions of its inputs reach");
    }

    private MonteCarloResult result() {
        double sum = 0;
        double squares = 0;
        for (final double[] part : sums) {
            sum += part[0];
            squares += part[1];
        }
        final double shift = sum / trials;
        final double variance = Math.max(0, squares - sum * shift) / (trials - 1);
        final double mean = reference + shift;
        final double u = Math.sqrt(variance);
        return new MonteCarloResult(model, settings.seed(), mean, u, new Outcomes(grid, total, mean, u));
    }
}
