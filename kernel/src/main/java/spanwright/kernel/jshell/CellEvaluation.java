package spanwright.kernel.jshell;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import jdk.jshell.DeclarationSnippet;
import jdk.jshell.JShell;
import jdk.jshell.Snippet;
import jdk.jshell.Snippet.Status;
import jdk.jshell.Snippet.SubKind;
import jdk.jshell.SnippetEvent;
import jdk.jshell.SourceCodeAnalysis.SnippetWrapper;
import jdk.jshell.UnresolvedReferenceException;
import jdk.jshell.VarSnippet;
import spanwright.kernel.display.CellOutput;
import spanwright.kernel.display.CellScope;
import spanwright.kernel.interpreter.Cell;
import spanwright.kernel.interpreter.Outcome;
import spanwright.kernel.interpreter.Outcome.ErrorReport;

/**
 * Evaluates one cell. Units run in order until one fails; statements in a row, and a last expression, go to
 * JShell as one block. A call at the end is first taken for one that has a value, then for a void one. A
 * block that does not compile is taken apart again, so that batching never changes what a cell does or says.
 */
final class CellEvaluation {
    private static final String LAST_VALUE = LastValue.class.getName();
    private final SessionEngine engine;
    private final DirectBlocks direct;
    private final Origins origins;
    private final CellRun run;
    private final CellScope scope;
    private final Cell cell;
    private final List<DeclarationSnippet> declared = new ArrayList<>();
    private final Set<String> reset = new LinkedHashSet<>();
    private final Set<String> redefined = new LinkedHashSet<>();

    /** What an evaluation works with, of the session. */
    record Parts(SessionEngine engine, DirectBlocks direct, Origins origins) { }

    CellEvaluation(Parts parts, CellRun run, CellScope scope, Cell cell) {
        this.engine = parts.engine();
        this.direct = parts.direct();
        this.origins = parts.origins();
        this.run = run;
        this.scope = scope;
        this.cell = cell;
    }

    /** JShell takes a snippet. What has been declared may be other things afterwards. */
    private List<SnippetEvent> eval(String source) {
        try {
            return shell().eval(source);
        } finally {
            direct.sessionChanged();
        }
    }

    private void drop(Snippet snippet) {
        shell().drop(snippet);
        direct.sessionChanged();
    }

    private JShell shell() {
        return engine.shell();
    }

    /** Runs the cell to its end, or to its first failure. */
    Outcome outcome() {
        final List<Unit> units = CellSplitter.split(() -> shell().sourceCodeAnalysis(), cell.code());
        Optional<Outcome> failure = Optional.empty();
        int i = 0;
        while (i < units.size() && failure.isEmpty()) {
            final int end = endOfBlock(units, i);
            if (end > i) {
                failure = block(units.subList(i, end), end == units.size());
                i = end;
            } else {
                failure = single(units.get(i), i == units.size() - 1);
                i++;
            }
        }
        tellWhatWasReset();
        final Optional<Outcome> unresolved = judgeDeclared(failure.isPresent());
        return failure.or(() -> unresolved).orElseGet(() -> new Outcome.Value(run.shown()));
    }

    /** Index after the last unit that can go into one block with unit i; i if it cannot go into any. */
    private static int endOfBlock(List<Unit> units, int i) {
        int end = i;
        while (end < units.size() && canBeInBlock(units.get(end), end == units.size() - 1)) {
            end++;
        }
        return end;
    }

    /** A bare expression without a semicolon is no statement, so it can only end a block, as the value. */
    private static boolean canBeInBlock(Unit u, boolean last) {
        return switch (u.kind()) {
            case STATEMENT, ASSIGNMENT -> true;
            case EXPRESSION -> u.semicolon() || last;
            default -> false;
        };
    }

    private Optional<Outcome> block(List<Unit> units, boolean endsCell) {
        final Unit last = units.get(units.size() - 1);
        final boolean valued = endsCell && last.kind() == Unit.Kind.EXPRESSION && !last.semicolon();
        final int start = units.get(0).start();
        final String before = cell.code().substring(start, last.start());
        final String id = direct.nextId();
        final DirectBlocks.Result tried =
            direct.run(new DirectBlocks.Block(before, last, valued), run, engine.started());
        if (tried == DirectBlocks.Result.RAN) {
            return endedDirectly(id, start);
        }
        return tried == DirectBlocks.Result.REFUSED ? oneByOne(units, endsCell)
            : byShell(units, "{ " + before, valued, endsCell);
    }

