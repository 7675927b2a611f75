/** Figures that the warm-season programs share, typed from the publications once for all of them. */
import type { Cited } from './cited.ts';

type Figures = Cited['figures'];
type Within = NonNullable<Cited['within']>;
type Unpublished = Cited['unpublished'];

/** Wind, air and rain for granules and sprays; `barriers` and `grubs` are granules that have limits of the air as well. */
export interface Weather {
  readonly granules: readonly string[];
  readonly withAir: readonly string[];
  readonly sprays: readonly string[];
}

export const weatherFigures = ({ granules, sprays }: Weather): Figures => [
  [granules, 'weather.wind-below', '5 mph', 'granule-weather', 'wind below 5 mph with a spinner'],
  ...sprays.flatMap(
    (spray): Figures => [
      [spray, 'weather.wind-below', ['3 mph', '8 mph'], 'spray-weather', '3-8 mph'],
      [spray, 'weather.air.from', '50 F', 'spray-weather', 'days of 50 F or more'],
      [spray, 'weather.air.to', '85 F', 'spray-weather', 'from 85 F an amine, not an ester'],
      [spray, 'weather.rain-below.in', '24 h', 'spray-weather', '24 dry hours'],
    ],
  ),
];

export const weatherUnpublished = ({ granules, withAir, sprays }: Weather): Unpublished => [
  [granules, ['weather.rain-below.depth', 'weather.rain-below.in'], 'common practice: no heavy rain within a day'],
  [withAir, ['weather.air.from', 'weather.air.to'], 'common practice: 40-90 F'],
  ...sprays.map((spray): Unpublished[number] => [spray, 'weather.rain-below.depth', 'what counts as dry']),
];

/** What Arkansas says of every pre-emergent. */
export const barrierFigures = (barriers: readonly string[]): Figures => [
  [barriers, 'apply.actives.prodiamine.compare', '0.75 lb/acre', 'uark', 'prodiamine typically 0.75 lb/acre'],
  [barriers, 'water-in.within', '7 d', 'uark', 'water within 7 days'],
];

/** The grub preventer as Kentucky and North Carolina time it. */
export const grubFigures: Figures = [
  ['grub-preventer', 'window.opens.date', '07-01', 'ncsu-grubs', 'early July'],
  ['grub-preventer', 'window.closes.date', '08-14', 'ncsu-grubs', 'before 15 August'],
  ['grub-preventer', 'water-in.depth', ['0.5 in', '1 in'], 'uky-grubs', '1/2-1 in at once'],
];

export const grubWithin: Within = [
  ['grub-preventer', 'window.best.date', ['07-01', '07-20'], 'uky-grubs', 'early to mid July'],
];

export const grubUnpublished: Unpublished = [
  ['grub-preventer', 'water-in.within', 'a day for the "at once" of uky-grubs'],
];

/** Sample, lime and potash. */
export const soilFigures: Figures = [
  ['soil-sample', 'window.opens.date', '08-01', 'mu-g6954', 'late summer'],
  ['lime', 'apply.rate', '50 lb/1000 sqft', 'umd-lime', 'at most 50 lb at a time'],
  ['lime', 'apply.spacing', '26 weeks', 'umd-lime', 'the rest after 6 months'],
  ['autumn-potash', 'window.opens.frost.before', '6 weeks', 'clemson-potash', '4-6 weeks before the expected frost'],
  ['autumn-potash', 'window.closes.frost.before', '4 weeks', 'clemson-potash', '4-6 weeks before the expected frost'],
  ['autumn-potash', 'apply.rate', '2 lb/1000 sqft', 'clemson-potash', '1.0 lb K2O, 2 lb of 0-0-50'],
];

export const soilUnpublished: Unpublished = [
  ['soil-sample', 'window.closes.date', 'before lime and potash'],
  ['lime', ['window.opens.date', 'window.closes.date'], 'the grass sleeps or slows, and winter works it in'],
  [
    'autumn-potash',
    [
      'window.opens.frost.first',
      'window.opens.frost.chance',
      'window.closes.frost.first',
      'window.closes.frost.chance',
    ],
    'the expected frost, taken as the middle day of the first 32 F',
  ],
];

/** Mean, hold and start of a soil threshold that is printed without its persistence. */
export const persistence = (step: string, at: string, ...more: readonly string[]): Unpublished[number] => [
  step,
  ['mean', ...more].map((key) => `${at}.soil.${key}`),
  'a threshold without its persistence: some days, so that single warm ones do not count; the rise after winter',
];

/** The same where no depth is printed either. */
export const persistenceAndDepth = (step: string, at: string, ...more: readonly string[]): Unpublished[number] => [
  step,
  ['depth', 'mean', ...more].map((key) => `${at}.soil.${key}`),
  'no depth and no persistence is printed: shallow for seed, 10 cm for roots; the rise after winter',
];

/** The depths that Georgia, North Carolina and Wisconsin print beside their thresholds. */
export const depthFigures = (
  depths: readonly (readonly [step: string, at: string, depth: '2 in' | '4 in', source: string])[],
): Figures => depths.map(([step, at, depth, source]) => [step, `${at}.soil.depth`, depth, source, `at ${depth}`]);
