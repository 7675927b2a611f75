/** Figures of programs/bermudagrass-transition.yaml, typed from the publications. */
import type { Cited } from '../cited.ts';
import {
  barrierFigures,
  depthFigures,
  grubFigures,
  grubUnpublished,
  grubWithin,
  persistence,
  persistenceAndDepth,
  soilFigures,
  soilUnpublished,
  type Weather,
  weatherFigures,
  weatherUnpublished,
} from '../warm-season.ts';

const feeds = ['spring-feed', 'summer-feed', 'late-summer-feed'];
const barriers = ['summer-annual-barrier', 'winter-annual-barrier'];
const weather: Weather = {
  granules: [...feeds, ...barriers, 'grub-preventer', 'autumn-potash', 'lime'],
  withAir: [...barriers, 'grub-preventer'],
  sprays: ['winter-broadleaf'],
};

export const cited: Cited = {
  figures: [
    ['nitrogen', 'yearly.from', '2 lb/1000 sqft', 'va-dcr', 'bermudagrass 2-4 lb a year'],
    ['nitrogen', 'yearly.to', '4 lb/1000 sqft', 'va-dcr', 'bermudagrass 2-4 lb a year'],
    ['nitrogen', 'single.total', '1.0 lb/1000 sqft', 'va-dcr', 'warm-season grasses 1.0 lb a month'],
    ['nitrogen', 'spacing', '4 weeks', 'kstate-feed', 'about 4 weeks apart'],
    ...weatherFigures(weather),

    ['winter-broadleaf', 'window.opens.date', '03-01', 'kstate-calendar', 'March'],
    ['winter-broadleaf', 'window.closes.not-after', '03-31', 'kstate-calendar', 'March'],
    ['winter-broadleaf', 'apply.actives.2-4-d.compare', ['1 lb/acre', '2 lb/acre'], 'pnw-2-4-d', '2-4 pt of 4 lb/gal'],

    ['summer-annual-barrier', 'window.opens.soil.rises-to', ['50 F', '55 F'], 'wisc', 'in place at 50-55 F, top 2 in'],
    ['summer-annual-barrier', 'window.closes.any-of.0.degree-days.base', '50 F', 'bygl', 'degree days over 50 F'],
    ['summer-annual-barrier', 'window.closes.any-of.0.degree-days.reaches', 155, 'bygl', 'first seedling, smooth'],
    ['summer-annual-barrier', 'window.closes.any-of.1.soil.rises-to', '55 F', 'ncsu-ag763', 'germinates at 55 F, 4 in'],
    ['summer-annual-barrier', 'window.closes.not-before', '03-10', 'uark', '10 March in the north of Arkansas'],
    ['summer-annual-barrier', 'if-missed.until.soil.rises-to', ['60 F', '70 F'], 'wisc', 'germinate at 60-70 F'],
    ...barrierFigures(barriers),

    ['first-mowing', 'window.opens.soil.rises-to', '62 F', 'uga-lincoln', 'no green-up until consistently 62 F'],
    ['first-mowing', 'apply.mow.height', ['0.75 in', '1 in'], 'ncsu-calendar', 'reel at 3/4 to 1 in at first green'],
    ['summer-height', 'apply.mow.height', ['1.5 in', '2.5 in'], 'okstate', 'bermudagrass 1.5-2.5 in'],

    ['spring-feed', 'window.opens.soil.rises-to', '65 F', 'uga-calendar', 'consistently above 65 F at 4 in'],
    [feeds, 'apply.nutrient.N', '1 lb/1000 sqft', 'kstate-calendar', '1 lb of nitrogen at a time'],
    [['summer-feed', 'late-summer-feed'], 'window.opens.after.wait', '4 weeks', 'kstate-feed', 'about 4 weeks apart'],
    ['late-summer-feed', 'window.best.date', '08-01', 'kstate-calendar', 'of three feeds, the third in early August'],
    ['late-summer-feed', 'window.closes.not-after', '08-15', 'kstate-feed', 'the last not after 15 August'],
    [
      'late-summer-feed',
      'window.closes.frost.before',
      ['6 weeks', '8 weeks'],
      'uga-dougherty',
      'six to eight weeks before the average first frost',
    ],

    ['seed-thin-turf', 'window.opens.soil.rises-to', '65 F', 'uga-calendar', 'planting above 65 F at 4 in'],
    ['seed-thin-turf', 'window.opens.not-before', '05-15', 'kstate-calendar', 'from mid-May'],
    ['seed-thin-turf', 'window.closes.date', '06-30', 'okstate', 'late April, May and June'],
    ['seed-thin-turf', 'apply.rate', ['1 lb/1000 sqft', '2 lb/1000 sqft'], 'ncsu-seed', '1 to 2 lb'],
    ['seed-thin-turf', 'if-missed.until.date', '07-31', 'kstate-calendar', 'through July'],

    ['core', 'window.opens.date', '06-01', 'kstate-coring', 'June to the end of July'],
    ['core', 'window.closes.date', '07-31', 'kstate-coring', 'June to the end of July'],
    ['summer-water', 'apply.water.depth', '1 in', 'ncsu-calendar', 'about 1 inch of water each week'],
    ...grubFigures,
    ['winter-annual-barrier', 'window.opens.date', '08-15', 'uark', 'about 15 August; September often too late'],
    ['winter-annual-barrier', 'window.closes.soil.falls-to', '70 F', 'uga-2009', 'germinates once below 70 F'],
    ...soilFigures,
    ['lime', 'only-if.soil-test.pH.below', 5.5, 'uga-ph', 'bermudagrass pH 5.5-6.5'],
    ...depthFigures([
      ['summer-annual-barrier', 'window.closes.any-of.1', '4 in', 'ncsu-ag763'],
      ['spring-feed', 'window.opens', '4 in', 'uga-calendar'],
      ['seed-thin-turf', 'window.opens', '4 in', 'uga-calendar'],
      ['summer-annual-barrier', 'window.opens', '2 in', 'wisc'],
      ['summer-annual-barrier', 'if-missed.until', '2 in', 'wisc'],
    ]),
  ],
  within: [
    ...grubWithin,
    [
      'summer-feed',
      'window.closes.date',
      ['06-01', '07-18'],
      'kstate-feed',
      'from June to four weeks before the last, which is not after 15 August',
    ],
    ['core', 'window.best.date', ['06-01', '06-30'], 'kstate-calendar', 'coring in June'],
    [
      'winter-annual-barrier',
      'window.closes.not-after',
      ['08-15', '09-30'],
      'uark',
      'about 15 August; September is often too late, and October is past it',
    ],
  ],
  unpublished: [
    ...weatherUnpublished(weather),
    ...grubUnpublished,
    ...soilUnpublished,
    ['winter-broadleaf', 'window.best.after.wait', 'a weekend or so'],
    [
      'winter-broadleaf',
      ['depth', 'mean', 'rises-to', 'holds', 'from'].map((key) => `window.closes.soil.${key}`),
      'some days before the 62 F of green-up (uga-lincoln)',
    ],
    [
      'summer-annual-barrier',
      ['window.opens.soil.mean', 'window.opens.soil.holds', 'if-missed.until.soil.mean'],
      'the publication gives a threshold without its persistence; 5 days and 3 days keep single warm days out',
    ],
    ['summer-annual-barrier', ['window.opens.soil.from', 'if-missed.until.soil.from'], 'the rise after winter'],
    ['summer-annual-barrier', 'window.opens.not-before', 'a warm week in early February is no spring'],
    ['summer-annual-barrier', 'window.best.after.wait', 'a few days to find a calm one'],
    ['summer-annual-barrier', 'window.closes.any-of.0.degree-days.from', 'no start is printed; 1 January is usual'],
    persistence('summer-annual-barrier', 'window.closes.any-of.1', 'holds', 'from'),
    persistenceAndDepth('first-mowing', 'window.opens', 'from'),
    ['first-mowing', 'window.closes.after.wait', 'long enough for any weekend'],
    persistence('spring-feed', 'window.opens', 'holds', 'from'),
    ['spring-feed', ['window.best.after.wait', 'window.closes.after.wait'], 'two mowings from green-up, and a month'],
    [feeds, 'apply.prefer.slow-share', 'quick or slow will do (kstate-feed); a quarter slow evens out the growth'],
    ['summer-height', ['window.opens.after.wait', 'window.closes.after.wait'], 'once it grows'],
    persistence('seed-thin-turf', 'window.opens', 'holds', 'from'),
    ['seed-thin-turf', 'window.best.after.wait', 'a weekend or so'],
    ['summer-feed', 'window.best.after.wait', 'June or early July'],
    ['summer-water', ['window.opens.date', 'window.closes.date'], 'before the heat'],
    [
      'late-summer-feed',
      ['window.closes.frost.first', 'window.closes.frost.chance'],
      'the average first frost, taken as the middle day of the first 32 F',
    ],
    ['winter-annual-barrier', 'window.best.after.wait', 'a weekend or so'],
    [
      'winter-annual-barrier',
      ['depth', 'mean', 'holds', 'from'].map((key) => `window.closes.soil.${key}`),
      'the publication states no depth and no persistence',
    ],
  ],
};
