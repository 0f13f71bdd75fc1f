package spanwright.kernel.dispatch;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicBoolean;
import spanwright.kernel.interpreter.Interpreter;
import spanwright.kernel.wire.ConnectionFile;
import spanwright.kernel.wire.Registrar;

/**
 * A process that is nothing but a kernel: reads the connection file, writes the picked ports back, ends when
 * asked or when its parent is gone, and tells the client when a cell ends the process under it.
 */
public final class KernelProcess {
    /** After a shutdown the process ends within this time, whatever threads a cell has left behind. */
    private static final int LAST_MILLIS = 1_500;
    private static final int REGISTRATION_MILLIS = 30_000;
    private static final int PARENT_POLL_MILLIS = 1_000;

    private final KernelServer server;
    private final Interpreter interpreter;
    private final AtomicBoolean ending = new AtomicBoolean();

    private KernelProcess(KernelServer server, Interpreter interpreter) {
        this.server = server;
        this.interpreter = interpreter;
    }

    /**
     * Starts the kernel of this process.
     *
     * @param connectionFile as the client wrote it; rewritten if ports were to be picked, and
     *                       the ports announced if it names a registration port
     * @param interpreter    runs the cells; closed at the end
     * @throws IOException              if the file cannot be read or written, or an address cannot be bound,
     *                                  or the client does not acknowledge the ports within 30 s
     * @throws IllegalArgumentException if the file asks for what this kernel cannot do
     */
    public static KernelProcess start(Path connectionFile, Interpreter interpreter) throws IOException {
        Objects.requireNonNull(interpreter, "interpreter");
        final ConnectionFile requested = ConnectionFile.read(connectionFile);
        final KernelServer server = KernelServer.start(requested, interpreter, KernelSettings.ofUser());
        if (requested.ports().byName().containsValue(0)) {
            server.connection().write(connectionFile);
        }
        if (requested.registration().isPresent()) {
            register(server, requested.registration().get());
        }
        final KernelProcess process = new KernelProcess(server, interpreter);
        Runtime.getRuntime().addShutdownHook(new Thread(process::endedFromWithin, "spanwright-end"));
        parent().ifPresent(process::watch);
        return process;
    }

    private static void register(KernelServer server, ConnectionFile.Registration registration)
        throws IOException {
        try {
            Registrar.announce(server.connection(), registration, REGISTRATION_MILLIS);
        } catch (IOException e) {
            server.close();
            throw e;
        }
    }

    /** Stops the running cell: what a SIGINT of a terminal should do. */
    public void interrupt() {
        server.interrupt();
    }

    /**
     * Waits for the end and closes everything. Threads that cells left behind may still run: call {@link
     * System#exit} next. The process ends by force if that takes longer than 1.5 s.
     */
    public void await() throws InterruptedException {
        server.awaitShutdown();
        ending.set(true);
        final Thread watchdog = new Thread(KernelProcess::endByForce, "spanwright-watchdog");
        watchdog.setDaemon(true);
        watchdog.start();
        server.close();
        interpreter.close();
    }

    private static void endByForce() {
        try {
            Thread.sleep(LAST_MILLIS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        Runtime.getRuntime().halt(0);
    }

    private void endedFromWithin() {
        if (ending.compareAndSet(false, true)) {
            server.abandon("The kernel has ended while this cell ran: it called System.exit, or the process"
                + " was told to end.");
        }
    }

    /** The client that started this process, if it says which process it is. */
    private static Optional<ProcessHandle> parent() {
        try {
            return Optional.ofNullable(System.getenv("JPY_PARENT_PID")).map(Long::parseLong)
                .flatMap(ProcessHandle::of);
        } catch (NumberFormatException e) {
            return Optional.empty();
        }
    }

    /** A client that was killed and is not waited for seems alive, but its children have another parent. */
    private void watch(ProcessHandle client) {
        final boolean child = isParent(client);
        final Thread watcher = new Thread(() -> {
            try {
                while (client.isAlive() && (!child || isParent(client))) {
                    Thread.sleep(PARENT_POLL_MILLIS);
                }
                server.requestShutdown();
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
        }, "spanwright-parent");
        watcher.setDaemon(true);
        watcher.start();
    }

    private static boolean isParent(ProcessHandle process) {
        return ProcessHandle.current().parent().filter(p -> p.pid() == process.pid()).isPresent();
    }
}
