package spanwright.kernel.display;

import java.util.Objects;
import java.util.regex.Pattern;

/** Takes the class names that the engine makes up out of text a person reads. */
public final class GeneratedNames {
    private static final Pattern WRAPPER =
        Pattern.compile("(?:REPL[./])?\\$JShell\\$\\w+(?:[.$]|(?![\\w$]))");

    private GeneratedNames() { }

    /** The text without wrapper classes: {@code REPL.$JShell$9$Loop} becomes {@code Loop}. */
    public static String strip(String text) {
        Objects.requireNonNull(text, "text");
        return text.contains("$JShell$") ? WRAPPER.matcher(text).replaceAll("") : text;
    }
}
