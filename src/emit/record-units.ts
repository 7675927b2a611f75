import { significant } from '../base/display.ts';
import { factorOf } from '../base/units.ts';
import type { RecordEntry } from '../model/record.ts';

/** Square metres of 1000 square feet, on which U.S. labels state their rates. */
const SQFT_1000 = 1000 * factorOf('sqft');

/** A unit of a record's figures: how many of the record's own make one, and its names in a header and on a page. */
interface RecordUnit {
  readonly header: string;
  readonly shown: string;
  readonly size: number;
  readonly zero?: number;
}

/** A figure of a record: its own unit first, then each reader's where that is another one. */
interface Measure {
  /** How headers begin; the unit follows. */
  readonly header: string;
  readonly of: (entry: RecordEntry) => number | null;
  readonly own: RecordUnit;
  readonly us: RecordUnit;
  readonly metric?: RecordUnit;
}

const KG = { header: 'kg', shown: 'kg', size: 1 };
const LITRE = { header: 'l', shown: 'L', size: 1 };
const LB = { header: 'lb', shown: 'lb', size: factorOf('lb') };
const FLOZ = { header: 'fl_oz', shown: 'fl oz', size: 1000 * factorOf('floz') };
const ML_PER_M2 = { header: 'ml_per_m2', shown: 'mL/m²', size: 1 };

/** Every figure of an entry, in the order of the columns of a CSV. */
export const MEASURES = {
  area: {
    header: 'area',
    of: ({ areaM2 }) => areaM2,
    own: { header: 'm2', shown: 'm²', size: 1 },
    us: { header: 'sqft', shown: 'sq ft', size: factorOf('sqft') },
  },
  loadedMass: { header: 'loaded', of: ({ loadedKg }) => loadedKg, own: KG, us: LB },
  loadedVolume: { header: 'loaded', of: ({ loadedL }) => loadedL, own: LITRE, us: FLOZ },
  usedMass: { header: 'used', of: ({ usedKg }) => usedKg, own: KG, us: LB },
  usedVolume: { header: 'used', of: ({ usedL }) => usedL, own: LITRE, us: FLOZ },
  leftMass: { header: 'left', of: ({ leftKg }) => leftKg, own: KG, us: LB },
  leftVolume: { header: 'left', of: ({ leftL }) => leftL, own: LITRE, us: FLOZ },
  rateMass: {
    header: 'rate',
    of: ({ rateGPerM2 }) => rateGPerM2,
    own: { header: 'g_per_m2', shown: 'g/m²', size: 1 },
    us: { header: 'lb_per_1000_sqft', shown: 'lb/1000 sq ft', size: (1000 * factorOf('lb')) / SQFT_1000 },
  },
  rateVolume: {
    header: 'rate',
    of: ({ rateMlPerM2 }) => rateMlPerM2,
    own: ML_PER_M2,
    us: { header: 'fl_oz_per_1000_sqft', shown: 'fl oz/1000 sq ft', size: (1e6 * factorOf('floz')) / SQFT_1000 },
  },
  output: {
    header: 'output',
    of: ({ outputMlPerM2 }) => outputMlPerM2,
    own: ML_PER_M2,
    us: { header: 'gal_per_1000_sqft', shown: 'gal/1000 sq ft', size: (1e6 * factorOf('gal')) / SQFT_1000 },
  },
  wind: {
    header: 'wind',
    of: ({ windMPerS }) => windMPerS,
    own: { header: 'm_per_s', shown: 'm/s', size: 1 },
    us: { header: 'mph', shown: 'mph', size: factorOf('mph') },
    metric: { header: 'km_per_h', shown: 'km/h', size: factorOf('km/h') },
  },
  air: {
    header: 'air',
    of: ({ airC }) => airC,
    own: { header: 'c', shown: '°C', size: 1 },
    us: { header: 'f', shown: '°F', size: 5 / 9, zero: -160 / 9 },
  },
} as const satisfies Record<string, Measure>;

export type MeasureName = keyof typeof MEASURES;
type Units = 'us' | 'metric';

/** The unit that a reader sees a figure in. */
export function unitFor(name: MeasureName, units: Units): RecordUnit {
  const measure: Measure = MEASURES[name];
  return measure[units] ?? measure.own;
}

/** Digits that no scale, tape or thermometer of a lawn exceeds. */
const DIGITS = 6;

/** A figure in a reader's unit, without the last digits of binary arithmetic; null where the entry has none. */
export function figureFor(entry: RecordEntry, name: MeasureName, units: Units): number | null {
  const value = MEASURES[name].of(entry);
  const { size, zero = 0 } = unitFor(name, units);
  return value === null ? null : Number(significant((value - zero) / size, DIGITS));
}

/** A figure as a page shows it: "16.5 lb"; null where the entry has none. */
export function shownFigure(entry: RecordEntry, name: MeasureName, units: Units): string | null {
  const value = figureFor(entry, name, units);
  return value === null ? null : `${significant(value, 4)} ${unitFor(name, units).shown}`;
}

/** Grams in a litre of 1 lb/gal, in which U.S. labels of liquids state their contents. */
const LB_PER_GAL = factorOf('lb') / factorOf('gal');

/** An active with its content as labels have it: "prodiamine 0.38 %", "prodiamine 4 lb/gal", "prodiamine 479 g/L". */
export function activeInWords({ name, share, gPerL }: RecordEntry['actives'][number], units: Units): string {
  if (share !== null) return `${name} ${Number((100 * share).toPrecision(6))} %`;
  const content = gPerL ?? 0;
  return units === 'us'
    ? `${name} ${significant(content / LB_PER_GAL, 3)} lb/gal`
    : `${name} ${significant(content, 3)} g/L`;
}
