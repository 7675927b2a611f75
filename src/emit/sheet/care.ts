import type { Application, Season } from '../../model/season.ts';
import { waits } from './next-work.ts';

/** Whether a label, a bag or a rule of the place has a say in the work. */
export const isTouchy = ({ work, areas }: Application): boolean =>
  work === 'spread' || work === 'spray' || areas.some(({ product }) => product !== null);

/** Cautions that several jobs to come share: a printed sheet says them once. */
export function sharedCautions({ applications }: Season): readonly string[] {
  const counts = new Map<string, number>();
  for (const { cautions } of applications.filter(waits))
    for (const caution of new Set(cautions)) counts.set(caution, (counts.get(caution) ?? 0) + 1);
  return [...counts].filter(([, count]) => count > 1).map(([caution]) => caution);
}
