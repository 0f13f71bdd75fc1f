package spanwright.readings;

/**
 * Characters that look like a space or a minus sign and are not. They come from web pages, text processors
 * and exports; each change is listed by whoever asks for it.
 */
final class Characters {
    private static final String SPACES = "\u00a0\u2007\u2009\u200a\u202f\u2002\u2003";
    private static final String NOTHING = "\u200b\ufeff\u00ad";
    private static final String MINUSES = "\u2212\u2012\u2013\ufe63\uff0d";

    private Characters() { }

    /** The text with plain spaces and plain minus signs, without space at its ends. */
    static String plain(String text) {
        return hasSpecial(text) ? replaced(text).strip() : text.strip();
    }

    /** Whether {@link #plain} changes more than the space at the ends. */
    static boolean hasSpecial(String text) {
        for (int i = 0; i < text.length(); i++) {
            final char c = text.charAt(i);
            if (c > 127 && (SPACES.indexOf(c) >= 0 || NOTHING.indexOf(c) >= 0 || MINUSES.indexOf(c) >= 0)) {
                return true;
            }
        }
        return false;
    }

    /** The special characters of a text, by code, for the list of repairs. */
    static String special(String text) {
        final StringBuilder found = new StringBuilder();
        text.chars().filter(c -> hasSpecial(String.valueOf((char) c))).distinct()
            .forEach(c -> found.append(found.length() == 0 ? "" : ", ")
                .append(String.format(java.util.Locale.ROOT, "U+%04X", c)));
        return found.toString();
    }

    private static String replaced(String text) {
        final StringBuilder out = new StringBuilder(text.length());
        for (int i = 0; i < text.length(); i++) {
            final char c = text.charAt(i);
            if (SPACES.indexOf(c) >= 0) {
                out.append(' ');
            } else if (MINUSES.indexOf(c) >= 0) {
                out.append('-');
            } else if (NOTHING.indexOf(c) < 0) {
                out.append(c);
            }
        }
        return out.toString();
    }
}
