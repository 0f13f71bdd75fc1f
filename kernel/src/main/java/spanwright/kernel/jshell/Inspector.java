package spanwright.kernel.jshell;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import jdk.jshell.JShell;
import jdk.jshell.MethodSnippet;
import jdk.jshell.Snippet;
import jdk.jshell.SourceCodeAnalysis;
import jdk.jshell.SourceCodeAnalysis.Documentation;
import jdk.jshell.TypeDeclSnippet;
import jdk.jshell.VarSnippet;
import spanwright.kernel.display.MimeBundle;
import spanwright.kernel.display.Renderers;
import spanwright.kernel.interpreter.Inspection;

/** Signature, documentation, source and value of a name in a cell. */
final class Inspector {
    private static final int VALUE_CHARS = 400;

    private final JShell shell;
    private final TypeNames types;
    private final SnippetControl control;
    private final DocIndex docs;

    Inspector(JShell shell, TypeNames types, SnippetControl control, DocIndex docs) {
        this.shell = shell;
        this.types = types;
        this.control = control;
        this.docs = docs;
    }

    /** What is known of the name at the cursor; detail 1 tells all, 0 the first sentence. */
    Optional<Inspection> at(String code, int cursor, int detail) {
        final SourceSpot spot = SourceSpot.at(code, cursor);
        final Set<String> parts = new LinkedHashSet<>();
        if (spot.identifier().isEmpty()) {
            parts.addAll(documented(code, cursor, detail, Optional.empty()));
        } else {
            describe(spot, detail, parts);
        }
        return parts.isEmpty() ? Optional.empty()
            : Optional.of(new Inspection(MimeBundle.text(String.join("\n\n", parts))));
    }

    private void describe(SourceSpot spot, int detail, Set<String> parts) {
        final String name = spot.identifier();
        final String receiver = spot.receiver();
        final int begin = SourceSpot.beginOfBody(
            CellSplitter.split(shell::sourceCodeAnalysis, spot.code()), spot.start());
        final String upTo = spot.code().substring(begin, spot.end());
        final Optional<String> own = receiver.isEmpty()
            ? types.resolve(name).flatMap(docs::of).or(() -> staticallyImported(name))
            : typeOf(receiver).flatMap(t -> docs.of(t, name));
        if (receiver.isEmpty()) {
            parts.addAll(values(name));
        }
        if (parts.isEmpty()) {
            parts.addAll(documented(upTo + "(", upTo.length() + 1, detail, own));
        }
        if (parts.isEmpty()) {
            parts.addAll(documented(upTo, upTo.length(), detail, own));
        }
        if (parts.isEmpty()) {
            own.ifPresent(d -> parts.add(name + "\n" + shown(d, detail)));
        }
        if (parts.isEmpty()) {
            final String expression = receiver.isEmpty() ? name : receiver + "." + name;
            final String type = shell.sourceCodeAnalysis().analyzeType(expression, expression.length());
            if (type != null) {
                parts.add(type + " " + expression);
            }
        }
        if (detail > 0 && receiver.isEmpty()) {
            parts.addAll(sources(name));
        }
    }

    private Optional<String> staticallyImported(String member) {
        return types.staticImportsOf(member).map(t -> docs.of(t, member)).flatMap(Optional::stream)
            .findFirst();
    }

    private Optional<Class<?>> typeOf(String receiver) {
        final String type = shell.sourceCodeAnalysis().analyzeType(receiver, receiver.length());
        return Optional.ofNullable(type).flatMap(types::resolve).or(() -> types.resolve(receiver));
    }

    /** What the analysis documents at a place: signatures, each with its comment where sources are there. */
    private List<String> documented(String code, int cursor, int detail, Optional<String> own) {
        final SourceCodeAnalysis analysis = shell.sourceCodeAnalysis();
        final List<String> found = new ArrayList<>();
        for (Documentation d : analysis.documentation(code, cursor, own.isEmpty())) {
            final String comment = d.javadoc() == null ? "" : JavadocText.plain(d.javadoc());
            found.add(TypeNames.shortened(d.signature())
                + (comment.isEmpty() ? "" : "\n" + shown(comment, detail)));
        }
        if (!found.isEmpty()) {
            own.ifPresent(text -> found.add(shown(text, detail)));
        }
        return found;
    }

    private static String shown(String plain, int detail) {
        return detail > 0 ? plain : JavadocText.firstSentence(plain);
    }

    /** Type and value of a variable of the session. */
    private List<String> values(String name) {
        return shell.variables().filter(v -> v.name().equals(name)).map(this::valueOf).toList();
    }

    private String valueOf(VarSnippet v) {
        shell.varValue(v);
        final Optional<Object> value = control.variable();
        final String text = Renderers.text(value.orElse(null));
        final String cut = text.length() <= VALUE_CHARS ? text
            : text.substring(0, VALUE_CHARS) + " ... [" + text.length() + " characters]";
        final String actual = value.map(o -> TypeNames.shortened(o.getClass().getTypeName())).orElse("");
        return TypeNames.shortened(v.typeName()) + " " + v.name()
            + (actual.isEmpty() || actual.equals(TypeNames.shortened(v.typeName())) ? ""
                : ", now of " + actual)
            + "\nvalue: " + cut;
    }

    /** Source of what cells have declared under a name. */
    private List<String> sources(String name) {
        final List<String> found = new ArrayList<>();
        shell.methods().filter((MethodSnippet m) -> m.name().equals(name)).map(Snippet::source)
            .forEach(found::add);
        shell.types().filter((TypeDeclSnippet t) -> t.name().equals(name)).map(Snippet::source)
            .forEach(found::add);
        return found.stream().map(s -> "source:\n" + s.strip()).toList();
    }
}
