package spanwright.uncertainty;

import java.util.Arrays;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.atomic.AtomicReference;

/**
 * One Monte Carlo run. The trials are cut into tasks whose number depends on nothing but the settings of the
 * trials; each task has its own random stream, counts are whole numbers, and sums are combined in the order
 * of the tasks. So the threads that take the tasks cannot change the result.
 */
final class Simulation {
    private static final int BLOCK = RandomStream.BLOCK;
    private static final int MOST_TASKS = 1024;
    private static final int LEAST_BLOCKS = 16;
    private static final int PILOT_BLOCKS = 2;
    private static final int SEQUENCES_AT_ONCE = 8;
    private static final long PILOT_STREAM = -1;
    private static final long TICK_MILLIS = 100;

    private final MeasurementModel model;
    private final MonteCarlo settings;
    private final InputBlocks inputs;
    private final long trials;
    private final long trialsOfTask;
    private final int tasks;
    private final double[][] sums;
    private final double[][] summaries;
    private final AtomicInteger nextTask = new AtomicInteger();
    private final AtomicLong done = new AtomicLong();
    private final AtomicReference<Throwable> failure = new AtomicReference<>();
    private volatile boolean cancelled;
    private Grid grid;
    private double reference;
    private Counts total;

    Simulation(MeasurementModel model, MonteCarlo settings) {
        this.model = model;
        this.settings = settings;
        this.inputs = new InputBlocks(model, settings.sampling());
        this.trials = settings.trials();
        this.trialsOfTask = settings.stability().map(Stability::sequenceLength).orElseGet(this::evenShare);
        this.tasks = Math.toIntExact((trials + trialsOfTask - 1) / trialsOfTask);
        this.sums = new double[tasks][];
        this.summaries = new double[settings.stability().isPresent() ? tasks : 0][];
    }

    private long evenShare() {
        final long blocks = (trials + BLOCK - 1) / BLOCK;
        return Math.max(LEAST_BLOCKS, (blocks + MOST_TASKS - 1) / MOST_TASKS) * BLOCK;
    }

    MonteCarloResult run() {
        pilot();
        total = new Counts(grid);
        if (settings.stability().isEmpty()) {
            runTasksBefore(tasks);
            return result(tasks, true);
        }
        return runUntilStable(settings.stability().get());
    }

    private MonteCarloResult runUntilStable(Stability stability) {
        final Sequences sequences = new Sequences(stability);
        int finished = 0;
        while (finished < tasks) {
            final int end = Math.min(tasks, finished + SEQUENCES_AT_ONCE);
            runTasksBefore(end);
            for (int task = finished; task < end; task++) {
                sequences.add(summaries[task]);
            }
            finished = end;
            if (finished > 1 && sequences.areStable(moments(finished)[1])) {
                return result(finished, true);
            }
        }
        return result(finished, false);
    }

    /** A few trials of their own stream, not counted, that show where the outcomes lie. */
    private void pilot() {
        final TrialBlocks blocks = new TrialBlocks(model, inputs);
        blocks.restart(settings.seed(), PILOT_STREAM);
        final double[] sample = new double[PILOT_BLOCKS * BLOCK];
        for (int i = 0; i < PILOT_BLOCKS; i++) {
            final double[] out = i == 0 ? blocks.nextChecked(BLOCK) : blocks.next(BLOCK);
            for (int t = 0; t < BLOCK; t++) {
                if (!(Math.abs(out[t]) <= Double.MAX_VALUE)) {
                    throw notFinite(blocks, t);
                }
                sample[i * BLOCK + t] = out[t];
            }
        }
        Arrays.sort(sample);
        grid = Grid.around(sample);
        reference = sample[sample.length / 2];
    }

    private void runTasksBefore(int end) {
        final Thread[] workers = new Thread[Math.min(settings.threads(), end)];
        for (int i = 0; i < workers.length; i++) {
            workers[i] = new Thread(() -> work(end), "monte-carlo-".concat(Integer.toString(i)));
            workers[i].setDaemon(true);
            workers[i].start();
        }
        await(workers);
        nextTask.set(end);
        if (failure.get() instanceof Error error) {
            throw error;
        }
        if (failure.get() instanceof RuntimeException exception) {
            throw exception;
        }
    }

    private void await(Thread[] workers) {
        try {
            for (final Thread worker : workers) {
                worker.join(TICK_MILLIS);
                while (worker.isAlive()) {
                    tell();
                    worker.join(TICK_MILLIS);
                }
            }
        } catch (InterruptedException e) {
            cancelled = true;
            Thread.currentThread().interrupt();
            throw new MonteCarloStoppedException(done.get(), trials);
        }
        tell();
    }

    private void tell() {
        settings.progress().ifPresent(listener -> listener.at(done.get(), trials));
    }

    private void work(int end) {
        try {
            final TrialBlocks blocks = new TrialBlocks(model, inputs);
            final Tally tally = new Tally(grid, reference);
            int task = nextTask.getAndIncrement();
            while (task < end && !cancelled) {
                workTask(task, blocks, tally);
                task = nextTask.getAndIncrement();
            }
            total.add(tally);
        } catch (RuntimeException | Error e) {
            failure.compareAndSet(null, e);
            cancelled = true;
        }
    }

    private void workTask(int task, TrialBlocks blocks, Tally tally) {
        blocks.restart(settings.seed(), task);
        final long size = Math.min(trialsOfTask, trials - task * trialsOfTask);
        final double[] kept = new double[summaries.length == 0 ? 0 : (int) size];
        for (long at = 0; at < size && !cancelled; at += BLOCK) {
            final int n = (int) Math.min(BLOCK, size - at);
            final double[] out = blocks.next(n);
            final int bad = tally.add(out, n);
            if (bad >= 0) {
                throw notFinite(blocks, bad);
            }
            if (kept.length > 0) {
                System.arraycopy(out, 0, kept, (int) at, n);
            }
            done.addAndGet(n);
        }
        sums[task] = tally.takeSums();
        if (kept.length > 0) {
            summaries[task] = Sequences.summary(kept, settings.stability().orElseThrow().probability());
        }
    }

    private IllegalArgumentException notFinite(TrialBlocks blocks, int trial) {
        return new IllegalArgumentException("the trial at " + blocks.describe(trial) + " gave no finite "
            + model.measurand()
            + ": the model must be finite wherever the distributions of its inputs reach");
    }

    /** Mean and standard deviation of the first tasks. */
    private double[] moments(int finished) {
        final long count = Math.min(trials, finished * trialsOfTask);
        double sum = 0;
        double squares = 0;
        for (int task = 0; task < finished; task++) {
            sum += sums[task][0];
            squares += sums[task][1];
        }
        final double shift = sum / count;
        return new double[] {reference + shift, Math.sqrt(Math.max(0, squares - sum * shift) / (count - 1))};
    }

    private MonteCarloResult result(int finished, boolean stable) {
        final double[] moments = moments(finished);
        final Outcomes outcomes = new Outcomes(grid, total, moments[0], moments[1]);
        return new MonteCarloResult(model, settings, moments, outcomes, stable);
    }
}
