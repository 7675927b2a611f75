/** The bench's first table: the dial of simulated spreaders is learned as well as promised. `npm run bench:dial` prints it with others. */
import { describe, expect, test } from 'vitest';
import { FINE, passesOn } from '../../bench/dial-curves.ts';

describe('simulated spreaders, rate = k(s − s0)^p', () => {
  const results = passesOn({ family: 'power', dial: FINE, curves: 500, seed: 1, making: false });
  const pass = (number: number) => results[number - 1];
  test('the first half pass is more than 10 % over in at most 5 %', () =>
    expect(pass(1)?.over10).toBeLessThanOrEqual(0.05));
  test('the third is within 10 % in 90 %', () => expect(pass(3)?.within10).toBeGreaterThanOrEqual(0.9));
  test('the fifth is within 5 % in 80 %', () => expect(pass(5)?.within5).toBeGreaterThanOrEqual(0.8));
  test.each([2, 3, 4, 5])('the range of pass %i holds its share', (number) =>
    expect(pass(number)?.held).toBeGreaterThanOrEqual(0.8),
  );
});
