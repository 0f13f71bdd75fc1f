/**
 * What temperature does to an instrument: coefficients, the temperatures it meets, and what the two make
 * together.
 *
 * <p>A coefficient is no use without the method that made it. A box figure bounds the total spread over the
 * full range and promises nothing for a part of it; only a slope or a bow-tie may be multiplied by a partial
 * excursion. So
 * {@link spanwright.temperature.TemperatureCoefficient} carries its method and warns. A maker's figure is a
 * {@link spanwright.temperature.TemperatureStatement}, and a typical one refuses to carry a guarantee.
 *
 * <p>The temperature that counts is the one at the module, and the excursion counts from the temperature at
 * calibration as it was recorded, not from the data sheet's reference. {@link spanwright.temperature.Ambient}
 * gives the first, a {@link spanwright.temperature.Excursion} the second, always with both of its sides.
 *
 * <p>Unless otherwise noted errors are in percent of span, coefficients in percent of span per kelvin.
 */
package spanwright.temperature;
