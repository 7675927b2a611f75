import { type Day, partsOf } from './day.ts';
import {
  type Celsius,
  type CubicMetres,
  type CubicMetresPerSquareMetre,
  factorOf,
  type Kilograms,
  type KilogramsPerSquareMetre,
  type Metres,
  type MetresPerSecond,
  type SquareMetres,
} from './units.ts';

/** Prints quantities and days the way one reader wants them. Every function takes SI. */
export interface Display {
  readonly system: UnitSystem;
  temperature(value: Celsius): string;
  /** A depth in the soil, as a person measures it. */
  soilDepth(value: Metres): string;
  /** A short length such as a mowing height or a depth of water. */
  depth(value: Metres): string;
  distance(value: Metres): string;
  area(value: SquareMetres): string;
  mass(value: Kilograms, rounding?: Rounding): string;
  volume(value: CubicMetres, rounding?: Rounding): string;
  massRate(value: KilogramsPerSquareMetre): string;
  volumeRate(value: CubicMetresPerSquareMetre): string;
  /** An active on an area, as labels print it. */
  activeRate(value: KilogramsPerSquareMetre): string;
  /** What a sprayer puts down, as it is adjusted and as labels ask for it. */
  sprayRate(value: CubicMetresPerSquareMetre): string;
  speed(value: MetresPerSecond): string;
  /** A sum of degree days, given in °C·d. */
  heat(value: number): string;
  /** A day without its year: "Sat, Apr 3". */
  day(value: Day): string;
  /** A day without weekday and year: "Apr 3". */
  shortDay(value: Day): string;
}

export type UnitSystem = 'us' | 'metric';

/** Pesticides are rounded downward: never more than the label's rate. */
export type Rounding = 'nearest' | 'down';

/** A number with `digits` significant digits and no trailing zeros. @example significant(12.345, 3) //=> '12.3' */
export function significant(value: number, digits: number, rounding: Rounding = 'nearest'): string {
  if (value === 0) return '0';
  const decimals = Math.min(12, Math.max(0, digits - 1 - Math.floor(Math.log10(Math.abs(value)))));
  const unit = 10 ** -decimals;
  // A hair is added so that 5.7 held as 5.699999999 stays 5.7, and 1.25 is rounded alike from whichever unit it came.
  const steps = value / unit + Math.sign(value) * 1e-9;
  const shown = (rounding === 'down' ? Math.floor(steps) : Math.round(steps)) * unit;
  return String(Number(shown.toFixed(decimals)));
}

const SQFT_1000 = 1000 * factorOf('sqft');

const us = {
  temperature: (c: Celsius) => `${Math.round(c * 1.8 + 32)} °F`,
  soilDepth: (m: Metres) => `${Math.round((2 * m) / factorOf('in')) / 2} in`,
  depth: (m: Metres) => `${significant(m / factorOf('in'), 2)} in`,
  distance: (m: Metres) => `${significant(m / factorOf('ft'), 3)} ft`,
  area: (m2: SquareMetres) => `${Math.round(m2 / factorOf('sqft') + 1e-9).toLocaleString('en-US')} sq ft`,
  mass: (kg: Kilograms, rounding?: Rounding) =>
    kg / factorOf('lb') >= 1
      ? `${significant(kg / factorOf('lb'), 3, rounding)} lb`
      : `${significant(kg / factorOf('oz'), 2, rounding)} oz`,
  volume: (m3: CubicMetres, rounding?: Rounding) =>
    m3 / factorOf('gal') >= 0.5
      ? `${significant(m3 / factorOf('gal'), 3, rounding)} gal`
      : `${significant(m3 / factorOf('floz'), 2, rounding)} fl oz`,
  massRate: (rate: KilogramsPerSquareMetre) => `${significant((rate * SQFT_1000) / factorOf('lb'), 2)} lb/1000 sq ft`,
  volumeRate: (rate: CubicMetresPerSquareMetre) =>
    `${significant((rate * SQFT_1000) / factorOf('floz'), 2)} fl oz/1000 sq ft`,
  activeRate: (rate: KilogramsPerSquareMetre) =>
    `${significant((rate * factorOf('acre')) / factorOf('lb'), 3)} lb/acre`,
  sprayRate: (rate: CubicMetresPerSquareMetre) =>
    `${significant((rate * SQFT_1000) / factorOf('gal'), 3)} gal/1000 sq ft (${significant((rate * factorOf('acre')) / factorOf('gal'), 3)} gal/acre)`,
  speed: (mps: MetresPerSecond) => `${significant(mps / factorOf('mph'), 2)} mph`,
  heat: (celsiusDays: number) => `${Math.round(celsiusDays * 1.8)} °F·d`,
};

const metric: typeof us = {
  temperature: (c) => `${significant(c, Math.abs(c) >= 10 ? 3 : 2)} °C`,
  soilDepth: (m) => `${Math.round(m * 100)} cm`,
  depth: (m) => (m < 0.02 ? `${significant(m * 1000, 2)} mm` : `${significant(m * 100, 2)} cm`),
  distance: (m) => `${significant(m, 3)} m`,
  area: (m2) => `${significant(m2, m2 >= 100 ? 4 : 3)} m²`,
  mass: (kg, rounding) => (kg >= 1 ? `${significant(kg, 3, rounding)} kg` : `${significant(kg * 1000, 3, rounding)} g`),
  volume: (m3, rounding) =>
    m3 >= 0.001 ? `${significant(m3 * 1000, 3, rounding)} L` : `${significant(m3 * 1e6, 2, rounding)} mL`,
  massRate: (rate) => `${significant(rate * 1000, 2)} g/m²`,
  volumeRate: (rate) => `${significant(rate * 1e6, 2)} mL/m²`,
  activeRate: (rate) => `${significant(rate * 10_000, 3)} kg/ha`,
  sprayRate: (rate) => `${significant(rate * 1e5, 3)} L/100 m² (${significant(rate * 1e7, 3)} L/ha)`,
  speed: (mps) => `${significant(mps * 3.6, 2)} km/h`,
  heat: (celsiusDays) => `${Math.round(celsiusDays)} °C·d`,
};

/**
 * The display of one reader.
 *
 * @param language A BCP 47 language tag; it names days and months, by Intl.
 * @example displayOf('us', 'en-US').temperature(10) //=> '50 °F'
 */
export function displayOf(system: UnitSystem, language: string): Display {
  const format = (options: Intl.DateTimeFormatOptions) => {
    const formatter = new Intl.DateTimeFormat(language, { ...options, timeZone: 'UTC' });
    return (day: Day) => {
      const { year, month, day: dayOfMonth } = partsOf(day);
      return formatter.format(Date.UTC(year, month - 1, dayOfMonth));
    };
  };
  return {
    system,
    ...(system === 'us' ? us : metric),
    day: format({ weekday: 'short', month: 'short', day: 'numeric' }),
    shortDay: format({ month: 'short', day: 'numeric' }),
  };
}
