/** Figures of programs/st-augustinegrass.yaml, typed from the publications. */
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
  sprays: ['summer-broadleaf'],
};

export const cited: Cited = {
  figures: [
    ['nitrogen', 'yearly.from', '2 lb/1000 sqft', 'uga-rates', 'St. Augustine 2 to 4 pounds'],
    ['nitrogen', 'yearly.to', '4 lb/1000 sqft', 'uga-rates', 'St. Augustine 2 to 4 pounds'],
    ['nitrogen', 'single.total', '1 lb/1000 sqft', 'lsu-staug', '1 pound of nitrogen each time'],
    ...weatherFigures(weather),

    ['summer-annual-barrier', 'window.opens.soil.rises-to', ['50 F', '55 F'], 'wisc', 'in place at 50-55 F, top 2 in'],
    ['summer-annual-barrier', 'window.opens.not-before', '02-01', 'uf-enh73', '1 February in south Florida'],
    ['summer-annual-barrier', 'window.closes.soil.rises-to', '55 F', 'ncsu-ag763', 'germinates at 55 F, 4 in'],
    ['summer-annual-barrier', 'window.closes.not-before', '03-01', 'uf-enh73', '1 March in north Florida'],
    ['summer-annual-barrier', 'if-missed.until.soil.rises-to', ['60 F', '70 F'], 'wisc', 'germinate at 60-70 F'],
    ...barrierFigures(barriers),

    ['first-mowing', 'window.opens.soil.rises-to', '62 F', 'uga-lincoln', 'no green-up until consistently 62 F'],
    ['first-mowing', 'apply.mow.height', '2.5 in', 'ncsu-calendar', 'mow to 2 1/2 inches before green-up'],
    ['summer-height', 'apply.mow.height', '3 in', 'uf-enh73', '3-inch height'],

    ['spring-feed', 'window.opens.soil.rises-to', '65 F', 'uga-calendar', 'consistently above 65 F at 4 in'],
    ['spring-feed', 'window.opens.not-before', '04-01', 'lsu-staug', 'April'],
    [feeds, 'apply.nutrient.N', '1 lb/1000 sqft', 'lsu-staug', '1 pound in April, June and, if wanted, August'],
    ['late-summer-feed', 'window.closes.not-after', '08-31', 'lsu-staug', 'August'],
    [
      'late-summer-feed',
      'window.closes.frost.before',
      ['6 weeks', '8 weeks'],
      'uga-dougherty',
      'six to eight weeks before the average first frost',
    ],

    ['plug-thin-turf', 'window.opens.soil.rises-to', '65 F', 'uga-calendar', 'planting above 65 F at 4 in'],
    ['plug-thin-turf', 'window.opens.not-before', '04-01', 'nc-piedmont', 'April to July'],
    ['plug-thin-turf', 'window.closes.date', '07-31', 'nc-piedmont', 'April to July'],
    ['summer-broadleaf', 'window.opens.date', '05-01', 'uf-enh73', 'in May as needed'],
    ['summer-broadleaf', 'window.closes.date', '05-31', 'uf-enh73', 'in May as needed'],
    ['chinch-bug-scout', 'window.opens.date', '05-01', 'uga-chinch', 'damage began in a dry May'],
    ['summer-water', 'apply.water.depth', '0.75 in', 'uf-enh73', '3/4 inch of water per irrigation'],
    ...grubFigures,
    ['winter-annual-barrier', 'window.best.air.falls-to', '59 F', 'clemson-fall', 'nights in the upper 50s'],
    ['winter-annual-barrier', 'window.closes.soil.falls-to', '70 F', 'uga-2009', 'germinates once below 70 F'],
    ...soilFigures,
    ['lime', 'only-if.soil-test.pH.below', 5.5, 'uga-rates', 'St. Augustine pH 5.5 to 6.5'],
    ...depthFigures([
      ['summer-annual-barrier', 'window.closes', '4 in', 'ncsu-ag763'],
      ['spring-feed', 'window.opens', '4 in', 'uga-calendar'],
      ['plug-thin-turf', 'window.opens', '4 in', 'uga-calendar'],
      ['summer-annual-barrier', 'window.opens', '2 in', 'wisc'],
      ['summer-annual-barrier', 'if-missed.until', '2 in', 'wisc'],
    ]),
  ],
  within: [
    ...grubWithin,
    [
      'summer-annual-barrier',
      'window.best.after.wait',
      ['0 d', '14 d'],
      'uf-enh73',
      '1 February in the south, 15 February in the center',
    ],
    ['nitrogen', 'spacing', ['32 d', '91 d'], 'lsu-staug', 'April, June and August: from month to month 32 to 91 days'],
    [
      ['summer-feed', 'late-summer-feed'],
      ['window.opens.after.wait', 'window.best.after.wait'],
      ['32 d', '91 d'],
      'lsu-staug',
      'April, June and August: from month to month 32 to 91 days',
    ],
    ['winter-annual-barrier', 'window.opens.date', ['09-01', '09-07'], 'uga-labor-day', 'Labor Day'],
  ],
  unpublished: [
    ...weatherUnpublished(weather),
    ...grubUnpublished,
    ...soilUnpublished,
    [
      'summer-annual-barrier',
      ['window.opens.soil.mean', 'window.opens.soil.holds', 'if-missed.until.soil.mean'],
      'the publication gives a threshold without its persistence; 5 days and 3 days keep single warm days out',
    ],
    ['summer-annual-barrier', ['window.opens.soil.from', 'if-missed.until.soil.from'], 'the rise after midwinter'],
    persistence('summer-annual-barrier', 'window.closes', 'holds', 'from'),
    persistenceAndDepth('first-mowing', 'window.opens', 'from'),
    ['first-mowing', 'window.closes.after.wait', 'long enough for any weekend'],
    persistence('spring-feed', 'window.opens', 'holds', 'from'),
    ['spring-feed', ['window.best.after.wait', 'window.closes.after.wait'], 'two mowings from green-up, and a month'],
    [feeds, 'apply.prefer.slow-share', 'either will do (lsu-staug), slow in summer (uf-enh73); a third is sold'],
    ['summer-height', ['window.opens.after.wait', 'window.closes.after.wait'], 'once it grows'],
    persistence('plug-thin-turf', 'window.opens', 'holds', 'from'),
    ['plug-thin-turf', 'window.best.after.wait', 'once the lawn around it grows'],
    ['summer-broadleaf', 'window.best.after.wait', 'a weekend or so'],
    ['chinch-bug-scout', ['window.best.date', 'window.closes.date'], 'the hot months'],
    ['summer-water', ['window.opens.date', 'window.closes.date'], 'before the heat'],
    ['summer-feed', 'window.closes.date', 'June of lsu-staug, two weeks longer where spring is late'],
    [
      'late-summer-feed',
      ['window.closes.frost.first', 'window.closes.frost.chance'],
      'the average first frost, taken as the middle day of the first 32 F',
    ],
    ['winter-annual-barrier', 'window.best.air.mean', 'single cool nights do not count'],
    [
      'winter-annual-barrier',
      ['depth', 'mean', 'holds', 'from'].map((key) => `window.closes.soil.${key}`),
      'the publication states no depth and no persistence',
    ],
    ['winter-annual-barrier', 'window.closes.not-after', 'where the soil stays warm into winter'],
    [
      'large-patch-scout',
      ['depth', 'mean', 'falls-to'].map((key) => `window.best.soil.${key}`),
      'from memory: 70 F is the usual threshold',
    ],
    ['large-patch-scout', ['window.opens.date', 'window.closes.date'], 'fall, when nights are in the 60s'],
  ],
};
