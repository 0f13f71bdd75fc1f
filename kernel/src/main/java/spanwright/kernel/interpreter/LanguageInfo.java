package spanwright.kernel.interpreter;

import java.util.Objects;

/**
 * The language of a session.
 *
 * @param version       of the language, for example "17.0.15"
 * @param banner        greeting of a console
 * @param kernelVersion of this product
 */
public record LanguageInfo(String version, String banner, String kernelVersion) {
    /** Checks the components. */
    public LanguageInfo {
        Objects.requireNonNull(version, "version");
        Objects.requireNonNull(banner, "banner");
        Objects.requireNonNull(kernelVersion, "kernelVersion");
    }
}
