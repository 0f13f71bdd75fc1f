/**
 * How results are shown in a cell and in a report: first the sentence, then tables and pictures, then notes.
 * The values of the calculations know nothing of this; the renderers here read their accessors.
 */
package spanwright.notebook.show;
