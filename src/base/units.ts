/**
 * Units of measure with exact factors to SI.
 *
 * Inside soilclock every number is SI: metres, square metres, cubic metres, kilograms, degrees Celsius,
 * metres per second, days, kilograms per square metre. The aliases below say which.
 *
 * Source of the factors: international yard and pound (1959): 1 yd = 0.9144 m, 1 lb = 0.45359237 kg, both exact;
 * U.S. gallon = 231 in³, exact; short ton = 2000 lb; acre = 43,560 ft².
 */
export type Metres = number;
export type SquareMetres = number;
export type CubicMetres = number;
export type Kilograms = number;
export type Celsius = number;
export type MetresPerSecond = number;
export type Days = number;
export type KilogramsPerSquareMetre = number;
export type CubicMetresPerSquareMetre = number;

export type Dimension = 'length' | 'area' | 'volume' | 'mass' | 'temperature' | 'speed' | 'duration' | 'share';

/** A unit: SI value = value × factor + offset. */
export interface Unit {
  readonly dimension: Dimension;
  readonly factor: number;
  readonly offset?: number;
}

const FOOT = 0.3048;
const INCH = FOOT / 12;
const POUND = 0.45359237;
const GALLON = 231 * INCH ** 3;

const table: Record<Dimension, Record<string, number | { factor: number; offset: number }>> = {
  length: {
    'm metre metres meter meters': 1,
    cm: 0.01,
    mm: 0.001,
    km: 1000,
    'ft foot feet': FOOT,
    'in inch inches': INCH,
    'yd yard yards': 0.9144,
    'mi mile miles': 5280 * FOOT,
  },
  area: {
    'm2 m² sqm': 1,
    'ha hectare hectares': 10_000,
    'sqft ft2 ft²': FOOT ** 2,
    'sqyd yd2 yd²': 0.9144 ** 2,
    'acre acres ac': 43_560 * FOOT ** 2,
  },
  volume: {
    'L l litre litres liter liters': 0.001,
    'mL ml': 1e-6,
    'm3 m³': 1,
    'gal gallon gallons': GALLON,
    'qt quart quarts': GALLON / 4,
    'pt pint pints': GALLON / 8,
    'cup cups': GALLON / 16,
    'floz fl-oz': GALLON / 128,
    'cuyd yd3': 0.9144 ** 3,
    'cuft ft3': FOOT ** 3,
  },
  mass: {
    kg: 1,
    g: 0.001,
    mg: 1e-6,
    t: 1000,
    'lb lbs pound pounds': POUND,
    'oz ounce ounces': POUND / 16,
    'ton tons': 2000 * POUND,
  },
  temperature: {
    'C °C degC': 1,
    'F °F degF': { factor: 5 / 9, offset: -160 / 9 },
  },
  speed: { 'm/s': 1, 'km/h kph': 1 / 3.6, mph: (5280 * FOOT) / 3600, 'kn knots': 1852 / 3600 },
  duration: {
    'd day days': 1,
    'week weeks wk w': 7,
    'h hour hours': 1 / 24,
    'min minute minutes': 1 / 1440,
    's sec second seconds': 1 / 86_400,
  },
  share: { '%': 0.01 },
};

/** Every unit by each of its names. */
export const units: ReadonlyMap<string, Unit> = new Map(
  Object.entries(table).flatMap(([dimension, names]) =>
    Object.entries(names).flatMap(([aliases, value]) => {
      const unit = { dimension: dimension as Dimension, ...(typeof value === 'number' ? { factor: value } : value) };
      return aliases.split(' ').map((alias): [string, Unit] => [alias, unit]);
    }),
  ),
);

/** Units that are said together, as in `5 lb 10 oz`: a larger one, with the smaller ones that may follow it. */
export const said: readonly (readonly [large: string, small: readonly string[]])[] = [
  ['lb', ['oz']],
  ['kg', ['g']],
  ['yd', ['ft', 'in']],
  ['ft', ['in']],
  ['m', ['cm']],
  ['gal', ['qt', 'pt', 'cup', 'floz']],
  ['qt', ['pt', 'cup', 'floz']],
  ['pt', ['cup', 'floz']],
  ['cup', ['floz']],
  ['L', ['mL']],
  ['week', ['d']],
  ['d', ['h']],
  ['h', ['min']],
  ['min', ['s']],
];

/** Factor of a named unit; the name is one of this table, so a wrong one is our own bug. */
export function factorOf(name: string): number {
  const unit = units.get(name);
  if (!unit) throw new Error(`no unit ${name}`);
  return unit.factor;
}

/** The names of the units of a dimension, for a message. */
export const unitNames = (dimension: Dimension): string[] =>
  Object.keys(table[dimension]).map((aliases) => aliases.split(' ')[0] ?? aliases);