    private Optional<Outcome> byShell(List<Unit> units, String before, boolean valued, boolean endsCell) {
        final Unit last = units.get(units.size() - 1);
        final List<String> attempts = new ArrayList<>();
        if (valued) {
            attempts.add(before + LAST_VALUE + ".of(" + last.source() + "\n); }");
        }
        if (!valued || last.endsInCall()) {
            attempts.add(before + last.source() + (last.isClosed() ? "\n }" : "\n; }"));
        }
        run.wantValue(false);
        for (String source : attempts) {
            final Optional<SnippetEvent> main = main(eval(source));
            if (main.isPresent() && main.get().status() != Status.REJECTED) {
                final Optional<Outcome> end = ended(main.get(), units.get(0).start());
                drop(main.get().snippet());
                return end;
            }
        }
        return oneByOne(units, endsCell);
    }

    private Optional<Outcome> oneByOne(List<Unit> units, boolean endsCell) {
        Optional<Outcome> failure = Optional.empty();
        for (int i = 0; i < units.size() && failure.isEmpty(); i++) {
            failure = single(units.get(i), endsCell && i == units.size() - 1);
        }
        return failure;
    }

    private Optional<Outcome> single(Unit unit, boolean endsCell) {
        if (run.stopRequested()) {
            return Optional.of(new Outcome.Interrupted(RuntimeErrors.stopped(null, origins, cell.label())));
        }
        final boolean wanted = endsCell && !unit.semicolon() && unit.kind() != Unit.Kind.STATEMENT
            && unit.kind() != Unit.Kind.ASSIGNMENT;
        run.wantValue(wanted);
        final String source = unit.semicolon() || unit.kind() == Unit.Kind.OTHER
            || unit.kind() == Unit.Kind.EXPRESSION
            ? unit.source() : withSemicolon(unit);
        final List<SnippetEvent> events = eval(source);
        final Optional<SnippetEvent> main = main(events);
        if (main.isEmpty()) {
            return Optional.empty();
        }
        final Snippet snippet = main.get().snippet();
        noteResets(events, snippet);
        if (main.get().status() == Status.REJECTED
            || snippet instanceof VarSnippet && main.get().status() == Status.RECOVERABLE_NOT_DEFINED) {
            return Optional.of(rejected(unit, snippet));
        }
        final Optional<Outcome> failure = ended(main.get(), unit.start());
        afterwards(snippet, wanted);
        return failure;
    }

    private static String withSemicolon(Unit unit) {
        final String masked = JavaText.masked(unit.source()).stripTrailing();
        if (masked.endsWith("}") || masked.endsWith(";")) {
            return unit.source();
        }
        return unit.source().substring(0, masked.length()) + ";" + unit.source().substring(masked.length());
    }

    private void afterwards(Snippet snippet, boolean wanted) {
        if (snippet.subKind() == SubKind.TEMP_VAR_EXPRESSION_SUBKIND || !snippet.kind().isPersistent()) {
            drop(snippet);
        } else if (snippet instanceof DeclarationSnippet d) {
            declared.add(d);
        }
        if (wanted && (snippet.kind() != Snippet.Kind.EXPRESSION && snippet.kind() != Snippet.Kind.VAR
            || snippet.subKind() == SubKind.ASSIGNMENT_SUBKIND || isNamed(snippet))) {
            run.wantValue(false);
        }
    }

    private static boolean isNamed(Snippet s) {
        return s.kind() == Snippet.Kind.VAR && s.subKind() != SubKind.TEMP_VAR_EXPRESSION_SUBKIND;
    }

    /** The event of the snippet itself; the others tell what it changed. */
    private static Optional<SnippetEvent> main(List<SnippetEvent> events) {
        return events.stream().filter(e -> e.causeSnippet() == null).findFirst();
    }

    /** What a unit that compiled came to; empty if it ran to its end. */
    private Optional<Outcome> ended(SnippetEvent event, int start) {
        final SnippetWrapper wrapper = shell().sourceCodeAnalysis().wrapper(event.snippet());
        final int before = JavaText.lineOf(wrapper.wrapped(), wrapper.sourceToWrappedPosition(0)) - 1;
        origins.put(event.snippet().id(), new Origins.Origin(cell.label(), cell.code(),
            JavaText.lineOf(cell.code(), start), wrapper.fullClassName(), before));
        return ended(Optional.ofNullable(event.exception()));
    }

