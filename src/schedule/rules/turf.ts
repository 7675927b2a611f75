import type { Day } from '../../base/day.ts';
import { seasonOfGrass } from '../../model/grass.ts';
import type { Lawn } from '../../model/lawn.ts';
import { triggersIn } from '../../model/program.ts';
import { factsOf } from '../condition.ts';
import type { Ground } from '../ground.ts';
import type { Forbidden } from './forbidden.ts';
import type { DayRule, RuleInput } from './rule.ts';
import { likely } from './shares.ts';
import { feeds, killsPlants } from './substances.ts';

/**
 * New turf bears herbicides after three mowings, or three months where nobody counts them (a landscaper's page, in a copy);
 * labels say two to three mowings. A label's own waiting time, where it is longer, is a rule of its own.
 */
const MOWINGS = 3;
const MONTHS = 91;
/** The first feed of new seed: three to five weeks after seeding (the same page). */
const FIRST_FEED = 21;
/** While the lawn file calls the turf dormant, nothing is planned within two weeks. Common practice. */
const LOOK_AGAIN = 14;

/** Feeds and herbicides wait for young turf. */
export function young({ ground, assigned, dose }: RuleInput): DayRule | null {
  const { step, areas } = assigned;
  const what = killsPlants(step, dose) ? 'herbicide' : feeds(step, dose) ? 'feed' : null;
  // A feed that follows a seeding says itself when it comes.
  const follows = triggersIn(step.window.opens).some((one) => one.kind === 'after' && one.step !== undefined);
  if (what === null || (what === 'feed' && follows)) return null;
  const holds = areas.flatMap((area) => {
    const turf = youngTurf(area, ground);
    if (!turf || (what === 'feed' && turf.sodded)) return [];
    if (what === 'herbicide' && turf.mowings >= MOWINGS) return [];
    return [{ area, since: turf.since, until: turf.since + (what === 'feed' ? FIRST_FEED : MONTHS) }];
  });
  if (holds.length === 0) return null;
  return (day): Forbidden | null => {
    const hold = holds.find(({ since, until }) => since <= day && day < until);
    return hold ? { rule: 'young', ...hold, what } : null;
  };
}

/** Turf that was seeded or sodded by the lawn file or, all of it, by the journal; with its mowings since. */
function youngTurf(
  area: string,
  { lawn, journal, steps }: Ground,
): { readonly since: Day; readonly sodded: boolean; readonly mowings: number } | null {
  const turf = lawn.areas[area]?.turf ?? lawn.turf;
  const since = turf?.seeded ?? turf?.sodded;
  if (since === undefined) return null;
  const mowed = journal.filter(({ date, work, step, areas }) => {
    const kind = work ?? (step === undefined ? undefined : steps.get(step)?.work);
    return kind === 'mow' && date > since && (areas?.includes(area) ?? true);
  }).length;
  return { since, sodded: turf?.sodded !== undefined, mowings: (turf?.mowings ?? 0) + mowed };
}

/** Feeds and herbicides wait while the turf stands still: by the lawn file, or by the weather where nobody waters. */
export function dormant({ ground, assigned, dose }: RuleInput): DayRule | null {
  const { step, areas } = assigned;
  if (!feeds(step, dose) && !killsPlants(step, dose)) return null;
  const { lawn, climate, stress, asOf } = ground;
  const said = areas.flatMap((area) => (lawn.areas[area]?.turf ?? lawn.turf)?.dormant ?? [])[0];
  const grasses = [...new Set(areas.map((area) => grassOf(lawn, area)))].map(seasonOfGrass);
  const watered = areas.every((area) => factsOf(lawn, area).irrigated ?? false);
  return (day): Forbidden | null => {
    if (said && day < asOf + LOOK_AGAIN) return { rule: 'dormant', cause: said, by: 'lawn' };
    for (const grass of grasses) {
      if (likely(climate, (trace) => stress.heat(trace, grass, day)))
        return { rule: 'dormant', cause: 'heat', by: 'weather' };
      if (!watered && likely(climate, (trace) => stress.drought(trace, grass, day)))
        return { rule: 'dormant', cause: 'drought', by: 'weather' };
    }
    return null;
  };
}

/** The grass of an area. */
export const grassOf = (lawn: Lawn, area: string) => lawn.areas[area]?.grass ?? lawn.grass;
