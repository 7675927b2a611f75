/** An active in a record, with its content as the label has it. */
import { expect, test } from 'vitest';
import { activeInWords } from '../../src/emit/record-units.ts';

test('by its share of the weight', () =>
  expect(activeInWords({ name: 'prodiamine', share: 0.0038, gPerL: null }, 'us')).toBe('prodiamine 0.38 %'));
// 4 lb/gal = 4 × 453.592 g in 3.78541 L.
test('by its weight in a litre', () =>
  expect(activeInWords({ name: 'prodiamine', share: null, gPerL: 479.306 }, 'metric')).toBe('prodiamine 479 g/L'));
// 4 lb/gal: 4 × 453.59237 g in 3.785411784 L.
test('and as U.S. labels print it', () =>
  expect(activeInWords({ name: 'prodiamine', share: null, gPerL: 479.306 }, 'us')).toBe('prodiamine 4 lb/gal'));
