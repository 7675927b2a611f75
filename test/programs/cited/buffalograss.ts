/** Figures of programs/buffalograss.yaml, typed from the publications. */
import type { Cited } from '../cited.ts';
import {
  barrierFigures,
  depthFigures,
  persistence,
  persistenceAndDepth,
  type Weather,
  weatherFigures,
  weatherUnpublished,
} from '../warm-season.ts';

const feeds = ['june-feed', 'july-feed'];
const weather: Weather = {
  granules: [...feeds, 'summer-annual-barrier'],
  withAir: ['summer-annual-barrier'],
  sprays: [],
};

export const cited: Cited = {
  figures: [
    ['nitrogen', 'yearly.to', '2 lb/1000 sqft', 'kstate-feed', 'not more than a total of 2 lb in one season'],
    ['nitrogen', 'single.total', '1 lb/1000 sqft', 'kstate-feed', '1 lb of nitrogen'],
    ...weatherFigures(weather),

    ['winter-broadleaf', 'window.opens.date', '03-01', 'kstate-calendar', 'early enough in March'],
    ['winter-broadleaf', 'apply.actives.2-4-d.compare', ['1 lb/acre', '2 lb/acre'], 'pnw-2-4-d', '2-4 pt of 4 lb/gal'],
    ['winter-broadleaf', 'weather.wind-below', ['3 mph', '8 mph'], 'spray-weather', '3-8 mph'],
    ['winter-broadleaf', 'weather.air.from', '50 F', 'spray-weather', 'days of 50 F or more'],
    ['winter-broadleaf', 'weather.air.to', '75 F', 'spray-weather', 'no 2,4-D above 75 F'],
    ['winter-broadleaf', 'weather.rain-below.in', '24 h', 'spray-weather', '24 dry hours'],

    ['summer-annual-barrier', 'window.opens.soil.rises-to', ['50 F', '55 F'], 'wisc', 'in place at 50-55 F, top 2 in'],
    ['summer-annual-barrier', 'window.closes.soil.rises-to', '55 F', 'ncsu-ag763', 'germinates at 55 F, 4 in'],
    ['summer-annual-barrier', 'window.closes.not-before', '03-18', 'kstate-calendar', 'two weeks before 1 April'],
    ['summer-annual-barrier', 'if-missed.until.soil.rises-to', ['60 F', '70 F'], 'wisc', 'germinate at 60-70 F'],
    ...barrierFigures(['summer-annual-barrier']),

    ['mowing-height', 'window.opens.date', '05-15', 'unl-season', 'grows from mid-May to mid-October'],
    ['mowing-height', 'apply.mow.height', ['3 in', '4 in'], 'unl-calendar', 'at 3.0 to 4.0 inches'],

    ['seed-thin-turf', 'window.opens.soil.rises-to', '60 F', 'bur-soil', 'soil of at least 60 F'],
    ['seed-thin-turf', 'window.opens.not-before', '05-01', 'dcd', 'May or June'],
    ['seed-thin-turf', 'window.closes.date', '06-30', 'dcd', 'May or June'],
    ['seed-thin-turf', 'apply.rate', '2.0 lb/1000 sqft', 'shearman', 'rates tried: 0.51, 1.0, 2.0, 4.1, 8.2 lb'],
    ['seed-thin-turf', 'if-missed.until.date', '07-31', 'csu', 'from August on seedlings are killed by winter'],

    ['june-feed', 'window.opens.soil.rises-to', '62 F', 'uga-lincoln', 'no green-up until consistently 62 F'],
    ['june-feed', 'window.opens.not-before', '06-01', 'kstate-feed', 'early June'],
    ['june-feed', 'window.closes.date', '06-30', 'unl-calendar', 'June'],
    ['june-feed', 'apply.nutrient.N', '1 lb/1000 sqft', 'kstate-feed', '1 lb in early June'],
    ['july-feed', 'window.best.date', '07-15', 'kstate-feed', 'again around mid-July'],
    ['july-feed', 'window.closes.date', '07-31', 'unl-calendar', 'July'],
    ['july-feed', 'apply.nutrient.N', ['0.75 lb/1000 sqft', '1 lb/1000 sqft'], 'unl-calendar', '0.75-1.0 lb in July'],

    ['summer-water', 'apply.water.depth', '1 in', 'water-trade', '1 in every two weeks stays green'],
    ['chinch-bug-scout', 'window.opens.date', '06-01', 'unl-calendar', 'June and July'],
    ['chinch-bug-scout', 'window.closes.date', '07-31', 'unl-calendar', 'June and July'],
    ['soil-sample', 'window.opens.date', '08-01', 'mu-g6954', 'late summer'],
    ...depthFigures([
      ['summer-annual-barrier', 'window.closes', '4 in', 'ncsu-ag763'],
      ['summer-annual-barrier', 'window.opens', '2 in', 'wisc'],
      ['summer-annual-barrier', 'if-missed.until', '2 in', 'wisc'],
    ]),
  ],
  within: [
    ['nitrogen', 'spacing', ['31 d', '49 d'], 'kstate-feed', 'early June and mid-July'],
    ['winter-broadleaf', 'window.closes.not-before', ['03-01', '03-31'], 'kstate-calendar', 'March'],
    [
      'winter-broadleaf',
      'window.closes.not-after',
      ['03-31', '05-10'],
      'unl-season',
      'it grows from mid-May; the March of kstate-calendar is for Kansas',
    ],
    ['june-feed', 'window.opens.not-after', ['06-01', '06-30'], 'unl-calendar', 'June'],
    ['june-feed', 'window.best.after.wait', ['0 d', '9 d'], 'kstate-feed', 'early June, from the first'],
    ['july-feed', 'window.opens.date', ['07-01', '07-31'], 'unl-calendar', 'July'],
    ['chinch-bug-scout', 'window.best.date', ['06-01', '07-31'], 'unl-calendar', 'June and July'],
  ],
  unpublished: [
    ...weatherUnpublished(weather),
    ['winter-broadleaf', 'weather.rain-below.depth', 'what counts as dry'],
    ['winter-broadleaf', 'window.best.after.wait', 'two weeks, for a day that is warm enough'],
    [
      'winter-broadleaf',
      ['depth', 'mean', 'rises-to', 'holds', 'from'].map((key) => `window.closes.soil.${key}`),
      'north of Kansas it sleeps as long as the soil is cold; nobody prints how cold',
    ],
    [
      'summer-annual-barrier',
      ['window.opens.soil.mean', 'window.opens.soil.holds', 'if-missed.until.soil.mean'],
      'the publication gives a threshold without its persistence; 5 days and 3 days keep single warm days out',
    ],
    ['summer-annual-barrier', ['window.opens.soil.from', 'if-missed.until.soil.from'], 'the rise after winter'],
    ['summer-annual-barrier', 'window.opens.not-before', 'a warm week in February is no spring on the plains'],
    ['summer-annual-barrier', 'window.best.after.wait', 'a few days to find a calm one'],
    persistence('summer-annual-barrier', 'window.closes', 'holds', 'from'),
    ['mowing-height', 'window.closes.date', 'a month from mid-May'],
    persistenceAndDepth('seed-thin-turf', 'window.opens', 'from'),
    ['seed-thin-turf', 'window.best.after.wait', 'a weekend or so'],
    persistenceAndDepth('june-feed', 'window.opens', 'from'),
    [feeds, 'apply.prefer.slow-share', 'slow-release preferred (kstate-feed), 25 to 50 % (unl-calendar)'],
    ['summer-water', ['window.opens.date', 'window.closes.date'], 'before the heat'],
    ['soil-sample', 'window.closes.date', 'before winter'],
  ],
};
