/** Figures of programs/tall-fescue-transition.yaml, typed from the publications. */
import type { Cited } from '../cited.ts';

const granules = [
  'late-winter-feed',
  'summer-annual-barrier',
  'grub-preventer',
  'winter-annual-barrier',
  'autumn-feed-1',
  'autumn-feed-2',
  'lime',
];
const barriers = ['summer-annual-barrier', 'winter-annual-barrier'];

export const cited: Cited = {
  figures: [
    ['nitrogen', 'yearly.from', '2 lb/1000 sqft', 'va-dcr', 'tall fescue 2-3.5 lb a year'],
    ['nitrogen', 'yearly.to', '3.5 lb/1000 sqft', 'va-dcr', 'tall fescue 2-3.5 lb a year'],
    ['nitrogen', 'single.total', '0.9 lb/1000 sqft', 'md-nj', 'at most 0.9 lb at a time'],
    ['nitrogen', 'single.quick', '0.7 lb/1000 sqft', 'md-nj', 'of it at most 0.7 soluble'],

    ['late-winter-feed', 'window.opens.not-before', '02-14', 'ncsu-macon', "about Valentine's Day"],
    ['late-winter-feed', 'window.opens.soil.rises-to', '40 F', 'nc-turf-council', 'hardly any growth at 40 F'],
    ['late-winter-feed', 'window.closes.date', '03-15', 'ncsu-macon', 'none after 15 March'],
    ['late-winter-feed', 'apply.nutrient.N', ['0.5 lb/1000 sqft', '1.0 lb/1000 sqft'], 'ncsu-macon', '0.5-1.0 lb'],
    [granules, 'weather.wind-below', '5 mph', 'granule-weather', 'wind below 5 mph with a spinner'],

    ['first-mowing', 'window.opens.not-before', '03-01', 'ncsu-calendar', 'the season of mowing begins with March'],

    ['summer-annual-barrier', 'window.opens.soil.rises-to', ['50 F', '55 F'], 'wisc', 'in place at 50-55 F, top 2 in'],
    ['summer-annual-barrier', 'window.closes.any-of.0.degree-days.base', '50 F', 'bygl', 'degree days over 50 F'],
    ['summer-annual-barrier', 'window.closes.any-of.0.degree-days.reaches', 155, 'bygl', 'first seedling, smooth'],
    ['summer-annual-barrier', 'window.closes.any-of.1.soil.rises-to', '55 F', 'ncsu-ag763', 'germinates at 55 F, 4 in'],
    ['summer-annual-barrier', 'if-missed.until.soil.rises-to', ['60 F', '70 F'], 'wisc', 'germinate at 60-70 F'],
    [barriers, 'apply.actives.prodiamine.compare', '0.75 lb/acre', 'uark', 'prodiamine typically 0.75 lb/acre'],
    [barriers, 'water-in.within', '7 d', 'uark', 'water within 7 days'],
    ['seedling-scout', 'window.opens.degree-days.base', '50 F', 'bygl', 'degree days over 50 F'],
    ['seedling-scout', 'window.opens.degree-days.reaches', 155, 'bygl', 'first seedling of smooth crabgrass'],
    ['seedling-scout', 'window.best.degree-days.base', '50 F', 'bygl', 'degree days over 50 F'],
    ['seedling-scout', 'window.best.degree-days.reaches', 211, 'bygl', 'first seedling of large crabgrass'],

    ['summer-height', 'window.opens.any-of.0.soil.rises-to', '70 F', 'nc-turf-council', 'warmest useful to roots'],
    ['summer-height', 'window.opens.any-of.1.date', '06-01', 'ncsu-calendar', '3.5 in from June'],
    ['summer-height', 'apply.mow.height', '3.5 in', 'ncsu-calendar', 'June to August 3.5 in'],

    ['grub-preventer', 'window.opens.date', '07-01', 'ncsu-grubs', 'early July'],
    ['grub-preventer', 'window.closes.date', '08-14', 'ncsu-grubs', 'before 15 August'],
    ['grub-preventer', 'water-in.depth', ['0.5 in', '1 in'], 'uky-grubs', '1/2-1 in at once'],
    ['soil-sample', 'window.opens.date', '08-01', 'mu-g6954', 'late summer'],

    ['winter-annual-barrier', 'window.opens.date', '08-15', 'uark', 'about 15 August; September often too late'],
    ['winter-annual-barrier', 'window.closes.soil.falls-to', '70 F', 'uga-2009', 'germinates once below 70 F'],

    ['overseed', 'window.opens.any-of.0.soil.falls-to', ['60 F', '75 F'], 'nc-turf-council', 'shoots best 60-75 F'],
    ['overseed', 'window.opens.any-of.0.not-before', '08-25', 'kstate-seed', '25 August to 10 October'],
    ['overseed', 'window.closes.date', '10-10', 'kstate-seed', '25 August to 10 October'],
    ['overseed', 'apply.rate', ['3 lb/1000 sqft', '4 lb/1000 sqft'], 'kstate-seed', '3-4 lb into standing turf'],

    ['autumn-feed-1', 'window.opens.soil.falls-to', ['60 F', '75 F'], 'nc-turf-council', 'shoots best 60-75 F'],
    ['autumn-feed-1', 'window.best.date', '09-15', 'ncsu-caldwell', 'mid-September'],
    ['autumn-feed-1', 'apply.prefer.slow-share', ['25%', '50%'], 'purdue-fall', 'September: 25-50 % slow-release'],

    ['autumn-broadleaf', 'window.closes.air.falls-to', '50 F', 'purdue-broadleaf', 'while highs stay at 50 F or more'],
    ['autumn-broadleaf', 'window.closes.not-after', '11-30', 'ncsu-calendar', 'September to November'],
    [
      'autumn-broadleaf',
      'apply.actives.2-4-d.compare',
      ['1 lb/acre', '2 lb/acre'],
      'pnw-2-4-d',
      '2-4 pt/acre of 4 lb/gal',
    ],
    ['autumn-broadleaf', 'weather.wind-below', ['3 mph', '8 mph'], 'spray-weather', '3-8 mph'],
    ['autumn-broadleaf', 'weather.air.from', '50 F', 'spray-weather', 'days of 50 F or more'],
    ['autumn-broadleaf', 'weather.air.to', '85 F', 'spray-weather', 'from 85 F an amine, not an ester'],
    ['autumn-broadleaf', 'weather.rain-below.in', '24 h', 'spray-weather', '24 dry hours'],

    ['lime', 'only-if.soil-test.pH.below', 6.0, 'umd-lime', 'best pH 6.0-6.8'],
    ['lime', 'apply.rate', '50 lb/1000 sqft', 'umd-lime', 'at most 50 lb at a time'],
    ['lime', 'apply.spacing', '26 weeks', 'umd-lime', 'the rest after 6 months'],
    ['last-mowing', 'window.closes.soil.falls-to', '40 F', 'nc-turf-council', 'hardly any growth at 40 F'],
  ],
  within: [
    [
      ['late-winter-feed', 'autumn-feed-1', 'last-mowing'],
      'window.opens.soil.depth',
      ['3.9 in', '4.1 in'],
      'nc-turf-council',
      'at 4 in',
    ],
    ['last-mowing', 'window.closes.soil.depth', ['3.9 in', '4.1 in'], 'nc-turf-council', 'at 4 in'],
    ['first-mowing', 'window.opens.soil.depth', ['3.9 in', '4.1 in'], 'nc-turf-council', 'at 4 in'],
    [
      ['summer-height', 'overseed'],
      'window.opens.any-of.0.soil.depth',
      ['3.9 in', '4.1 in'],
      'nc-turf-council',
      'at 4 in',
    ],
    [
      'summer-annual-barrier',
      ['window.opens.soil.depth', 'if-missed.until.soil.depth'],
      ['1.9 in', '2.1 in'],
      'wisc',
      'the top 2 in',
    ],
    ['summer-annual-barrier', 'window.closes.any-of.1.soil.depth', ['3.9 in', '4.1 in'], 'ncsu-ag763', 'at 4 in'],

    ['nitrogen', 'spacing', ['4 weeks', '31 d'], 'purdue-fertilizer', 'not more often than monthly'],
    ['late-winter-feed', 'window.best.after.wait', ['0 d', '29 d'], 'ncsu-macon', "from Valentine's Day to 15 March"],
    [
      'first-mowing',
      'window.opens.soil.rises-to',
      ['40 F', '60 F'],
      'nc-turf-council',
      'hardly any growth at 40 F, shoots best from 60 F',
    ],
    ['first-mowing', 'apply.mow.height', ['2.5 in', '3.5 in'], 'kstate-lawn', 'tall fescue at 2.5-3.5 in'],
    ['grub-preventer', 'window.best.date', ['07-01', '07-20'], 'uky-grubs', 'early to mid July'],
    [
      'aerate',
      ['window.opens.date', 'window.best.date'],
      ['08-11', '10-20'],
      'umn-windows',
      'mid-August to mid-October',
    ],
    ['aerate', 'window.closes.date', ['09-01', '09-30'], 'kstate-lawn', 'September'],
    [
      'winter-annual-barrier',
      'window.closes.not-after',
      ['08-15', '09-30'],
      'uark',
      'about 15 August; September is often too late, and October is past it',
    ],
    ['overseed', 'window.opens.any-of.1.date', ['08-25', '09-14'], 'kstate-seed', 'best within a week of Labor Day'],
    ['summer-height', 'window.closes.date', ['06-01', '06-30'], 'ncsu-calendar', 'at 3.5 in from June on'],
    ['autumn-feed-1', 'window.closes.date', ['09-01', '09-30'], 'purdue-fall', 'September'],
    ['autumn-feed-1', 'window.opens.not-before', ['09-01', '09-10'], 'kstate-lawn', 'early September'],
    ['autumn-feed-1', 'window.opens.not-after', ['09-11', '09-20'], 'ncsu-caldwell', 'mid-September'],
    [
      'autumn-feed-1',
      'apply.nutrient.N',
      ['0.75 lb/1000 sqft', '1 lb/1000 sqft'],
      'purdue-fall',
      'in September 0.75-1.0 lb; 0.9 is what md-nj allows',
    ],
    [
      'autumn-broadleaf',
      ['window.opens.date', 'window.best.date'],
      ['09-01', '11-30'],
      'ncsu-calendar',
      'September to November; after three mowings of seedlings',
    ],
    ['autumn-feed-2', 'window.closes.date', ['11-01', '11-20'], 'purdue-fall', 'early to mid November'],
    [
      'autumn-feed-2',
      'apply.nutrient.N',
      ['0.5 lb/1000 sqft', '1 lb/1000 sqft'],
      'purdue-fall',
      'the late feed 0.5-1.0 lb; 0.7 is the soluble that md-nj allows',
    ],
    [
      'last-mowing',
      'window.opens.soil.falls-to',
      ['40 F', '60 F'],
      'nc-turf-council',
      'shoots best down to 60 F, hardly any growth at 40 F',
    ],
    [
      'last-mowing',
      ['window.opens.not-before', 'window.opens.not-after'],
      ['11-01', '11-30'],
      'kstate-lawn',
      'the last mowing in November',
    ],
    ['last-mowing', 'apply.mow.height', ['2.5 in', '3.5 in'], 'kstate-lawn', 'tall fescue at 2.5-3.5 in'],
  ],
  unpublished: [
    ['late-winter-feed', ['window.opens.soil.mean', 'window.opens.soil.from'], 'a week; after midwinter'],
    [granules, ['weather.rain-below.depth', 'weather.rain-below.in'], 'common practice: no heavy rain within a day'],
    [[...barriers, 'grub-preventer'], ['weather.air.from', 'weather.air.to'], 'common practice: 40-90 F'],
    ['late-winter-feed', 'apply.prefer.slow-share', 'as in autumn; the publication names no share'],

    [
      'first-mowing',
      ['window.opens.soil.mean', 'window.opens.soil.from'],
      'a week of warmer days before there is something to cut',
    ],
    ['first-mowing', 'window.closes.after.wait', 'long enough for any weekend'],

    [
      'summer-annual-barrier',
      [
        'window.opens.soil.mean',
        'window.opens.soil.holds',
        'window.closes.any-of.1.soil.mean',
        'window.closes.any-of.1.soil.holds',
        'if-missed.until.soil.mean',
      ],
      'the publications give a threshold without its persistence; 5 days and 3 days keep single warm days out',
    ],
    [
      'summer-annual-barrier',
      ['window.opens.soil.from', 'window.closes.any-of.1.soil.from', 'if-missed.until.soil.from'],
      'from winter on, so that only the rise in spring counts',
    ],
    ['summer-annual-barrier', 'window.opens.not-before', 'a warm week in early February is no spring'],
    ['summer-annual-barrier', 'window.best.after.wait', 'a few days to find a calm one'],
    [
      ['summer-annual-barrier'],
      'window.closes.any-of.0.degree-days.from',
      'the publication prints no start; 1 January is usual',
    ],
    ['summer-annual-barrier', 'window.closes.not-after', 'latest spring of any place in the transition zone'],
    [
      'seedling-scout',
      ['window.opens.degree-days.from', 'window.best.degree-days.from'],
      'the publication prints no start; 1 January is usual',
    ],
    ['seedling-scout', 'window.closes.after.wait', 'seedlings are easily pulled for about three weeks'],

    ['summer-height', ['window.opens.any-of.0.soil.mean', 'window.opens.any-of.0.soil.from'], 'a week, after spring'],
    ['grub-preventer', 'water-in.within', 'a day for the "at once" of uky-grubs'],
    ['soil-sample', 'window.closes.date', 'before lime and the first autumn feed'],

    ['winter-annual-barrier', 'window.best.after.wait', 'a weekend or so'],
    [
      'winter-annual-barrier',
      ['window.closes.soil.depth', 'window.closes.soil.mean', 'window.closes.soil.holds', 'window.closes.soil.from'],
      'the publication states no depth and no persistence',
    ],

    ['overseed', ['window.opens.any-of.0.soil.mean', 'window.opens.any-of.0.soil.from'], 'the fall after midsummer'],
    ['overseed', 'window.best.after.wait', 'a weekend or so'],

    ['autumn-feed-1', ['window.opens.soil.mean', 'window.opens.soil.from'], 'the fall after midsummer'],

    [
      'autumn-broadleaf',
      ['window.closes.air.mean', 'window.closes.air.from'],
      'a week of highs; the publication gives none',
    ],
    ['autumn-broadleaf', 'weather.rain-below.depth', 'what counts as dry'],

    [
      'autumn-feed-2',
      ['window.opens.after.wait', 'window.best.after.wait'],
      'more than monthly, and with the first feed in mid-September best early in November',
    ],
    ['lime', ['window.opens.date', 'window.closes.date'], 'open ground, and winter to work it in'],
    ['last-mowing', ['window.opens.soil.mean', 'window.opens.soil.from'], 'a week, after summer'],
    [
      'last-mowing',
      ['window.closes.soil.mean', 'window.closes.soil.from', 'window.closes.not-after'],
      'a week; before the frost stays',
    ],
  ],
};
