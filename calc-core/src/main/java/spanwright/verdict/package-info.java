/**
 * From a measured error and its uncertainty to a decision whose risk is stated.
 *
 * <p>The way through the package: a {@link spanwright.verdict.Limit} says how large an error may be, with
 * its basis; a {@link spanwright.verdict.DecisionRule}, agreed before measuring
 * ({@link spanwright.verdict.AgreedRule}), says how the uncertainty enters; a
 * {@link spanwright.verdict.Question} joins the two with what is asked; the
 * {@link spanwright.verdict.MeasurementResult}s are what was measured or calculated; the answer is one
 * {@link spanwright.verdict.Verdict}, the same value for a point, a channel, a chain and a plant.
 *
 * <p>Unless otherwise noted, errors, limits and uncertainties are in percent of the output span. Nothing is
 * decided without a limit that has a basis, an uncertainty, and a rule older than the record: such a case is
 * "Not determined", with what is missing.
 *
 * <p>Sources: JCGM 106:2012 (conformance probability, specific and global risk); ILAC-G8:09/2019 and ISO
 * 14253-1:2017 (guard bands), both as quoted in secondary copies; S. Dobbert, NCSLI 2008 (the multiplier that
 * holds 2 %).
 */
package spanwright.verdict;
