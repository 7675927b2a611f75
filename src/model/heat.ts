import * as v from 'valibot';
import type { Celsius, Metres } from '../base/units.ts';
import { maybe, number, positive, quantity, scaledTemperature, source, word } from './fields.ts';

export const METHODS = [
  'average',
  'average-clamped',
  'modified',
  'single-sine',
  'double-sine',
  'single-triangle',
  'double-triangle',
] as const;
export type DegreeDayMethod = (typeof METHODS)[number];

export const CUTOFFS = ['none', 'horizontal', 'intermediate', 'vertical'] as const;
/** What heat above the upper threshold counts: all of it, as at the threshold, less for each degree, nothing. */
export type Cutoff = (typeof CUTOFFS)[number];

/** How heat adds up: thresholds in °C, the sum in °C·d. */
export interface HeatRule {
  readonly base: Celsius;
  readonly upper?: Celsius;
  readonly method: DegreeDayMethod;
  readonly cutoff?: Cutoff;
  /** Air's extremes, or the soil's daily means at a depth. */
  readonly of?: 'air' | 'soil';
  readonly depth?: Metres;
  /** The method that the published sum was derived with, where that is known. */
  readonly derivedWith?: DegreeDayMethod;
  /** The sum that has to be reached [°C·d]. */
  readonly reaches: number;
}

/** A depth that the soil model reaches. */
export const soilDepth = v.pipe(
  positive('length'),
  v.minValue(0.05 - 1e-9, 'soil-depth'),
  v.maxValue(0.5 + 1e-9, 'soil-depth'),
);

/** How heat adds up, as it stands in a program. */
export const heatFields = {
  base: scaledTemperature,
  upper: maybe(quantity('temperature')),
  method: maybe(word(METHODS), 'average'),
  cutoff: maybe(word(CUTOFFS)),
  'derived-with': maybe(word(METHODS)),
  of: maybe(word(['air', 'soil']), 'air'),
  depth: maybe(soilDepth),
  reaches: number(0, 20_000),
  source: maybe(source),
};

/** `reaches` is in the base's unit × days. A cutoff belongs to the sines and triangles, a depth to the soil, whose daily means take the average. */
export const heat = <
  T extends {
    base: { celsius: number; degree: number };
    upper?: number;
    reaches: number;
    method: DegreeDayMethod;
    cutoff?: Cutoff;
    of: 'air' | 'soil';
    depth?: Metres;
  },
>() =>
  v.rawTransform<T, Omit<T, 'base'> & { base: Celsius }>(({ dataset, addIssue, NEVER }) => {
    const { base, reaches, ...rest } = dataset.value;
    if (rest.upper !== undefined && rest.upper <= base.celsius) addIssue({ message: 'degree-days-upper' });
    else if (rest.cutoff !== undefined && !/sine|triangle/.test(rest.method))
      addIssue({ message: 'degree-days-cutoff' });
    else if (rest.of === 'soil' ? rest.method !== 'average' : rest.depth !== undefined)
      addIssue({ message: 'degree-days-soil' });
    else return { ...rest, base: base.celsius, reaches: reaches * base.degree } as Omit<T, 'base'> & { base: Celsius };
    return NEVER;
  });
