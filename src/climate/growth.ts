import type { GrassSeason } from '../model/grass.ts';

/** A bell curve: 1 at `optimum`, `spread` is its standard deviation (the authors call it variance). */
interface Bell {
  readonly optimum: number;
  readonly spread: number;
}

const CELSIUS: Record<GrassSeason, Bell> = {
  cool: { optimum: 20, spread: 5.5 },
  warm: { optimum: 31, spread: 7 },
};

/** The optima were read; the spreads 10 and 12 are from memory. */
const FAHRENHEIT: Record<GrassSeason, Bell> = {
  cool: { optimum: 68, spread: 10 },
  warm: { optimum: 88, spread: 12 },
};

function growth(mean: number, grass: GrassSeason, curves: Record<GrassSeason, Bell>): number {
  if (!Object.hasOwn(curves, grass)) throw new RangeError(`no grass season "${grass}": cool or warm`);
  const { optimum, spread } = curves[grass];
  if (grass === 'warm' && mean > optimum) return 1;
  return Math.exp(-0.5 * ((mean - optimum) / spread) ** 2);
}

/**
 * Growth potential of a turf by temperature alone, in the form for °C.
 *
 * @param meanC Mean air temperature of a day, week or month [°C].
 * @param grass `cool` falls on both sides of 20 °C; `warm` stays at 1 above 31 °C, by the authors' later change.
 * @returns Share of the best growth [-], 0 to 1; NaN for NaN. Light, water and nitrogen are left out.
 * @throws RangeError for another grass.
 * Source: Gelernter & Stowell (2005), Improved overseeding programs 1: the role of weather, Golf Course Management; °C form
 * and constants as published by Woods, "A number between 0 and 1". The °F form is not the same curve: see
 * `growthPotentialF`.
 * @example growthPotential(15, 'cool') //=> 0.66
 */
export const growthPotential = (meanC: number, grass: GrassSeason): number => growth(meanC, grass, CELSIUS);

/**
 * Growth potential of a turf by temperature alone, in the form for °F.
 *
 * Not the °C form in other units: 10 °F is 5.556 °C and not 5.5, 12 °F is 6.667 °C and not 7, 88 °F is 31.11 °C. The two
 * forms differ by up to 0.008 for cool-season and 0.045 for warm-season grass, and cross from cool to warm at 77.09 °F
 * against 24.84 °C (76.71 °F).
 *
 * @param meanF Mean air temperature [°F].
 * @returns Share of the best growth [-], 0 to 1; NaN for NaN.
 * @throws RangeError for another grass.
 * Source: Gelernter & Stowell (2005); optima also in "Predicting turf performance", Grounds Maintenance.
 * @example growthPotentialF(59, 'cool') //=> 0.667
 */
export const growthPotentialF = (meanF: number, grass: GrassSeason): number => growth(meanF, grass, FAHRENHEIT);
