/** Figures of programs/zoysiagrass.yaml, typed from the publications. */
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

const feeds = ['spring-feed', 'summer-feed'];
const barriers = ['summer-annual-barrier', 'winter-annual-barrier'];
const weather: Weather = {
  granules: [...feeds, ...barriers, 'grub-preventer', 'autumn-potash', 'lime'],
  withAir: [...barriers, 'grub-preventer'],
  sprays: ['winter-broadleaf'],
};

export const cited: Cited = {
  figures: [
    ['nitrogen', 'yearly.from', '1 lb/1000 sqft', 'va-dcr', 'zoysiagrass 1-2 lb a year'],
    ['nitrogen', 'yearly.to', '2 lb/1000 sqft', 'va-dcr', 'zoysiagrass 1-2 lb a year'],
    ['nitrogen', 'single.total', '1.0 lb/1000 sqft', 'va-dcr', 'warm-season grasses 1.0 lb a month'],
    ...weatherFigures(weather),

    ['winter-broadleaf', 'window.closes.not-before', '03-01', 'kstate-calendar', 'March'],
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
    ['first-mowing', 'apply.mow.height', ['1 in', '1.5 in'], 'clemson-calendar', 'around 1 to 1.5 in before green-up'],
    ['summer-height', 'apply.mow.height', ['1.5 in', '2 in'], 'clemson-calendar', 'regular summer height 1.5 to 2 in'],

    ['spring-feed', 'window.opens.soil.rises-to', '65 F', 'uga-calendar', 'consistently above 65 F at 4 in'],
    ['spring-feed', 'window.opens.not-before', '04-20', 'uga-evans', 'late April or May'],
    [
      feeds,
      'apply.nutrient.N',
      ['0.75 lb/1000 sqft', '1 lb/1000 sqft'],
      'kstate-feed',
      '1.5 to 2 lb a year in two equal halves',
    ],
    ['summer-feed', 'window.best.after.wait', ['7 weeks', '8 weeks'], 'uga-evans', 'every 7 to 8 weeks'],
    ['summer-feed', 'window.closes.not-after', '08-15', 'uga-evans', 'to mid-August'],
    [
      'summer-feed',
      'window.closes.frost.before',
      ['6 weeks', '8 weeks'],
      'uga-dougherty',
      'six to eight weeks before the average first frost',
    ],

    ['plug-thin-turf', 'window.opens.soil.rises-to', '65 F', 'uga-calendar', 'planting above 65 F at 4 in'],
    ['plug-thin-turf', 'window.opens.not-before', '05-15', 'kstate-calendar', 'from mid-May'],
    ['plug-thin-turf', 'window.closes.date', '07-31', 'kstate-calendar', 'through July'],

    ['core', 'window.opens.date', '06-01', 'kstate-coring', 'June to the end of July'],
    ['core', 'window.closes.date', '07-31', 'kstate-coring', 'June to the end of July'],
    ['summer-water', 'apply.water.depth', ['0.5 in', '1 in'], 'ncsu-calendar', '0.5 to 1 inch of water a week'],
    ...grubFigures,
    ['bug-scout', 'window.closes.date', '08-31', 'mu-bugs', 'bugs at work by August'],
    ['winter-annual-barrier', 'window.opens.date', '08-15', 'uark', 'about 15 August; September often too late'],
    ['winter-annual-barrier', 'window.best.air.falls-to', '59 F', 'clemson-fall', 'nights in the upper 50s'],
    ['winter-annual-barrier', 'window.closes.soil.falls-to', '70 F', 'uga-2009', 'germinates once below 70 F'],
    ['large-patch-scout', 'window.opens.date', '09-15', 'kstate-patch', 'treated in mid-September'],
    ...soilFigures,
    ['lime', 'only-if.soil-test.pH.below', 6.0, 'uga-ph', 'zoysiagrass pH 6.0-7.0'],
    ...depthFigures([
      ['summer-annual-barrier', 'window.closes.any-of.1', '4 in', 'ncsu-ag763'],
      ['spring-feed', 'window.opens', '4 in', 'uga-calendar'],
      ['plug-thin-turf', 'window.opens', '4 in', 'uga-calendar'],
      ['summer-annual-barrier', 'window.opens', '2 in', 'wisc'],
      ['summer-annual-barrier', 'if-missed.until', '2 in', 'wisc'],
    ]),
  ],
  within: [
    ...grubWithin,
    ['nitrogen', 'spacing', ['31 d', '49 d'], 'kstate-feed', 'early June and mid-July'],
    ['summer-feed', 'window.opens.after.wait', ['31 d', '49 d'], 'kstate-feed', 'early June and mid-July'],
    ['winter-broadleaf', 'window.best.date', ['03-01', '03-31'], 'kstate-calendar', 'March'],
    ['core', 'window.best.date', ['06-01', '06-30'], 'kstate-calendar', 'coring in June'],
  ],
  unpublished: [
    ...weatherUnpublished(weather),
    ...grubUnpublished,
    ...soilUnpublished,
    ['winter-broadleaf', 'window.opens.date', 'before the March of kstate-calendar, for places that wake earlier'],
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
    ['summer-annual-barrier', ['window.opens.soil.from', 'if-missed.until.soil.from'], 'the rise after midwinter'],
    ['summer-annual-barrier', 'window.opens.not-before', 'a warm week in January is no spring'],
    ['summer-annual-barrier', 'window.best.after.wait', 'a few days to find a calm one'],
    ['summer-annual-barrier', 'window.closes.any-of.0.degree-days.from', 'no start is printed; 1 January is usual'],
    persistence('summer-annual-barrier', 'window.closes.any-of.1', 'holds', 'from'),
    persistenceAndDepth('first-mowing', 'window.opens', 'from'),
    ['first-mowing', 'window.closes.after.wait', 'long enough for any weekend'],
    persistence('spring-feed', 'window.opens', 'holds', 'from'),
    ['spring-feed', ['window.best.after.wait', 'window.closes.after.wait'], 'three weeks from green-up, and a month'],
    [feeds, 'apply.prefer.slow-share', 'slow-release preferred (kstate-feed), no share printed; a third is sold'],
    ['summer-height', ['window.opens.after.wait', 'window.closes.after.wait'], 'once it grows'],
    persistence('plug-thin-turf', 'window.opens', 'holds', 'from'),
    ['plug-thin-turf', 'window.best.after.wait', 'a weekend or so'],
    ['summer-water', ['window.opens.date', 'window.closes.date'], 'before the heat'],
    ['bug-scout', ['window.opens.date', 'window.best.date'], 'some weeks before the damage of August'],
    [
      'summer-feed',
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
      'from memory: 70 F is the usual threshold; Missouri names it in a question to its readers',
    ],
    ['large-patch-scout', 'window.closes.date', 'while the lawn is still green enough to see it'],
  ],
};
