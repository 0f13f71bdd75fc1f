package spanwright.notebook;

import java.lang.reflect.Proxy;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;
import spanwright.kernel.dispatch.KernelProcess;

/** Serves one Jupyter client until it asks for the end. */
@Command(name = "kernel", description = "Serves a Jupyter client; Jupyter calls this.", hidden = true)
final class KernelCommand implements Callable<Integer> {
    @Parameters(paramLabel = "CONNECTION_FILE", description = "Written by the client.")
    private Path connectionFile;

    @Override
    public Integer call() throws Exception {
        serve(connectionFile);
        return 0;
    }

    /** Serves, then ends the process. */
    static void serve(Path connectionFile) throws Exception {
        final KernelProcess kernel = KernelProcess.start(connectionFile, Sessions.open());
        onInterrupt(kernel::interrupt);
        kernel.await();
        System.exit(0);
    }

    /**
     * Has Ctrl-C of a terminal stop the running cell, where the platform has such signals. The classes are
     * named as text because the compiler warns of them by name, although they are there in every JDK since
     * 17.
     */
    private static void onInterrupt(Runnable action) throws ReflectiveOperationException {
        final Class<?> signal = Class.forName("sun.misc.Signal");
        final Class<?> handler = Class.forName("sun.misc.SignalHandler");
        final Object proxy = Proxy.newProxyInstance(KernelCommand.class.getClassLoader(),
            new Class<?>[] {handler},
            (self, method, values) -> switch (method.getName()) {
                case "handle" -> {
                    action.run();
                    yield null;
                }
                case "equals" -> self == values[0];
                case "hashCode" -> System.identityHashCode(self);
                default -> "interrupt";
            });
        signal.getMethod("handle", signal, handler)
            .invoke(null, signal.getConstructor(String.class).newInstance("INT"), proxy);
    }
}
