import type { Celsius } from '../base/units.ts';
import { extraterrestrialRadiation } from './sun.ts';

/** Where a soil is. */
export interface Site {
  /** [°], north positive. */
  readonly latitude: number;
  readonly elevationM: number;
  /** Watered whenever it dries: evaporation is then never short of water. */
  readonly irrigated: boolean;
}

/**
 * Parameters of the surface forcing. Fitted together on 50 stations of the U.S. Climate Reference Network (2020), Lane
 * County KS, two Irish and four Florida stations and Grand Forks ND; they trade against each other, so none is to be
 * read alone.
 */
const SURFACE = {
  /** Offset [°C]. */
  c0: -1.01,
  /** Weight of the daily range: the mid-range lies above the 24-hour mean [-]. */
  w: 0.06,
  /** Warming by net radiation [°C per MJ m⁻² d⁻¹]; 1/cR is an air conductance of about 8 W m⁻² K⁻¹. */
  cR: 1.43,
  /** Net radiation below which nothing is warmed [MJ m⁻² d⁻¹]. */
  R0: 2.5,
  /** Dryness above which evaporation falls short [kPa], and how fast, without (aN) and with (aV, aP) rain data [1/kPa, 1/kPa, -]. */
  V0: 0.6,
  aN: 0.78,
  aV: 0.29,
  aP: 0.41,
  /** Wetness scale of recent rain over reference evapotranspiration [-]. */
  A0: 0.15,
} as const;

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
 * Source: FAO-56 Eqs. 7, 11, 13, 37-39, 50, 52, with dew point = Tmin. Radiation is estimated from the daily range;
 * cloud, humidity and wind of the day itself are not known.
 */
export function dayForcing(site: Site, dayOfYear: number, tmin: Celsius, tmax: Celsius): DayForcing {
  const air = (tmin + tmax) / 2;
  const range = Math.max(tmax - tmin, 0.5);
  const outside = extraterrestrialRadiation(site.latitude, dayOfYear);
  const solar = clip(0.16 * Math.sqrt(range), 0.15, 0.75) * outside; // Eq. 50, kRs 0.16
  const clear = Math.max((0.75 + 2e-5 * site.elevationM) * outside, 0.1); // Eq. 37
  const vapour = saturation(air - range / 2); // Eq. 48
  const cloud = 1.35 * clip(solar / clear, 0.25, 1) - 0.35;
  const longwave = 4.903e-9 * (air + 273.16) ** 4 * (0.34 - 0.14 * Math.sqrt(vapour)) * cloud; // Eq. 39
  const t = clip(air, -20, 45);
  const slope = (4098 * saturation(t)) / (t + 237.3) ** 2; // Eq. 13
  const psychrometric = 0.000665 * 101.3 * ((293 - 0.0065 * site.elevationM) / 293) ** 5.26; // Eqs. 7, 8
  return {
    air,
    range,
    netRadiation: 0.77 * solar - longwave, // Eqs. 38, 40
    evaporation: slope / (slope + psychrometric),
    deficit: saturation(air) - vapour,
    referenceEt: Math.max(((0.0023 * outside) / 2.45) * (air + 17.8) * Math.sqrt(range), 0), // Eq. 52
  };
}

/** Share of the equilibrium evaporation that the ground can meet where only its climate is known: V is the mean annual deficit [kPa]. */
export const wetnessByClimate = (V: number): number => clip(1 - SURFACE.aN * Math.max(V - SURFACE.V0, 0), 0, 1);

/** The same with recent rain: A is the ratio of 60-day running means of rain and reference evapotranspiration. */
export const wetnessByRain = (V: number, A: number): number =>
  clip(1 - SURFACE.aV * Math.max(V - SURFACE.V0, 0) - SURFACE.aP * Math.exp(-A / SURFACE.A0), 0, 1);

/** Temperature that drives the ground from above [°C]. */
export const surfaceTemperature = (day: DayForcing, wetness: number): Celsius =>
  day.air -
  SURFACE.w * day.range +
  SURFACE.c0 +
  SURFACE.cR * Math.max(day.netRadiation - SURFACE.R0, 0) * (1 - wetness * day.evaporation);

/** A 60-day running mean, one day on. */
export const ema60 = (mean: number, value: number): number => mean + (value - mean) / 60;

/** Ratio of recent rain to recent evaporative demand [-]. */
export const rainRatio = (rain: number, demand: number): number => rain / Math.max(demand, 0.3);
