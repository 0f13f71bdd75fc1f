package spanwright.readings;

/** Told after each file of a folder how far the reading is. */
@FunctionalInterface
public interface FolderProgress {
    /** Tells nobody. */
    FolderProgress SILENT = (done, of, file) -> { };

    /**
     * A file has been read or refused.
     *
     * @param done files done, from 1
     * @param of   files in all
     * @param file name of the file
     */
    void at(int done, int of, String file);
}
