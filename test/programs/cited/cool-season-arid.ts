/** Figures of programs/cool-season-arid.yaml, typed from the publications; those that it takes over are in its parent's file. */
import type { Cited } from '../cited.ts';

const seeding = ['overseed', 'overseed-tall-fescue'];
const autumn = ['autumn-feed-1', 'autumn-feed-2'];

export const cited: Cited = {
  figures: [
    ['nitrogen', 'yearly.from', '2.5 lb/1000 sqft', 'csu-7202', 'the least of 0.5-1, 1, 1-2'],
    ['nitrogen', 'yearly.to', '4 lb/1000 sqft', 'csu-7202', 'the most of 0.5-1, 1, 1-2'],
    ['nitrogen', 'single.total', '1.0 lb/1000 sqft', 'illinois', '1.0 lb at a time'],
    [['first-mowing', 'last-mowing'], 'apply.mow.height', ['2.5 in', '3 in'], 'csu-mowing', '2.5-3 in all year'],
    ['late-spring-feed', 'window.closes.date', '06-15', 'wsu-east', '15 June'],
    ['late-spring-feed', 'apply.nutrient.N', '1 lb/1000 sqft', 'csu-7202', 'May and June 1 lb'],
    ['billbug-scout', 'window.opens.degree-days.base', '5 C', 'usu-billbug-west', 'degree days over 5 C'],
    ['billbug-scout', 'window.opens.degree-days.from', '01-13', 'usu-billbug-west', 'from 13 January'],
    ['billbug-scout', 'window.opens.degree-days.reaches', [39, 111], 'usu-billbug-west', 'first adults at 39-111'],
    ['billbug-scout', 'window.best.degree-days.base', '5 C', 'usu-billbug-west', 'degree days over 5 C'],
    ['billbug-scout', 'window.best.degree-days.from', '01-13', 'usu-billbug-west', 'from 13 January'],
    ['billbug-scout', 'window.best.degree-days.reaches', [459, 484], 'usu-billbug-west', '30 % of adults at 459-484'],
    [seeding, 'window.opens.frost.before', ['4 weeks', '6 weeks'], 'usu-seed', '4-6 weeks before the first frost'],
    [seeding, 'window.closes.frost.before', ['4 weeks', '6 weeks'], 'usu-seed', '4-6 weeks before the first frost'],
    ['overseed-tall-fescue', 'apply.rate', ['3 lb/1000 sqft', '4 lb/1000 sqft'], 'kstate-fescue', '3-4 lb'],
    ['autumn-feed-1', 'window.best.date', '09-01', 'wsu-east', '1 September'],
    [autumn, 'apply.nutrient.N', '1.0 lb/1000 sqft', 'utah-carbon', '1.0 lb each'],
    ['peak-water', 'window.opens.any-of.0.soil.depth', '4 in', 'nc-turf-council', 'all temperatures at 4 in'],
    ['peak-water', 'window.opens.any-of.0.soil.rises-to', '70 F', 'nc-turf-council', 'warmest useful to roots'],
    ['peak-water', 'apply.water.depth', '2.5 in', 'csu-7199', 'up to 2.5 in a week'],
  ],
  unpublished: [
    ['nitrogen', 'spacing', '4 weeks for the "not more often than monthly" of purdue-fertilizer'],
    ['late-spring-feed', ['window.opens.date', 'window.best.date'], 'after the flush, in the May and June of csu-7202'],
    [['late-spring-feed', 'autumn-feed-1'], 'apply.prefer.slow-share', 'slow-release is asked for without a share'],
    ['billbug-scout', 'window.closes.after.wait', 'from the first adults until past the third of them'],
    [
      seeding,
      [
        'window.opens.frost.first',
        'window.opens.frost.chance',
        'window.closes.frost.first',
        'window.closes.frost.chance',
      ],
      '"expected first frost": 32 F, half of years',
    ],
    [seeding, 'window.best.after.wait', 'a few days to have it done'],
    ['autumn-feed-1', ['window.opens.date', 'window.closes.date'], '"early September" of utah-carbon, with weekends'],
    [
      ['sprinklers-on', 'sprinklers-off'],
      'window.opens.frost.chance',
      'an even chance; the owner watches the forecast for the rest',
    ],
    [
      'sprinklers-on',
      ['window.opens.frost.last', 'window.opens.frost.after', 'window.closes.after.wait'],
      'hard frosts over',
    ],
    [
      'sprinklers-off',
      [
        'window.opens.frost.first',
        'window.opens.frost.before',
        'window.closes.frost.first',
        'window.closes.frost.chance',
        'window.closes.frost.before',
      ],
      'drained before a hard frost can burst a pipe',
    ],
    [
      'peak-water',
      [
        'window.opens.any-of.0.soil.mean',
        'window.opens.any-of.0.soil.from',
        'window.opens.any-of.1.date',
        'window.closes.after.wait',
      ],
      'a week, after spring; before the hottest weeks of any place here',
    ],
  ],
};
