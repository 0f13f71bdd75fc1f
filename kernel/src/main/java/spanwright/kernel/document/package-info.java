/**
 * Notebook files (.ipynb, nbformat 4): read, run without a Jupyter server, written, and made into one HTML
 * page.
 *
 * <p>The way through it: {@link spanwright.kernel.document.NotebookFile} reads a
 * {@link spanwright.kernel.document.Notebook}; {@link spanwright.kernel.document.NotebookRunner} runs its
 * code cells through an {@link spanwright.kernel.interpreter.Interpreter}, the same that serves live
 * sessions, and returns a
 * {@link spanwright.kernel.document.RunResult} with the executed notebook; {@link
 * spanwright.kernel.document.NotebookPage} turns that into a page that needs no network, no script and no
 * other file.
 *
 * <p>Nothing here knows what a cell calculates. A cell that wants a sentence of its result on top of the page
 * and on the terminal adds a {@link spanwright.kernel.document.Headline} to what it shows.
 */
package spanwright.kernel.document;
