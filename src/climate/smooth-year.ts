import { civil, type Day, partsOf } from '../base/day.ts';
import type { Monthly } from '../model/normals.ts';

/**
 * A continuous course through the year that keeps twelve monthly means.
 *
 * Straight lines between values k at the middle of each month; the mean over month m is then
 * 0.75 k(m) + 0.125 (k(m-1) + k(m+1)), months taken as equally long, and k is solved from it by repeated correction
 * (the error at least halves each time). Not smooth in its slope: it bends at mid-months.
 *
 * @example smoothYear([5, 5, 5, 5, 5, 5, 5, 5, 5, 5, 5, 5])(0) //=> 5
 */
export function smoothYear(monthly: Monthly): (day: Day) => number {
  const knots = [...monthly];
  const knot = (month: number) => knots[(month + 12) % 12] as number;
  for (let i = 0; i < 40; i++) {
    const means = knots.map((k, m) => 0.75 * k + 0.125 * (knot(m - 1) + knot(m + 1)));
    means.forEach((mean, m) => {
      knots[m] = (knots[m] as number) + (monthly[m] as number) - mean;
    });
  }
  return (day) => {
    const { year, month, day: dayOfMonth } = partsOf(day);
    const fromMiddle = (dayOfMonth - 0.5) / (civil(year, month + 1, 1) - civil(year, month, 1)) - 0.5;
    const here = knot(month - 1);
    const other = knot(fromMiddle < 0 ? month - 2 : month);
    return here + (other - here) * Math.abs(fromMiddle);
  };
}
