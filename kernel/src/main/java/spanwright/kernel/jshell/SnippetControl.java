package spanwright.kernel.jshell;

import java.lang.reflect.Field;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.util.Optional;
import java.util.concurrent.locks.ReentrantLock;
import jdk.jshell.execution.LocalExecutionControl;
import jdk.jshell.spi.ExecutionControl;
import jdk.jshell.spi.ExecutionControlProvider;
import jdk.jshell.spi.ExecutionEnv;

/**
 * Runs what JShell compiled in this process, on the thread of the cell. From the JDK's local control it keeps
 * the loading, which weaves stop checks into the classes on newer JDKs.
 *
 * <p>While code of a cell runs, the engine's lock is free, so that the session can be analysed meanwhile.
 */
final class SnippetControl extends LocalExecutionControl {
    private final SnippetLoader loader;
    private final ReentrantLock engine;
    private volatile CellRun run;
    private Object variable;

    SnippetControl(SnippetLoader loader, ReentrantLock engine) {
        super(loader);
        this.loader = loader;
        this.engine = engine;
    }

    /** A provider of this one control. */
    ExecutionControlProvider provider() {
        final SnippetControl self = this;
        return new ExecutionControlProvider() {
            @Override
            public String name() {
                return "spanwright";
            }

            @Override
            public ExecutionControl generate(ExecutionEnv env, java.util.Map<String, String> parameters) {
                return self;
            }
        };
    }

    /** The run that units belong to from now on. */
    void runIn(CellRun theRun) {
        run = theRun;
    }

    @Override
    protected String invoke(Method unit) throws InvocationTargetException {
        engine.unlock();
        try {
            run.invoke(unit);
        } finally {
            engine.lock();
        }
        return "";
    }

    /**
     * Loads classes that were not compiled by JShell and runs the code in one of them.
     *
     * @return whether it ran; no if the classes cannot be loaded. What it threw is told by the run.
     */
    boolean ran(ClassBytecodes[] classes, String name) {
        try {
            load(classes);
            final Method unit = loader.findClass(name).getDeclaredMethod(DeclaredClasses.METHOD);
            invoke(unit);
        } catch (InvocationTargetException e) {
            return true;
        } catch (ClassInstallException | NotImplementedException | EngineTerminationException
                 | ReflectiveOperationException e) {
            return false;
        }
        return true;
    }

    @Override
    public void stop() {
        final CellRun current = run;
        if (current != null) {
            current.stop();
        }
    }

    @Override
    public String varValue(String className, String varName) throws InternalException {
        try {
            final Field field = loader.findClass(className).getDeclaredField(varName);
            field.setAccessible(true);
            variable = field.get(null);
        } catch (ReflectiveOperationException e) {
            throw new InternalException(e.toString());
        }
        return "";
    }

    /** The object that {@link #varValue} found last. */
    Optional<Object> variable() {
        return Optional.ofNullable(variable);
    }
}
