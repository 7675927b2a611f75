/** Figures of programs/bermudagrass-warm-humid.yaml, typed from the publications; the rest is bermudagrass-transition's. */
import type { Cited } from '../cited.ts';
import { depthFigures, persistence, persistenceAndDepth } from '../warm-season.ts';

export const cited: Cited = {
  figures: [
    ['nitrogen', 'yearly.from', '2 lb/1000 sqft', 'va-dcr', 'bermudagrass 2-4 lb a year'],
    ['nitrogen', 'yearly.to', '4 lb/1000 sqft', 'va-dcr', 'bermudagrass 2-4 lb a year'],
    ['nitrogen', 'single.total', '1.0 lb/1000 sqft', 'va-dcr', 'warm-season grasses 1.0 lb a month'],
    ['nitrogen', 'spacing', '4 weeks', 'kstate-feed', 'about 4 weeks apart'],

    ['summer-annual-barrier', 'window.opens.soil.rises-to', '50 F', 'az-spring', 'when the soil at 2.0 in is at 50 F'],
    ['summer-annual-barrier', 'window.best.date', '02-20', 'uark', '20 February in the south of Arkansas'],
    ['summer-annual-barrier', 'window.closes.soil.rises-to', '55 F', 'ncsu-ag763', 'germinates at 55 F, 4 in'],
    ['summer-annual-barrier', 'window.closes.not-before', '03-05', 'uga-south', '15 February to 5 March'],
    ['first-mowing', 'window.opens.soil.rises-to', '62 F', 'uga-lincoln', 'no green-up until consistently 62 F'],

    ['spring-feed', 'window.opens.soil.rises-to', '65 F', 'uga-calendar', 'consistently above 65 F at 4 in'],
    ['spring-feed', 'window.opens.not-before', '04-01', 'lsu', 'early to mid-April, not March'],
    [['summer-feed', 'late-summer-feed'], 'window.opens.after.wait', '4 weeks', 'kstate-feed', 'about 4 weeks apart'],
    [
      ['summer-feed', 'late-summer-feed'],
      'window.best.after.wait',
      ['6 weeks', '8 weeks'],
      'uga-evans',
      'every 6 to 8 weeks',
    ],
    ['late-summer-feed', 'window.closes.not-after', '08-15', 'uga-evans', 'to mid-August'],
    [
      'late-summer-feed',
      'window.closes.frost.before',
      ['6 weeks', '8 weeks'],
      'uga-dougherty',
      'six to eight weeks before the average first frost',
    ],

    ['seed-thin-turf', 'window.opens.soil.rises-to', '65 F', 'uga-calendar', 'planting above 65 F at 4 in'],
    ['seed-thin-turf', 'window.opens.not-before', '05-01', 'uga-south', 'from May to June'],
    ['seed-thin-turf', 'window.closes.date', '06-30', 'uga-south', 'from May to June'],

    ['winter-annual-barrier', 'window.best.air.falls-to', '59 F', 'clemson-fall', 'nights in the upper 50s'],
    ['winter-annual-barrier', 'window.closes.soil.falls-to', '70 F', 'uga-2009', 'germinates once below 70 F'],
    ['grub-preventer', 'weather.wind-below', '5 mph', 'granule-weather', 'wind below 5 mph with a spinner'],
    ['mole-cricket-scout', 'window.opens.date', '06-20', 'uga-mole-crickets', 'two weeks before 4 July'],
    ['mole-cricket-scout', 'window.best.date', '07-04', 'uga-mole-crickets', '4 July'],
    ['mole-cricket-scout', 'window.closes.date', '07-18', 'uga-mole-crickets', 'two weeks after 4 July'],

    ['winter-ryegrass', 'window.opens.air.falls-to', ['80 F', '85 F'], 'az-overseed', 'days of 80-85 F'],
    ['winter-ryegrass', 'window.opens.not-before', '10-01', 'az-overseed', 'October'],
    ['winter-ryegrass', 'window.closes.date', '10-31', 'az-overseed', 'October'],
    ['winter-ryegrass', 'apply.rate', ['8 lb/1000 sqft', '10 lb/1000 sqft'], 'desert-overseed', '8 to 10 pounds'],
    ...depthFigures([
      ['summer-annual-barrier', 'window.closes', '4 in', 'ncsu-ag763'],
      ['spring-feed', 'window.opens', '4 in', 'uga-calendar'],
      ['seed-thin-turf', 'window.opens', '4 in', 'uga-calendar'],
      ['summer-annual-barrier', 'window.opens', '2 in', 'az-spring'],
    ]),
  ],
  within: [
    [
      'summer-feed',
      'window.closes.date',
      ['06-01', '07-18'],
      'kstate-feed',
      'from June to four weeks before the last, which is not after 15 August',
    ],
    ['winter-annual-barrier', 'window.opens.date', ['09-01', '09-07'], 'uga-labor-day', 'Labor Day'],
    ['winter-ryegrass', 'window.opens.not-after', ['10-01', '10-31'], 'az-overseed', 'ryegrass in October'],
  ],
  unpublished: [
    [
      'winter-broadleaf',
      ['window.opens.date', 'window.best.after.wait', 'window.closes.date'],
      'a month earlier than the March of kstate-calendar: the grass wakes a month earlier',
    ],
    [
      'summer-annual-barrier',
      ['window.opens.soil.mean', 'window.opens.soil.holds', 'window.opens.soil.from'],
      'the publication gives a threshold without its persistence; the rise after midwinter',
    ],
    ['summer-annual-barrier', 'window.opens.not-before', 'the earliest of az-spring, Yuma'],
    persistence('summer-annual-barrier', 'window.closes', 'holds', 'from'),
    persistenceAndDepth('first-mowing', 'window.opens', 'from'),
    ['first-mowing', 'window.closes.after.wait', 'long enough for any weekend'],
    persistence('spring-feed', 'window.opens', 'holds', 'from'),
    ['spring-feed', ['window.best.after.wait', 'window.closes.after.wait'], 'two mowings from green-up, and a month'],
    persistence('seed-thin-turf', 'window.opens', 'holds', 'from'),
    ['seed-thin-turf', 'window.best.after.wait', 'a weekend or so'],
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
      'grub-preventer',
      ['weather.rain-below.depth', 'weather.rain-below.in'],
      'common practice: no heavy rain within a day',
    ],
    ['winter-ryegrass', ['window.opens.air.mean', 'window.opens.air.from'], 'a week of days'],
    ['winter-ryegrass', 'window.best.after.wait', 'a weekend or so'],
  ],
};
