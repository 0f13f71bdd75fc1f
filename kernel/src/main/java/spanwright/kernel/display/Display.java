package spanwright.kernel.display;

import java.io.IOException;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;

/**
 * What a cell calls to show things, made for static import. Works from every thread that a cell has started.
 * Every method throws {@link IllegalStateException} outside a cell.
 */
public final class Display {
    private Display() { }

    /** Shows a value now, as the last expression of a cell would be; the handle can replace it later. */
    public static DisplayHandle display(Object value) {
        return display(value, UUID.randomUUID().toString());
    }

    /**
     * Shows a value under a name of your choice.
     *
     * @param value any value
     * @param id    not empty; a later {@link #updateDisplay} names it
     */
    public static DisplayHandle display(Object value, String id) {
        if (id.isEmpty()) {
            throw new IllegalArgumentException("the display id is empty");
        }
        final CellScope scope = CellScope.required();
        final MimeBundle bundle = Renderers.of(scope.loader()).render(value);
        scope.queue().post(o -> o.display(bundle, Optional.of(id)));
        return new DisplayHandle(id);
    }

    /** Replaces what was shown under a name. */
    public static void updateDisplay(Object value, String id) {
        new DisplayHandle(id).update(value);
    }

    /** Removes the output of the cell at once. */
    public static void clearOutput() {
        clearOutput(false);
    }

    /**
     * Removes the output of the cell.
     *
     * @param wait whether to wait for the next output, which avoids flicker
     */
    public static void clearOutput(boolean wait) {
        CellScope.required().queue().post(o -> o.clear(wait));
    }

    /** Shows a value in the pager of the front end. */
    public static void page(Object value) {
        final CellScope scope = CellScope.required();
        final MimeBundle bundle = Renderers.of(scope.loader()).render(value);
        scope.queue().post(o -> o.page(bundle));
    }

    /**
     * Asks the person at the front end for a line.
     *
     * @return the line; empty text at the end of input
     * @throws IllegalStateException if nobody can be asked, as in a headless run
     */
    public static String input(String prompt) {
        return ask(prompt, false);
    }

    /** Asks for a line that is not echoed; otherwise as {@link #input}. */
    public static String password(String prompt) {
        return ask(prompt, true);
    }

    private static String ask(String prompt, boolean password) {
        Objects.requireNonNull(prompt, "prompt");
        try {
            return CellScope.required().readLine(prompt, password).orElse("");
        } catch (IOException e) {
            throw new IllegalStateException("cannot ask '" + prompt + "': " + e.getMessage(), e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("stopped while asking '" + prompt + "'", e);
        }
    }

    /** An HTML fragment, shown as such. It is not escaped. */
    public static MimeBundle html(String fragment) {
        return of(MimeBundle.HTML, fragment);
    }

    /** Markdown, shown formatted. */
    public static MimeBundle markdown(String text) {
        return of(MimeBundle.MARKDOWN, text);
    }

    /** A formula in LaTeX, with its dollar signs. */
    public static MimeBundle latex(String formula) {
        return of(MimeBundle.LATEX, formula);
    }

    /** An SVG picture. */
    public static MimeBundle svg(String picture) {
        return new MimeBundle(Map.of(MimeBundle.TEXT, "[picture]"), Map.of()).with(MimeBundle.SVG, picture);
    }

    private static MimeBundle of(String mimeType, String text) {
        return MimeBundle.text(text).with(mimeType, Objects.requireNonNull(text, mimeType));
    }

    /**
     * A progress bar that is shown at once and moves in place.
     *
     * @param label what is being done
     * @param total number of steps, at least 1
     */
    public static Progress progress(String label, long total) {
        return new Progress(label, total);
    }
}
