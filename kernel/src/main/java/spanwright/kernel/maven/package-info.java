/** Jars from the user's own Maven repository, found by their coordinates. Nothing is fetched. */
package spanwright.kernel.maven;
