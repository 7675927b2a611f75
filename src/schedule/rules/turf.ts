import type { Day } from '../../base/day.ts';
import { seasonOfGrass } from '../../model/grass.ts';
import type { Lawn } from '../../model/lawn.ts';
import { triggersIn } from '../../model/program.ts';
import { factsOf } from '../condition.ts';
import type { Ground } from '../ground.ts';
import type { Forbidden } from './forbidden.ts';
import type { DayRule, RuleInput } from './rule.ts';
import { likely } from './shares.ts';
import { overlaps } from './spacing.ts';
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

/**
 * Three mowings of seedlings: the first about three weeks after seeding (Oregon State University Extension, EC 1550), then
 * one a week (common practice).
 */
const THREE_MOWINGS = 35;

/** Herbicides wait for the seedlings of seed that is planned or was put down; how long, the label says where it does. */
export function seedlings({ ground, assigned, dose, placed }: RuleInput): DayRule | null {
  if (!killsPlants(assigned.step, dose) || dose?.product?.label?.seedSafe?.before !== undefined) return null;
  const tender = (since: Day) => assigned.areas.some((area) => mowingsSince(since, area, ground) < MOWINGS);
  const sown = placed.filter((one) => one.seeds && overlaps(one.areas, assigned.areas) && tender(one.day));
  if (sown.length === 0) return null;
  return (day) => {
    const near = sown.find((one) => one.day <= day && day - one.day < THREE_MOWINGS);
    return near ? { rule: 'seedlings', of: near.name, from: near.day, days: THREE_MOWINGS } : null;
  };
}

/** Turf that the lawn file calls seeded or sodded, with its mowings since. */
function youngTurf(
  area: string,
  ground: Ground,
): { readonly since: Day; readonly sodded: boolean; readonly mowings: number } | null {
  const turf = turfOf(area, ground);
  const since = turf?.seeded ?? turf?.sodded;
  if (since === undefined) return null;
  return { since, sodded: turf?.sodded !== undefined, mowings: mowingsSince(since, area, ground) };
}

const turfOf = (area: string, { lawn }: Ground) => lawn.areas[area]?.turf ?? lawn.turf;

/** How often an area was mowed since a day: by the journal, and by the lawn file where it counts from that day. */
function mowingsSince(since: Day, area: string, ground: Ground): number {
  const turf = turfOf(area, ground);
  const counted = (turf?.seeded ?? turf?.sodded) === since ? (turf?.mowings ?? 0) : 0;
  const mowed = ground.journal.filter(({ date, work, step, areas }) => {
    const kind = work ?? (step === undefined ? undefined : ground.steps.get(step)?.work);
    return kind === 'mow' && date > since && (areas?.includes(area) ?? true);
  });
  return counted + mowed.length;
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
