/** The slips by which figures are changed: another value of the same kind, near or coarse. */
import { expect, test } from 'vitest';
import { slipped } from './slips.ts';

test.each([
  ['10-15', '10-26'],
  ['12-25', '01-05'],
  ['50 F', '54 F'],
  ['10 C', '13 C'],
  ['25%', '45%'],
  ['80%', '60%'],
  ['3 weeks', '6 weeks'],
  ['7 d', '10 d'],
  ['24 h', '31.2 h'],
  [155, 203],
  [0.5, 0.35],
])('%s is misread as %s', (value, other) => expect(slipped(value, 'near')).toBe(other));

test.each([
  ['10-15', '11-15'],
  ['12-25', '01-25'],
  ['01-31', '02-28'],
  ['50 F', '50 C'],
  ['25%', '2.5%'],
  ['3 weeks', '3 d'],
  ['7 d', '7 weeks'],
  ['0 d', '30 d'],
  ['3 in', '3 cm'],
  ['1 lb/1000 sqft', '1 oz/1000 sqft'],
  ['24 h', '240 h'],
  [155, 1550],
])('%s is typed as %s', (value, other) => expect(slipped(value, 'coarse')).toBe(other));
