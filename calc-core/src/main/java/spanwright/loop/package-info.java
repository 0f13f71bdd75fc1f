/**
 * The 4-20 mA loop as a circuit: will it reach the current it must carry, and what if something opens.
 *
 * <p>A loop is named elements in the order in which they are wired, from the supply's plus outward: supply,
 * cable, transmitter, isolators, receivers. An input-loop-powered isolator passes the current on and pays in
 * voltage, so its output load is seen at its input, plus a drop: such isolators nest. An
 * output-loop-powered or separately powered isolator ends the nest: behind it another circuit begins, with
 * its own supply and its own check.
 *
 * <p>Units throughout: currents in mA, voltages in V, resistances in ohm, power in mW, unless a name says
 * otherwise. Every parameter may carry limits ({@link spanwright.loop.Toleranced}); the worst case takes
 * each at the limit that hurts, the Monte Carlo method draws them between their limits.
 *
 * <p>A {@link spanwright.loop.Panel} joins loops in a cabinet: what they draw sinks the voltage of the
 * supplies they share, and a supply or an isolator module that fails takes several of them at once. Every
 * watt is accounted for ({@link spanwright.loop.PowerBalance}); a power that is not stated is not determined.
 *
 * <p>All values are immutable. A pairing that cannot work (two sources against each other, nothing that
 * drives the loop) is refused when the loop is made, with the reason. Nothing here checks an intrinsically
 * safe circuit.
 */
package spanwright.loop;
