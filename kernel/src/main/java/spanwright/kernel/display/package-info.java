/**
 * What a cell shows: MIME bundles, the renderers that make them from ordinary objects, and the sink that a
 * running cell writes to.
 *
 * <p>Values know nothing of MIME types. A {@link spanwright.kernel.display.Renderer} is found through
 * {@link java.util.ServiceLoader}; the kernel itself knows only text.
 */
package spanwright.kernel.display;
