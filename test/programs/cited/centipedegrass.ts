/** Figures of programs/centipedegrass.yaml, typed from the publications. */
import type { Cited } from '../cited.ts';
import {
  barrierFigures,
  grubFigures,
  grubUnpublished,
  soilAt4In,
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
  sprays: ['summer-broadleaf'],
};

export const cited: Cited = {
  figures: [
    ['nitrogen', 'yearly.from', '0.5 lb/1000 sqft', 'clemson-rates', 'centipede 1/2 to 2 pounds'],
    ['nitrogen', 'yearly.to', '2 lb/1000 sqft', 'clemson-rates', 'centipede 1/2 to 2 pounds'],
    ['nitrogen', 'single.total', ['0.5 lb/1000 sqft', '1 lb/1000 sqft'], 'uga-lab', '1/2 to 1 pound at a time'],
    ...weatherFigures(weather),

    ['summer-annual-barrier', 'window.opens.soil.rises-to', ['50 F', '55 F'], 'wisc', 'in place at 50-55 F, top 2 in'],
    ['summer-annual-barrier', 'window.opens.not-before', '02-15', 'uga-south', '15 February to 5 March'],
    ['summer-annual-barrier', 'window.closes.soil.rises-to', '55 F', 'ncsu-ag763', 'germinates at 55 F, 4 in'],
    ['summer-annual-barrier', 'window.closes.not-before', '03-05', 'uga-south', '15 February to 5 March'],
    ['summer-annual-barrier', 'if-missed.until.soil.rises-to', ['60 F', '70 F'], 'wisc', 'germinate at 60-70 F'],
    ...barrierFigures(barriers),

    ['first-mowing', 'window.opens.soil.rises-to', '62 F', 'uga-lincoln', 'no green-up until consistently 62 F'],
    ['first-mowing', 'apply.mow.height', '1 in', 'clemson-calendar', 'around 1 inch before green-up'],
    ['summer-height', 'apply.mow.height', '1.5 in', 'uga-height', 'centipede 1.5 inches'],

    ['spring-feed', 'window.opens.soil.rises-to', '65 F', 'uga-glynn', 'soil at 4 in past 65 F'],
    ['spring-feed', 'window.opens.soil.holds', '2 weeks', 'uga-glynn', 'two full weeks since then'],
    ['spring-feed', 'window.opens.not-before', '05-01', 'clemson-may', 'May'],
    [feeds, 'apply.nutrient.N', '0.5 lb/1000 sqft', 'uga-glynn', 'half a pound each'],
    ['summer-feed', 'window.best.date', '07-15', 'uga-glynn', 'July'],
    ['summer-feed', 'window.closes.not-after', '08-10', 'clemson-may', 'again in August'],
    [
      'summer-feed',
      'window.closes.frost.before',
      ['6 weeks', '8 weeks'],
      'uga-dougherty',
      'six to eight weeks before the average first frost',
    ],

    ['summer-broadleaf', 'window.opens.after.wait', '3 weeks', 'ncsu-calendar', 'not until 3 weeks after green-up'],
    ['summer-broadleaf', 'window.opens.not-before', '05-01', 'ncsu-calendar', 'in May'],
    ['dethatch', 'window.opens.date', '05-20', 'ncsu-calendar', 'late May'],
    ['seed-thin-turf', 'window.opens.soil.rises-to', '70 F', 'seed-trade', 'soil of 70 degrees or better'],
    ['seed-thin-turf', 'window.opens.not-before', '05-01', 'uga-south', 'from May to June'],
    ['seed-thin-turf', 'window.closes.date', '06-30', 'uga-south', 'from May to June'],
    ['seed-thin-turf', 'apply.rate', ['0.25 lb/1000 sqft', '0.5 lb/1000 sqft'], 'uga-south', '1/4 to 1/2 lb'],
    ['summer-water', 'apply.water.depth', '1 in', 'ncsu-calendar', '1 inch of water each week'],
    ...grubFigures,
    ['mole-cricket-scout', 'window.opens.date', '06-20', 'uga-mole-crickets', 'two weeks before 4 July'],
    ['mole-cricket-scout', 'window.best.date', '07-04', 'uga-mole-crickets', '4 July'],
    ['mole-cricket-scout', 'window.closes.date', '07-18', 'uga-mole-crickets', 'two weeks after 4 July'],
    ['spittlebug-scout', 'window.opens.date', '07-01', 'msstate-spittlebugs', 'start checking in July'],
    ['winter-annual-barrier', 'window.best.air.falls-to', '59 F', 'clemson-fall', 'nights in the upper 50s'],
    ['winter-annual-barrier', 'window.closes.soil.falls-to', '70 F', 'uga-2009', 'germinates once below 70 F'],
    ...soilFigures,
    ['lime', 'only-if.soil-test.pH.below', 5.0, 'uga-lab', 'lime if the pH is less than 5.0'],
  ],
  unpublished: [
    ...weatherUnpublished(weather),
    ...grubUnpublished,
    ...soilUnpublished,
    ['nitrogen', 'spacing', 'from May to July, as uga-glynn has it'],
    ['summer-annual-barrier', ['window.opens.soil.depth', 'if-missed.until.soil.depth'], '2 in in whole centimetres'],
    [
      'summer-annual-barrier',
      ['window.opens.soil.mean', 'window.opens.soil.holds', 'if-missed.until.soil.mean'],
      'the publication gives a threshold without its persistence; 5 days and 3 days keep single warm days out',
    ],
    ['summer-annual-barrier', ['window.opens.soil.from', 'if-missed.until.soil.from'], 'the rise after midwinter'],
    ['summer-annual-barrier', 'window.best.after.wait', 'a few days to find a calm one'],
    soilAt4In('summer-annual-barrier', 'window.closes', 'holds', 'from'),
    soilAt4In('first-mowing', 'window.opens', 'from'),
    ['first-mowing', 'window.closes.after.wait', 'long enough for any weekend'],
    ['summer-height', ['window.opens.after.wait', 'window.closes.after.wait'], 'once it grows'],
    soilAt4In('spring-feed', 'window.opens', 'from'),
    ['spring-feed', ['window.best.after.wait', 'window.closes.after.wait'], 'most of May'],
    [feeds, 'apply.prefer.slow-share', 'either will do; a quarter slow evens out the growth'],
    [
      'summer-broadleaf',
      ['window.best.after.wait', 'window.closes.after.wait'],
      'May, or four weeks where spring is late',
    ],
    ['dethatch', 'window.closes.date', 'three weeks from late May'],
    soilAt4In('seed-thin-turf', 'window.opens', 'from'),
    ['seed-thin-turf', 'window.best.after.wait', 'a weekend or so'],
    ['summer-water', ['window.opens.date', 'window.closes.date'], 'before the heat'],
    ['spittlebug-scout', ['window.best.date', 'window.closes.date'], 'until the grown ones of late summer'],
    ['summer-feed', 'window.opens.after.wait', 'from May to July, as uga-glynn has it'],
    [
      'summer-feed',
      ['window.closes.frost.first', 'window.closes.frost.chance'],
      'the average first frost, taken as the middle day of the first 32 F',
    ],
    ['winter-annual-barrier', 'window.opens.date', 'Labor Day (uga-labor-day) is 1 to 7 September'],
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
