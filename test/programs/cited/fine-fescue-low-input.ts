/** Figures of programs/fine-fescue-low-input.yaml, typed from the publications; those that it takes over are in its parent's file. */
import type { Cited } from '../cited.ts';

export const cited: Cited = {
  figures: [
    ['nitrogen', 'yearly.from', '1 lb/1000 sqft', 'va-fine', 'fine fescue 1-2 lb a year'],
    ['nitrogen', 'yearly.to', '2 lb/1000 sqft', 'va-fine', 'fine fescue 1-2 lb a year'],
    ['nitrogen', 'single.total', ['0.5 lb/1000 sqft', '0.9 lb/1000 sqft'], 'va-fine', '0.5-0.9 lb at a time'],
    [['first-mowing', 'last-mowing'], 'apply.mow.height', ['2.5 in', '4 in'], 'umn-fine', 'mow at 2.5-4 in'],
    ['summer-height', 'apply.mow.height', ['2.5 in', '4 in'], 'umn-fine', 'mow at 2.5-4 in'],
    ['late-spring-feed', 'apply.nutrient.N', ['0.5 lb/1000 sqft', '0.9 lb/1000 sqft'], 'va-fine', '0.5-0.9 lb'],
    ['autumn-feed-1', 'apply.nutrient.N', ['0.5 lb/1000 sqft', '0.9 lb/1000 sqft'], 'va-fine', '0.5-0.9 lb'],
    ['overseed', 'window.opens.date', '08-15', 'purdue-seed', '15 August to 15 September in the north'],
    ['overseed', 'window.closes.frost.before', ['4 weeks', '6 weeks'], 'usu-seed', '4-6 weeks before the first frost'],
    ['overseed', 'window.closes.not-after', '09-15', 'umn-protocol', 'planted by 15 September'],
    ['overseed', 'apply.rate', '2.5 lb/1000 sqft', 'seed-trade', 'half of 5 lb'],
    ['lime', 'only-if.soil-test.pH.below', 5.5, 'umd-poor', 'growth suffers below 5.5'],
  ],
  unpublished: [
    ['nitrogen', 'spacing', '4 weeks for the "not more often than monthly" of purdue-fertilizer'],
    [
      ['first-mowing', 'last-mowing'],
      ['window.opens.soil.depth', 'window.opens.soil.mean', 'window.opens.soil.from', 'window.closes.after.wait'],
      'a week of soil temperature, then some weekends',
    ],
    ['first-mowing', 'window.opens.soil.rises-to', 'it grows slowly, so later than bluegrass'],
    [
      'last-mowing',
      ['window.opens.soil.falls-to', 'window.opens.not-after'],
      'growth is slow; before winter all the same',
    ],
    [
      ['late-spring-feed', 'autumn-feed-1'],
      'apply.prefer.slow-share',
      'Virginia asks for slow-release without a share',
    ],
    [
      'autumn-feed-1',
      ['window.opens.date', 'window.best.date', 'window.closes.date'],
      'days for the "late August to late September" of umn-windows; best about Labor Day',
    ],
    ['overseed', 'window.best.after.wait', 'a weekend or so'],
    [
      'overseed',
      ['window.closes.frost.first', 'window.closes.frost.chance'],
      '"expected first frost": 32 F, half of years',
    ],
  ],
};
