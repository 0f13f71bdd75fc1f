package spanwright.kernel.display;

import java.lang.reflect.Array;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.Collection;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * Any value as text: arrays, collections, maps and records by their contents, long ones cut with the count,
 * everything else by its own toString.
 */
final class TextForm {
    private static final int MAX_ITEMS = 1000;
    private static final int MAX_CHARS = 100_000;
    private static final int MAX_DEPTH = 8;

    private final IdentityHashMap<Object, Boolean> open = new IdentityHashMap<>();
    private final StringBuilder out = new StringBuilder();

    private TextForm() { }

    /** The text of a value, null allowed. */
    static String of(Object value) {
        final TextForm form = new TextForm();
        form.append(value);
        final String text = GeneratedNames.strip(form.out.toString());
        return text.length() <= MAX_CHARS ? text
            : text.substring(0, MAX_CHARS) + " ... [" + text.length() + " characters]";
    }

    private void append(Object value) {
        if (value == null || !isContainer(value)) {
            out.append(value);
        } else if (out.length() > MAX_CHARS || open.size() >= MAX_DEPTH) {
            out.append("...");
        } else if (open.put(value, true) != null) {
            out.append("(this again)");
        } else {
            appendContents(value);
            open.remove(value);
        }
    }

    private static boolean isContainer(Object value) {
        return value.getClass().isArray() || isPlain(value) || value instanceof Record;
    }

    /** Collections and maps of the JDK print by contents; others know best themselves. */
    private static boolean isPlain(Object value) {
        return (value instanceof Collection || value instanceof Map)
            && value.getClass().getName().startsWith("java.util.");
    }

    private void appendContents(Object value) {
        if (value.getClass().isArray()) {
            appendItems("[", Array.getLength(value), i -> Array.get(value, i), "]");
        } else if (value instanceof Collection<?> c) {
            final List<Object> first = firstOf(c);
            appendItems("[", c.size(), first::get, "]");
        } else if (value instanceof Map<?, ?> m) {
            appendMap(m);
        } else {
            appendRecord((Record) value);
        }
    }

    private static List<Object> firstOf(Collection<?> c) {
        final List<Object> first = new ArrayList<>();
        for (Object o : c) {
            if (first.size() == MAX_ITEMS) {
                break;
            }
            first.add(o);
        }
        return first;
    }

    private interface Items {
        Object at(int i);
    }

    private void appendItems(String before, int count, Items items, String after) {
        out.append(before);
        for (int i = 0; i < count; i++) {
            if (i > 0) {
                out.append(", ");
            }
            if (i == MAX_ITEMS || out.length() > MAX_CHARS) {
                out.append("... ").append(count).append(" in all");
                break;
            }
            append(items.at(i));
        }
        out.append(after);
    }

    private void appendMap(Map<?, ?> m) {
        final List<Map.Entry<?, ?>> first = new ArrayList<>();
        for (Map.Entry<?, ?> e : m.entrySet()) {
            if (first.size() == MAX_ITEMS) {
                break;
            }
            first.add(e);
        }
        out.append('{');
        for (int i = 0; i < first.size(); i++) {
            out.append(i == 0 ? "" : ", ");
            append(first.get(i).getKey());
            out.append('=');
            append(first.get(i).getValue());
        }
        out.append(m.size() > first.size() ? ", ... " + m.size() + " in all}" : "}");
    }

    /** A record that keeps the toString it was born with is shown by its contents, arrays readable. */
    private void appendRecord(Record value) {
        final String own = value.toString();
        final RecordComponent[] parts = value.getClass().getRecordComponents();
        final String born = value.getClass().getSimpleName() + "["
            + (parts.length == 0 ? "]" : parts[0].getName() + "=");
        if (own == null || !own.startsWith(born)) {
            out.append(own);
            return;
        }
        out.append(value.getClass().getSimpleName()).append('[');
        for (int i = 0; i < parts.length; i++) {
            out.append(i == 0 ? "" : ", ").append(parts[i].getName()).append('=');
            append(component(value, parts[i]));
        }
        out.append(']');
    }

    private static Object component(Record value, RecordComponent part) {
        try {
            part.getAccessor().setAccessible(true);
            return part.getAccessor().invoke(value);
        } catch (ReflectiveOperationException | RuntimeException e) {
            return "(not readable: " + Objects.toString(e.getMessage(), e.getClass().getSimpleName()) + ")";
        }
    }
}
