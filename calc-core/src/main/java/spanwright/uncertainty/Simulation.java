package spanwright.uncertainty;

import java.util.Arrays;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.atomic.AtomicReference;

/**
 * One Monte Carlo run. The trials are cut into tasks whose number depends on nothing but the number of
 * trials; each
 * task has its own random stream, and sums are combined in the order of the tasks. So the threads that take
 * the tasks
 * cannot change the result.
 */
final class Simulation {
    static final int BLOCK = 1024;
    private static final int MOST_TASKS = 4096;
    private static final int KEPT_AT_MOST = 20_000_000;
    private static final int CHECKED = 16;
    private static final long TICK_MILLIS = 100;

    private final MeasurementModel model;
    private final MonteCarlo settings;
    private final InputBlocks inputs;
    private final long trialsOfTask;
    private final int tasks;
    private final double[] outcomes;
    private final AtomicInteger nextTask = new AtomicInteger();
    private final AtomicLong done = new AtomicLong();
    private final AtomicReference<Throwable> failure = new AtomicReference<>();
    private volatile boolean cancelled;

    Simulation(MeasurementModel model, MonteCarlo settings) {
        this.model = model;
        this.settings = settings;
        this.inputs = new InputBlocks(model);
        final long blocks = (settings.trials() + BLOCK - 1) / BLOCK;
        final long blocksOfTask = (blocks + MOST_TASKS - 1) / MOST_TASKS;
        this.trialsOfTask = blocksOfTask * BLOCK;
        this.tasks = (int) ((settings.trials() + trialsOfTask - 1) / trialsOfTask);
        if (settings.trials() > KEPT_AT_MOST) {
            throw new IllegalArgumentException("trials is " + settings.trials() + ": at most "
                + KEPT_AT_MOST);
        }
        this.outcomes = new double[(int) settings.trials()];
    }

    MonteCarloResult run() {
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
        Arrays.parallelSort(outcomes);
        return MonteCarloResult.of(model, settings.seed(), outcomes);
    }

    private void await(Thread[] workers) {
        try {
            for (final Thread worker : workers) {
                while (worker.isAlive()) {
                    worker.join(TICK_MILLIS);
                    settings.progress().ifPresent(p -> p.at(done.get(), settings.trials()));
                }
            }
        } catch (InterruptedException e) {
            cancelled = true;
            Thread.currentThread().interrupt();
            throw new MonteCarloStoppedException(done.get(), settings.trials());
        }
    }

    private void work() {
        try {
            final double[][] x = new double[inputs.size()][BLOCK];
            final double[] out = new double[BLOCK];
            final BlockFormula formula = model.blocks().orElseGet(() -> trialByTrial(model));
            int task = nextTask.getAndIncrement();
            while (task < tasks && !cancelled) {
                workTask(task, formula, x, out);
                task = nextTask.getAndIncrement();
            }
        } catch (RuntimeException | Error e) {
            failure.compareAndSet(null, e);
            cancelled = true;
        }
    }

    private void workTask(int task, BlockFormula formula, double[][] x, double[] out) {
        final RandomStream random = new RandomStream(settings.seed(), task);
        final long first = task * trialsOfTask;
        final long end = Math.min(first + trialsOfTask, settings.trials());
        for (long at = first; at < end && !cancelled; at += BLOCK) {
            final int n = (int) Math.min(BLOCK, end - at);
            inputs.fill(random, x, n);
            if (at == 0 && model.blocks().isPresent()) {
                checkedBlock(formula, x, out, n);
            } else {
                formula.evaluate(x, out, n);
            }
            System.arraycopy(out, 0, outcomes, (int) at, n);
            requireFinite(out, n);
            done.addAndGet(n);
        }
    }

    private void requireFinite(double[] out, int n) {
        for (int t = 0; t < n; t++) {
            if (!(Math.abs(out[t]) <= Double.MAX_VALUE)) {
                throw new IllegalArgumentException("a trial of " + model.measurand() + " gave " + out[t]
                    + ": the model is not finite everywhere within the distributions of its inputs");
            }
        }
    }

    private void checkedBlock(BlockFormula formula, double[][] x, double[] out, int n) {
        final double[] expected = new double[Math.min(CHECKED, n)];
        trialByTrial(model).evaluate(x, expected, expected.length);
        formula.evaluate(x, out, n);
        for (int t = 0; t < expected.length; t++) {
            if (!(Math.abs(out[t] - expected[t]) <= 1e-9 * Math.max(1, Math.abs(expected[t])))) {
                throw new IllegalArgumentException("the block formula of " + model.measurand() + " gives "
                    + out[t]
                    + " where the formula gives " + expected[t] + ": they must agree");
            }
        }
    }

    private static BlockFormula trialByTrial(MeasurementModel model) {
        final Formula formula = model.formula();
        final double[] row = new double[model.inputs().size()];
        return (inputs, out, n) -> {
            for (int t = 0; t < n; t++) {
                for (int i = 0; i < row.length; i++) {
                    row[i] = inputs[i][t];
                }
                out[t] = formula.value(row);
            }
        };
    }
}
