/** The search behind the fitted parameters. */
import { expect, test } from 'vitest';
import { nelderMead } from '../accuracy/fit.ts';

// Rosenbrock (1960), Computer Journal 3:175-184: least value 0 at (1, 1), from the start (-1.2, 1) round a bent valley.
test("finds the floor of Rosenbrock's valley", () => {
  const valley = ([x = 0, y = 0]: readonly number[]) => 100 * (y - x * x) ** 2 + (1 - x) ** 2;
  const { x, value } = nelderMead(valley, [-1.2, 1], [0.5, 0.5], 400, 1e-12);
  expect(value).toBeLessThan(1e-9);
  expect(Math.hypot((x[0] ?? 0) - 1, (x[1] ?? 0) - 1)).toBeLessThan(1e-4);
});
