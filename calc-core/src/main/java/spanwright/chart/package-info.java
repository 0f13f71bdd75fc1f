/**
 * Pictures of results, drawn with XChart: SVG for the page, PNG beside it.
 *
 * <p>Each picture opens with a sentence that carries the number, its unit and its condition, and has a text
 * alternative. Axes carry quantity and unit; limits are dashed and labelled at the line; upscale and
 * downscale are told apart by the mark as well as the colour; colours are those that Okabe and Ito chose for
 * people who do not tell all colours apart.
 */
package spanwright.chart;
