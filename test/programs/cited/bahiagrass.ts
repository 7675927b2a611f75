/** Figures of programs/bahiagrass.yaml, typed from the publications. */
import type { Cited } from '../cited.ts';
import {
  barrierFigures,
  depthFigures,
  persistence,
  persistenceAndDepth,
  soilFigures,
  soilUnpublished,
  type Weather,
  weatherFigures,
  weatherUnpublished,
} from '../warm-season.ts';

const feeds = ['spring-feed', 'late-summer-feed'];
const weather: Weather = {
  granules: [...feeds, 'summer-annual-barrier', 'autumn-potash'],
  withAir: ['summer-annual-barrier'],
  sprays: ['summer-broadleaf'],
};

export const cited: Cited = {
  figures: [
    ['nitrogen', 'yearly.from', '2 lb/1000 sqft', 'uf-fyn', 'bahiagrass, north: 2-3'],
    ['nitrogen', 'yearly.to', '3 lb/1000 sqft', 'uf-fyn', 'bahiagrass, north: 2-3'],
    ['nitrogen', 'single.total', '1.0 lb/1000 sqft', 'uf-enh73', '1 pound of nitrogen per application'],
    ...weatherFigures(weather),

    ['summer-annual-barrier', 'window.opens.soil.rises-to', ['50 F', '55 F'], 'wisc', 'in place at 50-55 F, top 2 in'],
    ['summer-annual-barrier', 'window.opens.not-before', '02-01', 'uf-enh73', '1 February in south Florida'],
    ['summer-annual-barrier', 'window.closes.soil.rises-to', '55 F', 'ncsu-ag763', 'germinates at 55 F, 4 in'],
    ['summer-annual-barrier', 'window.closes.not-before', '03-01', 'uf-enh73', '1 March in north Florida'],
    ['summer-annual-barrier', 'if-missed.until.soil.rises-to', ['60 F', '70 F'], 'wisc', 'germinate at 60-70 F'],
    ...barrierFigures(['summer-annual-barrier']),

    ['spring-feed', 'window.opens.soil.rises-to', '65 F', 'uga-calendar', 'consistently above 65 F at 4 in'],
    ['spring-feed', 'window.opens.not-before', '04-01', 'lsu', 'early to mid-April, not March'],
    [feeds, 'apply.nutrient.N', '1 lb/1000 sqft', 'uf-enh73', '1 pound of nitrogen per application'],
    ['late-summer-feed', 'window.closes.not-after', '10-02', 'uf-orange', 'now, on 2 October'],
    [
      'late-summer-feed',
      'window.closes.frost.before',
      ['6 weeks', '8 weeks'],
      'uga-dougherty',
      'six to eight weeks before the average first frost',
    ],

    ['mowing-height', 'window.opens.soil.rises-to', '62 F', 'uga-lincoln', 'no green-up until consistently 62 F'],
    ['mowing-height', 'apply.mow.height', ['3 in', '4 in'], 'uf-charlotte', 'between 3 to 4 inches'],
    ['seed-thin-turf', 'window.opens.soil.rises-to', '70 F', 'bahia-seed', 'sprouts above 70 degrees'],
    ['seed-thin-turf', 'apply.rate', ['7 lb/1000 sqft', '10 lb/1000 sqft'], 'bahia-seed', '7 to 10 lbs.'],
    ['seed-thin-turf', 'if-missed.until.date', '08-31', 'bahia-seed', 'March through early September'],
    ['summer-broadleaf', 'window.opens.date', '05-01', 'uf-enh73', 'in May as needed'],
    ['summer-broadleaf', 'window.closes.date', '05-31', 'uf-enh73', 'in May as needed'],
    ['summer-water', 'apply.water.depth', '0.75 in', 'uf-orange', 'three-quarters of an inch'],
    ['mole-cricket-scout', 'window.opens.date', '06-20', 'uga-mole-crickets', 'two weeks before 4 July'],
    ['mole-cricket-scout', 'window.best.date', '07-04', 'uga-mole-crickets', '4 July'],
    ['mole-cricket-scout', 'window.closes.date', '07-18', 'uga-mole-crickets', 'two weeks after 4 July'],
    ...soilFigures.filter(([step]) => step !== 'lime'),
    ...depthFigures([
      ['summer-annual-barrier', 'window.closes', '4 in', 'ncsu-ag763'],
      ['spring-feed', 'window.opens', '4 in', 'uga-calendar'],
      ['summer-annual-barrier', 'window.opens', '2 in', 'wisc'],
      ['summer-annual-barrier', 'if-missed.until', '2 in', 'wisc'],
    ]),
  ],
  within: [
    [
      'summer-annual-barrier',
      'window.best.after.wait',
      ['0 d', '14 d'],
      'uf-enh73',
      '1 February in the south, 15 February in the center',
    ],
    [
      'seed-thin-turf',
      ['window.opens.not-before', 'window.closes.date'],
      ['03-01', '09-10'],
      'bahia-seed',
      'March through early September',
    ],
  ],
  unpublished: [
    ...weatherUnpublished(weather),
    ...soilUnpublished.filter(([step]) => step !== 'lime'),
    ['nitrogen', 'spacing', 'two feeds, a summer apart'],
    [
      'summer-annual-barrier',
      ['window.opens.soil.mean', 'window.opens.soil.holds', 'if-missed.until.soil.mean'],
      'the publication gives a threshold without its persistence; 5 days and 3 days keep single warm days out',
    ],
    ['summer-annual-barrier', ['window.opens.soil.from', 'if-missed.until.soil.from'], 'the rise after midwinter'],
    persistence('summer-annual-barrier', 'window.closes', 'holds', 'from'),
    persistence('spring-feed', 'window.opens', 'holds', 'from'),
    ['spring-feed', ['window.best.after.wait', 'window.closes.after.wait'], 'two mowings from green-up, and a month'],
    [feeds, 'apply.prefer.slow-share', 'slow-release in late summer (uf-enh73), no share printed; a third is sold'],
    persistenceAndDepth('mowing-height', 'window.opens', 'from'),
    ['mowing-height', 'window.closes.after.wait', 'long enough for any weekend'],
    persistenceAndDepth('seed-thin-turf', 'window.opens', 'from'),
    ['seed-thin-turf', ['window.best.after.wait'], 'early summer, best with the rains (uf-pinellas)'],
    ['summer-broadleaf', 'window.best.after.wait', 'a weekend or so'],
    ['summer-water', ['window.opens.date', 'window.closes.date'], 'before the heat'],
    ['late-summer-feed', ['window.opens.date', 'window.best.after.wait'], 'late summer (uf-enh73)'],
    [
      'late-summer-feed',
      ['window.closes.frost.first', 'window.closes.frost.chance'],
      'the average first frost, taken as the middle day of the first 32 F',
    ],
  ],
};
