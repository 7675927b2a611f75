/**
 * What the median one week ahead would be worth had the plan known the days to come: how much of what it misses is weather
 * that nobody has seen, and how much is the soil model's own error, which no weather tells.
 */
import { heading, num, signed } from '../tables.ts';
import { judgedCases, skillOf } from './judge.ts';
import type { TriggerCase } from './season-odds.ts';

/** Days of the real weather beyond the as-of day that a plan is told; the last are all that are left. */
export const FORESEEN = [0, 3, 5, 7, 14, 365] as const;

export const FORESEEN_HEADING = `${heading('One week ahead, with the real weather of the next days known: error of the median')}days      n  error  fixed  all %  soil %  heat %  all without the error path %
`;

export function foreseenRow(days: number, cases: readonly TriggerCase[]): string {
  const judged = judgedCases(cases);
  const { n, error, fixed, skill } = skillOf(judged, 'withError');
  const of = (kind: string) =>
    skillOf(
      judged.filter(({ label }) => label.startsWith(kind)),
      'withError',
    ).skill;
  const clean = skillOf(judged, 'clean').skill;
  const percents = [skill, of('soil'), of('heat'), clean].map((share) => signed(100 * share, 8, 1)).join('');
  return `${num(days, 4, 0)}${num(n, 7, 0)}${num(error, 7, 2)}${num(fixed, 7, 2)}${percents}
`;
}
