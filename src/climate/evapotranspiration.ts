/**
 * Reference evapotranspiration of short grass, and the pieces it is made of.
 * Source of all of it: Allen, Pereira, Raes, Smith (1998), Crop evapotranspiration, FAO Irrigation and Drainage Paper 56.
 * Nothing here throws; NaN in gives NaN out.
 */
import type { Celsius } from '../base/units.ts';
import { extraterrestrialRadiation, radiationThroughYear } from './sun.ts';

/** Evaporation per energy [mm per MJ m⁻²], 1/λ with λ = 2.45 MJ/kg. Eq. 20. */
const MM_PER_MJ = 0.408;
/** Stefan-Boltzmann constant [MJ K⁻⁴ m⁻² d⁻¹]. Eq. 39. */
const SIGMA = 4.903e-9;

/** Atmospheric pressure [kPa]. Eq. 7. @example atmosphericPressure(1800) //=> 81.76 */
export const atmosphericPressure = (elevationM: number): number => 101.3 * ((293 - 0.0065 * elevationM) / 293) ** 5.26;

/** Psychrometric constant [kPa/K] at a pressure [kPa]. Eq. 8. @example psychrometricConstant(81.8) //=> 0.0544 */
export const psychrometricConstant = (pressure: number): number => 0.665e-3 * pressure;

/** Saturation vapour pressure [kPa]. Eq. 11. @example saturationPressure(15) //=> 1.705 */
export const saturationPressure = (t: Celsius): number => 0.6108 * Math.exp((17.27 * t) / (t + 237.3));

/** Mean saturation vapour pressure of a day [kPa]: of its extremes, as that of their mean would be too low. Eq. 12. */
export const meanSaturation = (tmin: Celsius, tmax: Celsius): number =>
  (saturationPressure(tmin) + saturationPressure(tmax)) / 2;

/** Slope of the saturation vapour pressure [kPa/K]. Eq. 13. @example saturationSlope(30.2) //=> 0.246 */
export const saturationSlope = (t: Celsius): number => (4098 * saturationPressure(t)) / (t + 237.3) ** 2;

/** Vapour pressure [kPa] by a ventilated psychrometer, its bulbs in °C, at a pressure [kPa]. Eqs. 15, 16. */
export const vapourByWetBulb = (dry: Celsius, wet: Celsius, pressure: number): number =>
  saturationPressure(wet) - 0.000662 * pressure * (dry - wet);

/** Relative humidity [%]: both extremes of the day, the greatest alone, or the mean. */
export type Humidity = { readonly max: number; readonly min?: number } | { readonly mean: number };

/** Vapour pressure [kPa] by relative humidity. Eqs. 17 (both extremes), 18 (the greatest alone), 19 (the mean). */
export function vapourByHumidity(tmin: Celsius, tmax: Celsius, humidity: Humidity): number {
  if ('mean' in humidity) return (humidity.mean / 100) * meanSaturation(tmin, tmax);
  const morning = (saturationPressure(tmin) * humidity.max) / 100;
  return humidity.min === undefined ? morning : (morning + (saturationPressure(tmax) * humidity.min) / 100) / 2;
}

/** Solar radiation from n hours of sunshine out of N possible, in the unit of the radiation outside. Eq. 35, a 0.25, b 0.5. */
export const solarBySunshine = (n: number, N: number, outside: number): number => (0.25 + (0.5 * n) / N) * outside;

/**
 * Solar radiation from the daily range of temperature, in the unit of the radiation outside. Eq. 50, kRs 0.16 inland and
 * 0.19 at a coast. It is not held below that of a clear sky.
 */
export const solarByRange = (tmin: Celsius, tmax: Celsius, outside: number, coastal = false): number =>
  (coastal ? 0.19 : 0.16) * Math.sqrt(tmax - tmin) * outside;

/** Solar radiation under a clear sky, in the unit of the radiation outside. Eq. 37. */
export const clearSkyRadiation = (elevationM: number, outside: number): number => (0.75 + 2e-5 * elevationM) * outside;

/** Net solar radiation over grass with albedo 0.23, in the unit of the solar radiation. Eq. 38. */
export const netShortwave = (solar: number): number => 0.77 * solar;

/** Net outgoing longwave radiation [MJ m⁻² d⁻¹]; radiation in MJ m⁻² d⁻¹, vapour in kPa. Eq. 39. */
export function netLongwave(tmin: Celsius, tmax: Celsius, solar: number, clearSky: number, vapour: number): number {
  const warmth = (SIGMA * ((tmax + 273.16) ** 4 + (tmin + 273.16) ** 4)) / 2;
  return warmth * (0.34 - 0.14 * Math.sqrt(vapour)) * (1.35 * Math.min(1, solar / clearSky) - 0.35);
}

