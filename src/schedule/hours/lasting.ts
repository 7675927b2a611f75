import type { AreaAmount } from '../../model/season.ts';
import type { Walks } from '../passes.ts';

/** Filling, setting and sweeping up; common practice. */
const SET_UP_MINUTES = 15;
/** Work whose pace is not known. */
const OTHER_MINUTES = 60;

/** Minutes that a job takes: walking both half-rate ways, or the one that is left, and setting up, to the next five minutes. */
export function minutesFor(
  spreads: boolean,
  areas: readonly Pick<AreaAmount, 'id' | 'areaM2' | 'passes'>[],
  walks: Walks,
): number {
  if (!spreads) return OTHER_MINUTES;
  const seconds = areas.reduce(
    (sum, { id, areaM2, passes }) => sum + walks.seconds(id, areaM2, passes.length === 1 ? 'second' : 'both'),
    0,
  );
  return Math.ceil((SET_UP_MINUTES + seconds / 60) / 5) * 5;
}
