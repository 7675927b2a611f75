import { formatDay } from '../../base/day.ts';
import type { Display } from '../../base/display.ts';
import type { TestedArea } from '../soil-test/tested.ts';

const NAMES = { lime: 'lime', P2O5: 'phosphate (P2O5)', K2O: 'potash (K2O)' } as const;

/** What a plan says of soil tests. */
export const soilTestWords = {
  /** What the test asks for, what it has had, and what is left for later. @param next The first day of the next part. */
  tested: (areas: readonly string[], one: TestedArea, next: number | null, display: Display) => {
    const { what, test, by, asked, done, others, left, acidity } = one;
    const rate = (grams: number) => display.massRate(grams / 1000);
    const name = NAMES[what];
    const where = areas.join(', ');
    if (test === null) return `${where}: no soil test is written down, and this step goes by one alone.`;
    const from = `the soil test of ${formatDay(test)}`;
    if (by === 'enough') return `${where}: ${from} asks for no ${name}.`;
    if (asked === null) {
      const table =
        acidity === null ? '' : ' The table of acidity goes from 2.0 to 25.7 meq/100 g, to pH 6.0, 6.5 or 7.0.';
      const add = what === 'lime' ? `lime: ${rate(200)}, or acidity: 7.1 and goal: 6.5` : `${what}: ${rate(5)}`;
      return `${where}: ${from} names no amount of ${name}, so this is the program's own rate, the most at a time. If the report has one, add it to the test (${add}).${table}`;
    }
    const kind = what === 'lime' ? 'lime, as pure calcium carbonate' : `${name} for the year`;
    const parts = [
      `${where}: ${from} asks for ${rate(asked)} of ${kind}${by === 'table' ? `, by the acidity of ${acidity} meq/100 g` : ''}`,
      ...(done > 0 ? [`${rate(done)} of it has been put down since`] : []),
      ...(others > 0 ? [`${rate(others)} comes with other work`] : []),
      ...(left > 0
        ? [
            `${rate(left)} is left for later${next === null ? '' : `, from ${formatDay(next)} on`}: this is the most at a time`,
          ]
        : []),
    ];
    return `${parts.join('; ')}.`;
  },
} as const;
