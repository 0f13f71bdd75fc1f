/**
 * Joins the calculations and the kernel: what a cell sees without importing, how tables, charts and domain
 * values are shown, and the command line.
 */
package spanwright.notebook;
