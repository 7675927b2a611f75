/**
 * Figures that nobody publishes and that the trade, or these programs, take in one of a few usual ways: typed here once for
 * all programs, so that a slip in one of them is noticed against what the others say. A program that needs another value
 * adds it here with its reason.
 */
export interface CommonPractice {
  /** The place of the figure: `step.path`, as `figuresOf` names it. */
  readonly at: RegExp;
  readonly values: readonly (string | number)[];
  readonly why: string;
}

export const COMMON_PRACTICE: readonly CommonPractice[] = [
  {
    at: /\.rain-below\.depth$/,
    values: ['0.5 in', '0.1 in'],
    why: 'heavy rain carries granules off; a sprayed leaf has to stay dry',
  },
  { at: /\.rain-below\.in$/, values: ['24 h'], why: 'within a day' },
  { at: /\.weather\.air\.from$/, values: ['40 F', '50 F'], why: 'below nothing works: granules 40 F, sprays 50 F' },
  { at: /\.weather\.air\.to$/, values: ['90 F', '85 F'], why: 'above it burns or drifts: granules 90 F, sprays 85 F' },
  { at: /\.(soil|air|growth)\.mean$/, values: ['5 d', '7 d'], why: 'a work week or a week, against single warm days' },
  { at: /\.(soil|air|growth)\.holds$/, values: ['3 d'], why: 'three days running are no accident' },
  { at: /\.soil\.depth$/, values: ['5 cm', '2 in', '10 cm', '4 in'], why: 'seed lies shallow, roots deeper' },
  {
    at: /\.frost\.first$/,
    values: ['32 F', '28 F'],
    why: 'a frost is 32 F where a publication says "frost"; pipes freeze at a hard one of 28 F',
  },
  { at: /\.frost\.chance$/, values: ['50%'], why: 'the usual frost is that of every second year' },
  {
    at: /\.prefer\.slow-share$/,
    values: ['25%', '33%', '50%'],
    why: 'a quarter, a third or half of it slow, as bags come',
  },
  { at: /\.water-in\.within$/, values: ['1 d', '7 d'], why: 'at once, or within the week' },
  {
    at: /^nitrogen\.spacing$/,
    values: ['4 weeks', '5 weeks', '6 weeks', '8 weeks'],
    why: 'not more often than monthly',
  },
  {
    at: /\.degree-days\.from$/,
    values: ['01-01', '03-01'],
    why: 'sums begin on 1 January unless they are said to begin in March',
  },
  {
    at: /\.(soil|air)\.from$/,
    values: [
      '01-15',
      '02-01',
      '02-10',
      '02-15',
      '03-01',
      '04-01',
      '04-15',
      '05-01',
      '06-01',
      '08-01',
      '08-15',
      '09-01',
      '09-15',
      '10-01',
      '10-15',
      '11-05',
    ],
    why: 'the turn of the season before which a crossing would be an accident: midwinter, the end of winter, midsummer, fall',
  },
];
