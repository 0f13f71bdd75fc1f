package spanwright.kernel.dispatch;

import java.nio.file.Path;

/** A process that is a kernel with the scripted engine; the argument is the connection file. */
final class KernelProcessMain {
    private KernelProcessMain() { }

    public static void main(String[] args) throws Exception {
        KernelProcess.start(Path.of(args[0]), new ScriptedInterpreter()).await();
        System.exit(0);
    }
}
