import type { Celsius, Metres } from '../base/units.ts';

/** Depth at which a wave of a period is damped to 1/e [m]: d = √(D P / π). Hillel (1982), Introduction to Soil Physics. */
export const dampingDepth = (diffusivity: number, period: number): Metres =>
  Math.sqrt((diffusivity * period) / Math.PI);

/**
 * Soil temperature of a sinusoidal annual wave.
 *
 * @param mean @param amplitude Of the surface [°C]. @param coldest Day of the surface minimum. @param diffusivity [m² d⁻¹].
 * Source: Hillel (1982), after Carslaw & Jaeger: T = Ta + A e^(-z/d) sin(ω(t - t0) - π/2 - z/d).
 */
export function annualWave(
  mean: Celsius,
  amplitude: number,
  coldest: number,
  diffusivity: number,
  depth: Metres,
  day: number,
): Celsius {
  const d = dampingDepth(diffusivity, 365);
  const phase = (2 * Math.PI * (day - coldest)) / 365 - Math.PI / 2;
  return mean + amplitude * Math.exp(-depth / d) * Math.sin(phase - depth / d);
}
