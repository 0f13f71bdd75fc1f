package spanwright.notebook.show;

/** Text into HTML. Every text from a record goes through here, so that markup in a cell shows as text. */
final class Html {
    private Html() { }

    static String escape(String text) {
        final StringBuilder out = new StringBuilder(text.length() + 16);
        for (int i = 0; i < text.length(); i++) {
            final char c = text.charAt(i);
            switch (c) {
                case '&' -> out.append("&amp;");
                case '<' -> out.append("&lt;");
                case '>' -> out.append("&gt;");
                case '"' -> out.append("&quot;");
                case '\'' -> out.append("&#39;");
                default -> out.append(c < ' ' && c != '\n' && c != '\t' ? '\ufffd' : c);
            }
        }
        return out.toString();
    }
}
