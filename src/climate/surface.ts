import type { Celsius } from '../base/units.ts';
import type { SoilParameters } from './soil-parameters.ts';
import { radiationThroughYear } from './sun.ts';

/** Where a soil is. */
export interface Site {
  /** [°], north positive. */
  readonly latitude: number;
  readonly elevationM: number;
  /** Watered whenever it dries: evaporation is then never short of water. */
  readonly irrigated: boolean;
}

/** A site with what depends on it alone worked out once. */
export interface Place extends Site {
  /** Extraterrestrial radiation by day of the year, 1 to 366 [MJ m⁻² d⁻¹]. */
  readonly radiation: Float64Array;
  /** Share of it that reaches the ground under a clear sky [-]. FAO-56 Eq. 37. */
  readonly clearSky: number;
  /** Psychrometric constant [kPa/K]. FAO-56 Eqs. 7, 8. */
  readonly psychrometric: number;
}

export const placeOf = (site: Site): Place => ({
  ...site,
  radiation: radiationThroughYear(site.latitude),
  clearSky: 0.75 + 2e-5 * site.elevationM,
  psychrometric: 0.000665 * 101.3 * ((293 - 0.0065 * site.elevationM) / 293) ** 5.26,
});

/** What a day's air means for the ground. */
export interface DayForcing {
  /** Mid-range air temperature [°C]. */
  readonly air: Celsius;
  /** Daily range, at least 0.5 K. */
  readonly range: number;
  /** Net radiation [MJ m⁻² d⁻¹]. */
  readonly netRadiation: number;
  /** Equilibrium evaporation share s/(s+γ) [-]. */
  readonly evaporation: number;
  /** Vapour pressure deficit [kPa]. */
  readonly deficit: number;
  /** Reference evapotranspiration after Hargreaves [mm d⁻¹]. */
  readonly referenceEt: number;
}

/** Saturation vapour pressure [kPa] at t [°C]. FAO-56 Eq. 11. */
const saturation = (t: Celsius): number => 0.6108 * Math.exp((17.27 * t) / (t + 237.3));

const clip = (x: number, low: number, high: number): number => Math.min(high, Math.max(low, x));

/**
 * Radiation and dryness of a day from its extremes alone.
 *
 * @param tmin @param tmax Daily extremes of air temperature [°C].
 * @param clearness Share of the radiation that the daily range suggests; below 1 on a wet day.
 * Source: FAO-56 Eqs. 7, 11, 13, 37-39, 50, 52, with dew point = Tmin. Radiation is estimated from the daily range;
 * cloud, humidity and wind of the day itself are not known.
 */
export function dayForcing(place: Place, dayOfYear: number, tmin: Celsius, tmax: Celsius, clearness = 1): DayForcing {
  const air = (tmin + tmax) / 2;
  const range = Math.max(tmax - tmin, 0.5);
  const outside = place.radiation[dayOfYear] as number;
  const solar = clip(0.16 * Math.sqrt(range), 0.15, 0.75) * outside; // Eq. 50, kRs 0.16
  const clear = Math.max(place.clearSky * outside, 0.1); // Eq. 37
  const vapour = saturation(air - range / 2); // Eq. 48
  const cloud = 1.35 * clip(solar / clear, 0.25, 1) - 0.35;
  const kelvin2 = (air + 273.16) * (air + 273.16);
  const longwave = 4.903e-9 * kelvin2 * kelvin2 * (0.34 - 0.14 * Math.sqrt(vapour)) * cloud; // Eq. 39
  const t = clip(air, -20, 45);
  const saturated = saturation(air);
  const slope = (4098 * (t === air ? saturated : saturation(t))) / ((t + 237.3) * (t + 237.3)); // Eq. 13
  return {
    air,
    range,
    netRadiation: 0.77 * solar * clearness - longwave, // Eqs. 38, 40
    evaporation: slope / (slope + place.psychrometric),
    deficit: saturated - vapour,
    referenceEt: Math.max(((0.0023 * outside) / 2.45) * (air + 17.8) * Math.sqrt(range), 0), // Eq. 52
  };
}

/** Share of the equilibrium evaporation that the ground can meet where only its climate is known: V is the mean annual deficit [kPa]. */
export const wetnessByClimate = (p: SoilParameters, V: number): number => clip(1 - p.aN * Math.max(V - p.V0, 0), 0, 1);

/** The same with recent rain: A is the ratio of 60-day running means of rain and reference evapotranspiration. */
export const wetnessByRain = (p: SoilParameters, V: number, A: number): number =>
  clip(1 - p.aV * Math.max(V - p.V0, 0) - p.aP * Math.exp(-A / p.A0), 0, 1);

/** Temperature that drives the ground from above [°C], with snow on it as water [mm]. */
export function surfaceTemperature(p: SoilParameters, day: DayForcing, wetness: number, snow: number): Celsius {
  const sun = p.cR * Math.max(day.netRadiation - p.R0, 0) * (1 - wetness * day.evaporation);
  const bare = day.air - p.w * day.range + p.c0 + sun;
  if (snow === 0) return bare;
  const covered = 1 - Math.exp(-snow / SNOW.covers);
  return bare * (1 - covered * (bare > 0 ? p.snowWarm : p.snowCold));
}

/** Snow as water: falls below and melts above a mean of 0.5 °C; degree-day factor and cover from memory, common values. */
const SNOW = { falls: 0.5, meltPerDegree: 3.5, meltPerRain: 0.3, covers: 10 } as const;

/** Snow on the ground a day on, as water [mm]. */
export const snowNext = (snow: number, air: Celsius, precip: number): number =>
  air < SNOW.falls
    ? snow + precip
    : Math.max(0, snow - SNOW.meltPerDegree * (air - SNOW.falls) - SNOW.meltPerRain * precip);

/** A 60-day running mean, one day on. */
export const ema60 = (mean: number, value: number): number => mean + (value - mean) / 60;

/** Ratio of recent rain to recent evaporative demand [-]. */
export const rainRatio = (rain: number, demand: number): number => rain / Math.max(demand, 0.3);
