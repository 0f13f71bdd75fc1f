package spanwright.kernel.jshell;

import static org.assertj.core.api.Assertions.assertThat;
import static spanwright.kernel.jshell.StopMatrixTest.Stops.MAYBE;
import static spanwright.kernel.jshell.StopMatrixTest.Stops.NO;
import static spanwright.kernel.jshell.StopMatrixTest.Stops.YES;

import java.time.Duration;
import java.util.Arrays;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import spanwright.kernel.interpreter.Cell;
import spanwright.kernel.interpreter.Outcome;

/**
 * What an interrupt can stop. The table is also the list of what it cannot: known limits are data and are
 * run, with the way out that a person has then.
 */
class StopMatrixTest {
    private static final boolean OLD = Runtime.version().feature() < 20;
    private static final long LIMIT_MILLIS = 500;
    private static final int BUSY_MACHINE_TRIES = 3;
    private static Cells cells;

    @BeforeAll
    static void open() {
        cells = new Cells(Duration.ofMillis(700), "import java.util.*;", "import java.util.stream.*;",
            "import java.util.concurrent.*;", "import java.util.concurrent.locks.*;",
            "import static spanwright.kernel.display.Display.*;");
        cells.run("int marker = 41; long n = 0; final Object monitor = new Object(); int[] box = {0, 0};"
            + "ReentrantLock heldLock = new ReentrantLock();"
            + "void spin() { while (true) { box[0]++; } }"
            + "class Slow { public String toString() { while (true) { box[0]++; } } }"
            + "Thread holder = new Thread(() -> { synchronized (monitor) { heldLock.lock();"
            + " try { Thread.sleep(600_000); } catch (InterruptedException e) { } } });"
            + "holder.setDaemon(true); holder.start(); Thread.sleep(50);");
    }

    @AfterAll
    static void close() {
        cells.run("holder.interrupt();");
        cells.close();
    }

    /** Whether an interrupt ends a cell. */
    enum Stops { YES, NO, MAYBE }

    /** A cell that runs for ever, or for long; whether an interrupt ends it up to JDK 19 and from 20 on. */
    enum Endless {
        EMPTY_LOOP("while (true);", YES, YES),
        COUNTING_LOOP("while (true) { n++; }", YES, YES),
        LOOP_IN_A_METHOD("spin()", YES, YES),
        SLEEP("Thread.sleep(60_000);", YES, YES),
        WAIT("synchronized (box) { box.wait(); }", YES, YES),
        LATCH("new CountDownLatch(1).await();", YES, YES),
        QUEUE("new LinkedBlockingQueue<String>().take()", YES, YES),
        LOOP_CATCHING_EXCEPTION("while (true) { try { n++; Thread.sleep(1); } catch (Exception e) { n--; } }",
            YES, YES),
        LOOP_CATCHING_THROWABLE(
            "while (box[1] == 0) { try { box[0]++; } catch (Throwable t) { n--; } }", MAYBE, YES),
        STREAM("LongStream.iterate(0, i -> i + 1).filter(i -> i < 0).findFirst()", YES, YES),
        PARALLEL_STREAM("LongStream.range(0, Long.MAX_VALUE).parallel().filter(i -> i < 0).findAny()",
            YES, YES),
        SHOWING_THE_VALUE("new Slow()", YES, YES),
        POLLING("while (!Thread.currentThread().isInterrupted()) { n++; }", YES, YES),
        PRINTING("while (true) { System.out.println(n++); }", YES, YES),
        FUTURE("CompletableFuture.supplyAsync(() -> { while (true) { box[0]++; } }).get()", YES, YES),
        STARTED_THREADS("for (int i = 0; i < 2; i++) new Thread(() -> spin()).start(); spin()", YES, YES),
        UNINTERRUPTIBLE_LOCK("heldLock.lock();", YES, NO),
        LIBRARY_CODE_ONLY("java.math.BigInteger.valueOf(3).pow(12_000_000).bitLength()", YES, NO),
        MONITOR_HELD_BY_ANOTHER("synchronized (monitor) { n++; }", NO, NO),
        ACCEPT("new java.net.ServerSocket(0).accept()", NO, NO);

        private final String code;
        private final Stops old;
        private final Stops recent;

