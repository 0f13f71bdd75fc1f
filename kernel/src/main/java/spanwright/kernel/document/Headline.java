package spanwright.kernel.document;

import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import spanwright.kernel.display.MimeBundle;

/**
 * The sentence that a reader must not miss. It travels inside a {@link MimeBundle} under a MIME type of its
 * own, so that front ends that do not know it show the other representations; the runner prints it, and the
 * page repeats it on top with a link to the cell.
 *
 * @param word     the result in a word or two, for example "Meets"; may be empty
 * @param sentence one line of plain text with the number, its unit and its condition
 */
public record Headline(String word, String sentence) {
    /** The MIME type: JSON with the keys "word" and "sentence". */
    public static final String MIME = "application/vnd.spanwright.headline+json";

    /** Checks the components; a sentence of several lines is refused. */
    public Headline {
        Objects.requireNonNull(word, "word");
        Objects.requireNonNull(sentence, "sentence");
        if (sentence.isBlank() || sentence.lines().count() > 1 || word.lines().count() > 1) {
            throw new IllegalArgumentException("a headline is one line, not \"" + word + "\", \"" + sentence
                + "\"");
        }
    }

    /** The bundle with this headline added. */
    public MimeBundle on(MimeBundle bundle) {
        return bundle.with(MIME, Map.of("word", word, "sentence", sentence));
    }

    /** The headline that a bundle carries; empty if none, or if what it carries is not one. */
    public static Optional<Headline> of(MimeBundle bundle) {
        if (bundle.data().get(MIME) instanceof Map<?, ?> map && map.get("sentence") instanceof String sentence
                && !sentence.isBlank() && sentence.lines().count() == 1) {
            final String word = map.get("word") instanceof String w && w.lines().count() <= 1 ? w : "";
            return Optional.of(new Headline(word, sentence));
        }
        return Optional.empty();
    }

    /** The sentence, with the word before it unless the sentence begins with it. */
    @Override
    public String toString() {
        return word.isEmpty() || sentence.startsWith(word) ? sentence : word + ": " + sentence;
    }
}
