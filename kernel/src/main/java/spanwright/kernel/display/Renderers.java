package spanwright.kernel.display;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.ServiceLoader;
import java.util.WeakHashMap;

/**
 * All renderers there are, asked in the order of their precedence. What none of them knows is shown as text.
 */
public final class Renderers {
    private static final WeakHashMap<ClassLoader, Renderers> BY_LOADER = new WeakHashMap<>();

    private final List<Renderer> renderers;

    private Renderers(List<Renderer> renderers) {
        this.renderers = renderers.stream()
            .sorted(Comparator.comparingInt(Renderer::precedence).reversed()).toList();
    }

    /** These renderers, for tests and for sessions that add their own. */
    public static Renderers of(List<Renderer> renderers) {
        return new Renderers(List.copyOf(renderers));
    }

    /** The renderers that a class loader offers as services; found once for each loader. */
    public static Renderers of(ClassLoader loader) {
        synchronized (BY_LOADER) {
            return BY_LOADER.computeIfAbsent(loader, Renderers::load);
        }
    }

    /** Forgets what a loader offered, after jars were added to it. */
    public static void forget(ClassLoader loader) {
        synchronized (BY_LOADER) {
            BY_LOADER.remove(loader);
        }
    }

    private static Renderers load(ClassLoader loader) {
        final List<Renderer> found = new ArrayList<>();
        ServiceLoader.load(Renderer.class, loader).forEach(found::add);
        return new Renderers(found);
    }

    /**
     * A value as a front end shows it. A {@link MimeBundle} is shown as it is. If a renderer fails the value
     * is shown as text, and the text says which renderer failed and why.
     *
     * @param value any value, null allowed
     */
    public MimeBundle render(Object value) {
        if (value == null) {
            return MimeBundle.text("null");
        }
        if (value instanceof MimeBundle bundle) {
            return bundle;
        }
        for (Renderer renderer : renderers) {
            try {
                final Optional<MimeBundle> bundle = renderer.render(value);
                if (bundle.isPresent()) {
                    return withText(bundle.get(), value);
                }
            } catch (RuntimeException | StackOverflowError | LinkageError e) {
                return MimeBundle.text(text(value) + "\n[shown as text: "
                    + renderer.getClass().getSimpleName() + " failed: " + e + "]");
            }
        }
        return MimeBundle.text(text(value));
    }

    private static MimeBundle withText(MimeBundle bundle, Object value) {
        return bundle.data().containsKey(MimeBundle.TEXT) ? bundle
            : bundle.with(MimeBundle.TEXT, text(value));
    }

    /** A value as text only; a toString that fails is told, not thrown. */
    public static String text(Object value) {
        try {
            return TextForm.of(value);
        } catch (RuntimeException | StackOverflowError e) {
            return GeneratedNames.strip(value.getClass().getTypeName()) + " [its toString failed: "
                + GeneratedNames.strip(e.toString()) + "]";
        }
    }
}