        Endless(String code, Stops upTo19, Stops from20) {
            this.code = code;
            this.old = upTo19;
            this.recent = from20;
        }

        Stops stops() {
            return OLD ? old : recent;
        }
    }

    @ParameterizedTest
    @EnumSource(Endless.class)
    void stopsWithinHalfASecondOrSaysThatItCannot(Endless endless) throws InterruptedException {
        Attempt attempt = new Attempt();
        Outcome outcome = attempt.run(endless.code);
        for (int i = 0; i < BUSY_MACHINE_TRIES && attempt.millisAfterFirst() >= LIMIT_MILLIS
            && endless.stops() == YES; i++) {
            attempt = new Attempt();
            outcome = attempt.run(endless.code);
        }
        assertThat(outcome).isInstanceOf(Outcome.Interrupted.class);
        assertThat(((Outcome.Interrupted) outcome).error().name()).isEqualTo("Interrupted");
        if (endless.stops() == YES) {
            assertThat(attempt.millisAfterFirst()).isLessThan(LIMIT_MILLIS);
            assertThat(cells.output.err.toString()).doesNotContain("Still running");
        } else if (endless.stops() == NO) {
            assertThat(cells.output.err.toString()).contains("Still running").contains("restart the kernel");
        }
        assertThat(cells.value("box[1]++; marker + 1")).isEqualTo("42");
        cells.run("box[1] = 0;");
    }

    @Test
    void threadsThatTheStoppedCellStartedStopToo() throws InterruptedException {
        cells.run("List<Thread> ts = new ArrayList<>();");
        new Attempt().run("for (int i = 0; i < 2; i++) { Thread t = new Thread(() -> spin()); ts.add(t);"
            + " t.start(); } spin()");
        assertThat(cells.value("for (Thread t : ts) t.join(2000);\nts.stream().noneMatch(Thread::isAlive)"))
            .isEqualTo("true");
    }

    @Test
    void poolThreadsThatRanItsCodeStopToo() throws InterruptedException {
        new Attempt().run("CompletableFuture.supplyAsync(() -> { while (true) { box[0]++; } }).get()");
        assertThat(cells.value("Thread.sleep(700);\nint before = box[0];\nThread.sleep(100);\n"
            + "box[0] - before")).isEqualTo("0");
    }

    @Test
    void aBusyLoopStopsWithinMillisecondsOnAMachineThatHasTime() throws InterruptedException {
        final long[] millis = new long[9];
        for (int i = 0; i < millis.length; i++) {
            final Attempt attempt = new Attempt();
            attempt.run("while (true) { n++; }");
            millis[i] = attempt.millisAfterFirst();
        }
        Arrays.sort(millis);
        assertThat(millis[0]).as("sorted: " + Arrays.toString(millis)).isLessThan(50);
    }

    @Test
    void anInterruptWithoutACellDoesNothing() {
        cells.session.interrupt();
        assertThat(cells.value("marker")).isEqualTo("41");
    }

    /** One interrupted run of a cell. */
    private static final class Attempt {
        private final AtomicLong first = new AtomicLong();
        private long end;
        private volatile boolean ended;

        Outcome run(String code) throws InterruptedException {
            final RecordedOutput output = new RecordedOutput();
            cells.output = output;
            final Thread interrupter = new Thread(this::interrupt);
            interrupter.start();
            final Outcome outcome =
                cells.session.evaluate(new Cell("System.out.println(\"begun\");\n" + code, "cell"), output);
            end = System.nanoTime();
            ended = true;
            interrupter.join();
            return outcome;
        }

        /** Interrupts once, and again if the session says that the cell does not react. */
        private void interrupt() {
            try {
                while (!cells.output.out.toString().contains("begun")) {
                    Thread.sleep(2);
                }
                Thread.sleep(30);
                first.set(System.nanoTime());
                cells.session.interrupt();
                while (!ended && !cells.output.err.toString().contains("Still running")) {
                    Thread.sleep(5);
                }
                cells.session.interrupt();
            } catch (InterruptedException e) {
                throw new IllegalStateException(e);
            }
        }

        long millisAfterFirst() {
            return TimeUnit.NANOSECONDS.toMillis(end - first.get());
        }
    }
}