/** Wind 2 m above grass from wind at another height [m], both in the same unit. Eq. 47. @example windAt2m(3.2, 10) //=> 2.39 */
export const windAt2m = (wind: number, height: number): number => (wind * 4.87) / Math.log(67.8 * height - 5.42);

/** What the Penman-Monteith equation takes. */
export interface Weather {
  /** Net radiation and the heat that goes into the soil [MJ m⁻² d⁻¹]. */
  readonly netRadiation: number;
  readonly soilHeat: number;
  /** Mean air temperature [°C]. */
  readonly mean: Celsius;
  /** At 2 m [m/s]. */
  readonly wind: number;
  /** Saturation and actual vapour pressure [kPa]. */
  readonly saturation: number;
  readonly vapour: number;
  /** [kPa/K] */
  readonly slope: number;
  readonly psychrometric: number;
}

/** Reference evapotranspiration [mm/d]. Eq. 6. */
export function penmanMonteith(w: Weather): number {
  const heat = MM_PER_MJ * w.slope * (w.netRadiation - w.soilHeat);
  const drying = ((w.psychrometric * 900) / (w.mean + 273)) * w.wind * (w.saturation - w.vapour);
  return (heat + drying) / (w.slope + w.psychrometric * (1 + 0.34 * w.wind));
}

/**
 * Reference evapotranspiration after FAO Penman-Monteith.
 *
 * @param day.tmin @param day.tmax Extremes of air temperature [°C]. @param day.vapour Vapour pressure [kPa].
 * @param day.wind At 2 m [m/s]. @param day.solar Solar radiation [MJ m⁻² d⁻¹].
 * @param day.soilHeat Heat into the soil [MJ m⁻² d⁻¹]; 0 for a day (Eq. 42).
 * @returns [mm/d]
 * @throws never
 * Source: FAO-56 Eqs. 6-8, 11-13, 21, 37-40.
 * @example referenceEvapotranspiration({ tmin: 12.3, tmax: 21.5, vapour: 1.409, wind: 2.078, solar: 22.07, latitude: 50.8,
 *   dayOfYear: 187, elevationM: 100 }) //=> 3.88 (Example 18)
 */
export function referenceEvapotranspiration(day: {
  readonly tmin: Celsius;
  readonly tmax: Celsius;
  readonly vapour: number;
  readonly wind: number;
  readonly solar: number;
  readonly soilHeat?: number;
  readonly latitude: number;
  readonly dayOfYear: number;
  readonly elevationM: number;
}): number {
  const { tmin, tmax, vapour, wind, solar, soilHeat = 0 } = day;
  const mean = (tmin + tmax) / 2;
  const clearSky = clearSkyRadiation(day.elevationM, extraterrestrialRadiation(day.latitude, day.dayOfYear));
  return penmanMonteith({
    netRadiation: netShortwave(solar) - netLongwave(tmin, tmax, solar, clearSky, vapour), // Eq. 40
    soilHeat,
    mean,
    wind,
    saturation: meanSaturation(tmin, tmax),
    vapour,
    slope: saturationSlope(mean),
    psychrometric: psychrometricConstant(atmosphericPressure(day.elevationM)),
  });
}

/**
 * Reference evapotranspiration after Hargreaves, from extremes of temperature alone.
 *
 * @param tmin @param tmax Extremes of air temperature [°C]. @param latitude [°], north positive. @param dayOfYear 1 to 366.
 * @returns [mm/d], never negative. Wind and humidity are left out: too low in dry wind, too high in damp air.
 * @throws never; NaN where the minimum is above the maximum.
 * Source: FAO-56 Eq. 52, after Hargreaves & Samani (1985), Appl. Eng. Agric. 1:96-99.
 * @example hargreavesEvapotranspiration(14.8, 26.6, 45.72, 196) //=> 5.03 (Example 20 prints 5.0)
 */
export function hargreavesEvapotranspiration(
  tmin: Celsius,
  tmax: Celsius,
  latitude: number,
  dayOfYear: number,
): number {
  const outside = MM_PER_MJ * (radiationThroughYear(latitude)[dayOfYear] ?? Number.NaN);
  return Math.max(0, 0.0023 * ((tmin + tmax) / 2 + 17.8) * Math.sqrt(tmax - tmin) * outside);
}
