/**
 * The port between those who have a cell to run (the protocol side and the headless runner) and the engine
 * that runs it. Both sides have a double of it in their tests.
 */
package spanwright.kernel.interpreter;
