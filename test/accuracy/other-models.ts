/**
 * Published soil-temperature rules of others, to measure beside our model and to check against their own numbers
 * (`test/published/other-soil-models.test.ts`). None of them is used in a plan.
 */

/**
 * Running mean of the last eleven days with weights 1 to 11; fewer days at the start of a series.
 * Source: Zheng, Hunt & Running (1993), Clim. Res. 2:183-191, as Biome-BGC's daymet code has it: no snow, no canopy.
 */
export function elevenDayMean(air: ArrayLike<number>, i: number): number {
  let [sum, weights] = [0, 0];
  for (let back = 0; back < 11 && back <= i; back++) {
    const value = air[i - back] as number;
    if (Number.isNaN(value)) continue;
    sum += (11 - back) * value;
    weights += 11 - back;
  }
  return sum / weights;
}

/**
 * Surface temperature a day on, after the multi-layer soil of Biome-BGC MuSo: a share of the way to the air, less under
 * leaves when the air is warmer, less under snow. The floor of 0.5 is the code's, not the paper's.
 */
export function surfaceStep(before: number, air: number, { lai = 0, k = 0.5, snow = false } = {}): number {
  const leaves = air > before ? Math.max(Math.exp(-k * lai), 0.5) : 1;
  return before + (air - before) * (snow ? 0.1 : 0.25) * leaves;
}

/** Soil of the SWAT rule. */
export interface SwatSoil {
  /** Bulk density [Mg/m³], water and depth of the profile [mm]. */
  readonly density: number;
  readonly waterMm: number;
  readonly profileMm: number;
}

/** Damping depth [mm]: its largest, the water factor, and the day's. Source: Neitsch et al., SWAT theory, soil temperature. */
export function swatDamping({ density, waterMm, profileMm }: SwatSoil) {
  const largest = 1000 + (2500 * density) / (density + 686 * Math.exp(-5.63 * density));
  const water = waterMm / ((0.356 - 0.144 * density) * profileMm);
  return { largest, water, depth: largest * Math.exp(Math.log(500 / largest) * ((1 - water) / (1 + water)) ** 2) };
}

/** How far a depth [mm] is from the surface towards the yearly mean, 0 to 1. */
export function swatDepthFactor(depthMm: number, dampingMm: number): number {
  const ratio = depthMm / dampingMm;
  return ratio / (ratio + Math.exp(-0.867 - 2.078 * ratio));
}

/** Soil temperature a day on [°C]. */
export const swatStep = (before: number, yearMean: number, surface: number, factor: number): number =>
  0.8 * before + 0.2 * (factor * (yearMean - surface) + surface);

/** Share of a step at the surface that has not come to a depth [m] of a half-space yet: erf(x / 2√(αt)), by its series. */
export function stepLeft(depth: number, diffusivity: number, seconds: number): number {
  const x = depth / (2 * Math.sqrt(diffusivity * seconds));
  let [term, sum] = [x, x];
  for (let n = 1; n < 60; n++) {
    term *= -(x * x) / n;
    sum += term / (2 * n + 1);
  }
  return (2 / Math.sqrt(Math.PI)) * sum;
}
