package spanwright.readings;

import java.util.Locale;
import java.util.Optional;

/** Words for the phase and the direction of a reading. */
final class PhaseWord {
    static final String ALLOWED = "\"as found\", \"as left\" or \"as found = as left\" is allowed";

    private PhaseWord() { }

    /** The phase that words stand for. */
    static Optional<Phase> read(String words) {
        return switch (normal(words)) {
            case "as found", "found", "af", "before adjustment", "before" -> Optional.of(Phase.AS_FOUND);
            case "as left", "left", "al", "after adjustment", "after" -> Optional.of(Phase.AS_LEFT);
            case "as found = as left", "as left = as found", "not adjusted", "af = al", "al = af",
                "as left = as found, not adjusted", "as found = as left, not adjusted", "no adjustment",
                "as found and as left", "af/al" -> Optional.of(Phase.NOT_ADJUSTED);
            default -> Optional.empty();
        };
    }

    /** The direction that a word or an arrow stands for. */
    static Optional<Direction> direction(String words) {
        return switch (normal(words)) {
            case "up", "u", "upscale", "rising", "increasing", "ascending", "\u2191", "+" ->
                Optional.of(Direction.UPSCALE);
            case "down", "d", "dn", "downscale", "falling", "decreasing", "descending", "\u2193" ->
                Optional.of(Direction.DOWNSCALE);
            default -> Optional.empty();
        };
    }

    private static String normal(String words) {
        return Characters.plain(words).toLowerCase(Locale.ROOT).replaceAll("[-_\\s]+", " ")
            .replaceAll(" ?= ?", " = ").strip();
    }
}
