package spanwright.kernel.document;

/** What a terminal would show in the end of text that moves back within its line. */
final class TerminalText {
    private TerminalText() { }

    /**
     * Applies carriage returns and backspaces: later characters stand over earlier ones, so that a progress
     * bar leaves its last state only. Text without them is returned as it is.
     */
    static String settled(String text) {
        if (text.indexOf('\r') < 0 && text.indexOf('\b') < 0) {
            return text;
        }
        final StringBuilder all = new StringBuilder(text.length());
        int start = 0;
        while (start < text.length()) {
            final int feed = text.indexOf('\n', start);
            final int end = feed < 0 ? text.length() : feed;
            all.append(line(text.substring(start, end)));
            if (feed >= 0) {
                all.append('\n');
            }
            start = end + 1;
        }
        return all.toString();
    }

    private static CharSequence line(String line) {
        final StringBuilder shown = new StringBuilder();
        int at = 0;
        for (int i = 0; i < line.length(); i++) {
            final char c = line.charAt(i);
            if (c == '\r') {
                at = 0;
            } else if (c == '\b') {
                at = Math.max(0, at - 1);
            } else if (at < shown.length()) {
                shown.setCharAt(at++, c);
            } else {
                shown.append(c);
                at++;
            }
        }
        return shown;
    }
}