    private Optional<Outcome> endedDirectly(String id, int start) {
        origins.put(id, new Origins.Origin(cell.label(), cell.code(), JavaText.lineOf(cell.code(), start),
            DeclaredClasses.PREFIX + id, 0));
        return ended(run.thrown().map(t -> CellFrames.mapped(t, engine.started())));
    }

    private Optional<Outcome> ended(Optional<? extends Throwable> exception) {
        if (run.stopRequested()) {
            return Optional.of(new Outcome.Interrupted(
                RuntimeErrors.stopped(exception.orElse(null), origins, cell.label())));
        }
        return exception.map(mapped -> new Outcome.UserThrew(
            mapped instanceof UnresolvedReferenceException u && u.getSnippet() != null ? unresolvedCall(u)
            : RuntimeErrors.report(run.thrown().orElse(mapped), mapped, origins, cell.label())));
    }

    private ErrorReport unresolvedCall(UnresolvedReferenceException u) {
        final String message = Declared.name(u.getSnippet()) + " cannot be used before "
            + Declared.needs(shell(), u.getSnippet()) + " is defined";
        return RuntimeErrors.report(new Declared.NotYetDefined(message), u, origins, cell.label());
    }

    private Outcome rejected(Unit unit, Snippet snippet) {
        final List<CompileErrors.Complaint> complaints = new ArrayList<>();
        for (DeclarationSnippet d : declared) {
            if (shell().status(d) == Status.RECOVERABLE_NOT_DEFINED) {
                complaints.addAll(complaintsOf(d));
            }
        }
        complaints.addAll(CompileErrors.complaints(shell().diagnostics(snippet).toList(), unit.start(),
            JavaText.masked(unit.source()).stripTrailing().length()));
        if (snippet instanceof VarSnippet v && complaints.isEmpty()) {
            complaints.add(new CompileErrors.Complaint(
                "cannot find symbol: " + Declared.needs(shell(), v), unit.start()));
        }
        if (shell().status(snippet) == Status.RECOVERABLE_NOT_DEFINED) {
            drop(snippet);
        }
        if (complaints.isEmpty()) {
            complaints.add(new CompileErrors.Complaint(
                "this is not a statement, expression or declaration", unit.start()));
        }
        return new Outcome.UserThrew(CompileErrors.report(cell.label(), cell.code(), complaints));
    }

    private List<CompileErrors.Complaint> complaintsOf(DeclarationSnippet d) {
        final int start = Math.max(0, cell.code().indexOf(d.source()));
        final List<CompileErrors.Complaint> found = new ArrayList<>(
            CompileErrors.complaints(shell().diagnostics(d).toList(), start, d.source().length()));
        if (found.isEmpty()) {
            found
                .add(new CompileErrors.Complaint("cannot find symbol: " + Declared.needs(shell(), d), start));
        }
        return found;
    }

    /** Sealed types and methods that call later ones are only judged here, when all of the cell is known. */
    private Optional<Outcome> judgeDeclared(boolean failed) {
        final List<CompileErrors.Complaint> complaints = new ArrayList<>();
        for (DeclarationSnippet d : new LinkedHashSet<>(declared)) {
            final Status status = shell().status(d);
            if (status == Status.RECOVERABLE_NOT_DEFINED) {
                complaints.addAll(complaintsOf(d));
            } else if (status == Status.RECOVERABLE_DEFINED && !failed) {
                scope.write(CellOutput.Stream.STDERR, Declared.name(d)
                    + " is defined, but cannot be used before " + Declared.needs(shell(), d) + " is.\n");
            }
        }
        return complaints.isEmpty() ? Optional.empty()
            : Optional.of(new Outcome.UserThrew(CompileErrors.report(cell.label(), cell.code(), complaints)));
    }

    /** A new definition of a class or method makes JShell declare anew the variables that depend on it. */
    private void noteResets(List<SnippetEvent> events, Snippet cause) {
        for (SnippetEvent e : events) {
            if (e.causeSnippet() != null && e.snippet() instanceof VarSnippet v && e.isSignatureChange()
                && e.status().isDefined() && e.previousStatus() == Status.VALID) {
                reset.add(v.name());
                redefined.add(Declared.name(cause));
            }
        }
    }

    private void tellWhatWasReset() {
        if (!reset.isEmpty()) {
            scope.write(CellOutput.Stream.STDERR, "New definition of " + String.join(", ", redefined)
                + ": these variables were of the old one and are now reset: "
                + reset.stream().map(Objects::toString).collect(Collectors.joining(", ")) + ".\n");
        }
    }
}
