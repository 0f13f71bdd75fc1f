package spanwright.kernel.jshell;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import jdk.jshell.JShell;
import jdk.jshell.Snippet.Status;
import jdk.jshell.SnippetEvent;

/**
 * JShell, started when it is first needed. The start takes a good part of a second, so it can also be made in
 * small steps ahead of that. Whoever calls holds the engine's lock.
 */
final class SessionEngine {
    private final SnippetControl control;
    private final List<String> imports;
    private Optional<JShell> building = Optional.empty();
    private int imported;

    SessionEngine(SnippetControl control, List<String> imports) {
        this.control = control;
        this.imports = imports;
    }

    /** JShell with the imports; empty if it has not been started, or not to the end. */
    Optional<JShell> started() {
        return building.filter(s -> imported == imports.size());
    }

    /** JShell with the imports. */
    JShell shell() {
        while (started().isEmpty()) {
            step();
        }
        return building.orElseThrow();
    }

    /** Does a part of the start; nothing if it is done. */
    void step() {
        if (building.isEmpty()) {
            final JShell made = JShell.builder().executionEngine(control.provider(), Map.of()).build();
            SessionClassPath.beyondTheProcess().forEach(made::addToClasspath);
            building = Optional.of(made);
        } else if (imported < imports.size()) {
            final String line = imports.get(imported);
            final List<SnippetEvent> events = building.get().eval(line);
            if (events.stream().anyMatch(e -> e.status() != Status.VALID)) {
                throw new IllegalStateException("the prelude fails at '" + line + "': " + events);
            }
            imported++;
        }
    }

    /** Adds to the class path of later snippets. */
    void addToClassPath(List<Path> paths) {
        final JShell shell = shell();
        paths.forEach(p -> shell.addToClasspath(p.toAbsolutePath().toString()));
    }

    void close() {
        building.ifPresent(JShell::close);
    }
}
