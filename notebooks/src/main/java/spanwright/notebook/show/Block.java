package spanwright.notebook.show;

/** A piece of a sheet: a table, a picture, notes, cautions. */
public sealed interface Block permits Grid, Figure, Notes, Cautions {
    /** As an HTML fragment, every text from data escaped. */
    String html();

    /** As plain text for a console. */
    String text();
}
