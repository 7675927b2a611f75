import { type Day, partsOf } from './day.ts';
import { type UnitNames, unitNamesOf } from './unit-names.ts';
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
  /** The BCP 47 tag by which the words go with it. */
  readonly language: string;
  readonly unitNames: UnitNames;
  /** A number with the decimal sign of the language. @param plain As JavaScript writes it. */
  number(plain: number | string): string;
  /** An amount of money in a currency, such as USD. */
  money(value: number, currency: string): string;
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
  /** A day with weekday and year: "Sat, Apr 3, 2027". */
  fullDay(value: Day): string;
  /** A month by its number from 1, as short as the language has it: "Apr", or "A". */
  month(value: number, length: 'short' | 'narrow'): string;
  /** From one hour of a day to another, each as the instant at which a clock of UTC shows it [ms]. */
  hours(from: number, to: number): string;
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

/** How one language writes numbers and units. */
interface Writing {
  /** As `significant`. */
  sig(value: number, digits: number, rounding?: Rounding): string;
  plain(value: number): string;
  /** A whole number with its thousands apart. */
  whole(value: number): string;
  readonly names: UnitNames;
}

const us = ({ sig, plain, whole, names }: Writing) => ({
  temperature: (c: Celsius) => `${Math.round(c * 1.8 + 32)} °F`,
  soilDepth: (m: Metres) => `${plain(Math.round((2 * m) / factorOf('in')) / 2)} ${names.in}`,
  depth: (m: Metres) => `${sig(m / factorOf('in'), 2)} ${names.in}`,
  distance: (m: Metres) => `${sig(m / factorOf('ft'), 3)} ${names.ft}`,
  area: (m2: SquareMetres) => `${whole(Math.round(m2 / factorOf('sqft') + 1e-9))} ${names.sqft}`,
  mass: (kg: Kilograms, rounding?: Rounding) =>
    kg / factorOf('lb') >= 1
      ? `${sig(kg / factorOf('lb'), 3, rounding)} lb`
      : `${sig(kg / factorOf('oz'), 2, rounding)} oz`,
  volume: (m3: CubicMetres, rounding?: Rounding) =>
    m3 / factorOf('gal') >= 0.5
      ? `${sig(m3 / factorOf('gal'), 3, rounding)} gal`
      : `${sig(m3 / factorOf('floz'), 2, rounding)} ${names.floz}`,
  massRate: (rate: KilogramsPerSquareMetre) => `${sig((rate * SQFT_1000) / factorOf('lb'), 2)} lb/1000 ${names.sqft}`,
  volumeRate: (rate: CubicMetresPerSquareMetre) =>
    `${sig((rate * SQFT_1000) / factorOf('floz'), 2)} ${names.floz}/1000 ${names.sqft}`,
  activeRate: (rate: KilogramsPerSquareMetre) =>
    `${sig((rate * factorOf('acre')) / factorOf('lb'), 3)} lb/${names.acre}`,
  sprayRate: (rate: CubicMetresPerSquareMetre) =>
    `${sig((rate * SQFT_1000) / factorOf('gal'), 3)} gal/1000 ${names.sqft} (${sig((rate * factorOf('acre')) / factorOf('gal'), 3)} gal/${names.acre})`,
  speed: (mps: MetresPerSecond) => `${sig(mps / factorOf('mph'), 2)} ${names.mph}`,
  heat: (celsiusDays: number) => `${Math.round(celsiusDays * 1.8)} °F·d`,
});

const metric = ({ sig }: Writing): ReturnType<typeof us> => ({
  temperature: (c) => `${sig(c, Math.abs(c) >= 10 ? 3 : 2)} °C`,
  soilDepth: (m) => `${Math.round(m * 100)} cm`,
  depth: (m) => (m < 0.02 ? `${sig(m * 1000, 2)} mm` : `${sig(m * 100, 2)} cm`),
  distance: (m) => `${sig(m, 3)} m`,
  area: (m2) => `${sig(m2, m2 >= 100 ? 4 : 3)} m²`,
  mass: (kg, rounding) => (kg >= 1 ? `${sig(kg, 3, rounding)} kg` : `${sig(kg * 1000, 3, rounding)} g`),
  volume: (m3, rounding) => (m3 >= 0.001 ? `${sig(m3 * 1000, 3, rounding)} L` : `${sig(m3 * 1e6, 2, rounding)} mL`),
  massRate: (rate) => `${sig(rate * 1000, 2)} g/m²`,
  volumeRate: (rate) => `${sig(rate * 1e6, 2)} mL/m²`,
  activeRate: (rate) => `${sig(rate * 10_000, 3)} kg/ha`,
  sprayRate: (rate) => `${sig(rate * 1e5, 3)} L/100 m² (${sig(rate * 1e7, 3)} L/ha)`,
  speed: (mps) => `${sig(mps * 3.6, 2)} km/h`,
  heat: (celsiusDays) => `${Math.round(celsiusDays)} °C·d`,
});

/**
 * The display of one reader.
 *
 * @param language A BCP 47 language tag; it names days, months and units, and writes numbers and money, by Intl.
 * @example displayOf('us', 'en-US').temperature(10) //=> '50 °F'
 */
export function displayOf(system: UnitSystem, language: string): Display {
  const sign = new Intl.NumberFormat(language).formatToParts(1.5).find(({ type }) => type === 'decimal')?.value ?? '.';
  const number = (plain: number | string) => String(plain).replace('.', sign);
  const names = unitNamesOf(language);
  const writing: Writing = {
    sig: (value, digits, rounding) => number(significant(value, digits, rounding)),
    plain: number,
    whole: (value) => value.toLocaleString(language),
    names,
  };
  return {
    system,
    language,
    unitNames: names,
    number,
    money: (value, currency) => value.toLocaleString(language, { style: 'currency', currency }),
    ...(system === 'us' ? us : metric)(writing),
    ...daysIn(language),
  };
}

function daysIn(language: string): Pick<Display, 'day' | 'shortDay' | 'fullDay' | 'month' | 'hours'> {
  const format = (options: Intl.DateTimeFormatOptions) => {
    const formatter = new Intl.DateTimeFormat(language, { ...options, timeZone: 'UTC' });
    return (day: Day) => {
      const { year, month, day: dayOfMonth } = partsOf(day);
      return formatter.format(Date.UTC(year, month - 1, dayOfMonth));
    };
  };
  return {
    day: format({ weekday: 'short', month: 'short', day: 'numeric' }),
    shortDay: format({ month: 'short', day: 'numeric' }),
    fullDay: format({ weekday: 'short', year: 'numeric', month: 'short', day: 'numeric' }),
    month: (value, length) =>
      new Intl.DateTimeFormat(language, { month: length, timeZone: 'UTC' }).format(Date.UTC(2001, value - 1, 15)),
    hours: (from, to) =>
      new Intl.DateTimeFormat(language, { hour: 'numeric', minute: '2-digit', timeZone: 'UTC' }).formatRange(from, to),
  };
}
