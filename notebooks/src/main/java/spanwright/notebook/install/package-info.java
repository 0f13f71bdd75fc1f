/** Makes the kernel known to Jupyter and makes it start fast. */
package spanwright.notebook.install;
