import type { Day } from '../base/day.ts';
import { trailingMean } from '../base/series.ts';
import type { Celsius } from '../base/units.ts';
import { type GrassSeason, seasonOfGrass } from '../model/grass.ts';
import { edgeDay } from '../schedule/windows.ts';
import { type Finding, finding, nitrogenAsked, stepsOf, type Tried, type TriedStep } from './finding.ts';

/** Half of the runs of weather. */
const HALF = 0.5;
const FAHRENHEIT = (f: number): Celsius => (f - 32) / 1.8;

/**
 * Soil at 4 in below which a grass does not grow. Warm-season grass goes dormant at 50 F, cool-season shoots stop at 40 F.
 * Source: NC Turf Council (2005), list of soil temperatures at 4 in, in copies.
 */
const ASLEEP: Readonly<Record<GrassSeason, Celsius>> = { warm: FAHRENHEIT(50), cool: FAHRENHEIT(40) };

/** Days before the first frost after which warm-season grass gets no nitrogen: four weeks, the shorter of the four to six of University of Arizona AZ1683; Georgia says six to eight. */
const BEFORE_FROST = 28;

/** A prefered slow share from which heat does no harm. Purdue University AY-22: slow sources rarely burn even above 85 F. */
const SLOW = 0.5;

/** The feeds that have a usual day there. */
const feedsOf = (tried: Tried): TriedStep[] =>
  stepsOf(tried).filter(({ step, chance }) => nitrogenAsked(step) > 0 && chance >= HALF);

const grassesOf = ({ program }: Tried): readonly GrassSeason[] => [...new Set(program.grass.map(seasonOfGrass))];

/** Days that a window usually holds. */
function usualDays({ windows }: TriedStep): readonly Day[] {
  const [from, to] = [edgeDay(windows, 'opens', 0.5), edgeDay(windows, 'closes', 0.5)];
  if (from === null || to === null) return [];
  return Array.from({ length: Math.max(0, to - from + 1) }, (_, i) => from + i);
}

const sharePerDay = (days: readonly Day[], holds: (day: Day) => boolean): number =>
  days.filter(holds).length / Math.max(days.length, 1);

/** Nitrogen whose best day finds the grass dormant in half of the years or more. */
export function dormantNitrogen(tried: Tried): Finding[] {
  return feedsOf(tried).flatMap(({ step, index, years, windows }) => {
    const asleep = (grass: GrassSeason) =>
      years.filter((year, i) => {
        const day = windows[i]?.best;
        return day !== undefined && trailingMean(year.soil(0.1), day, 7) < ASLEEP[grass];
      }).length >=
      HALF * years.length;
    return grassesOf(tried).some(asleep)
      ? [finding('nitrogen-dormant', { step: step.id, at: [tried.at] }, ['steps', index, 'window', 'opens'])]
      : [];
  });
}

/** Nitrogen on warm-season grass so late that frost finds it growing. */
export function lateNitrogen(tried: Tried): Finding[] {
  const { climate } = tried.season.ground;
  const frost = climate.frost({ which: 'first', threshold: 0, chance: 0.5, shift: 0 }, tried.season.season.start);
  if (frost === null || !grassesOf(tried).includes('warm')) return [];
  return feedsOf(tried).flatMap(({ step, index, windows }) => {
    const closes = edgeDay(windows, 'closes', 0.5);
    if (closes === null || closes > frost || closes <= frost - BEFORE_FROST) return [];
    const key = step.window.closes ? 'closes' : 'opens';
    return [
      finding('nitrogen-late', { step: step.id, days: frost - closes, at: [tried.at] }, [
        'steps',
        index,
        'window',
        key,
      ]),
    ];
  });
}

/** Quick nitrogen on cool-season grass in a window that is hot more often than not. */
export function hotNitrogen(tried: Tried): Finding[] {
  const { stress } = tried.season.ground;
  if (!grassesOf(tried).includes('cool')) return [];
  return feedsOf(tried).flatMap((one) => {
    const slow = one.step.apply?.kind === 'nutrient' ? (one.step.apply.prefer?.slowShare ?? 0) : 0;
    const hot = (day: Day) =>
      one.years.filter((trace) => stress.heat(trace, 'cool', day)).length >= HALF * one.years.length;
    if (slow >= SLOW || sharePerDay(usualDays(one), hot) <= HALF) return [];
    return [finding('nitrogen-hot', { step: one.step.id, at: [tried.at] }, ['steps', one.index, 'window', 'opens'])];
  });
}

/** Weeks that pre-emergents usually keep seed from growing: labels give two to four months. Common practice. */
const BARRIER = 8 * 7;

/** A pre-emergent so close before seeding, on lawns that want both, that the seed would not come up. */
export function seedOnBarrier(tried: Tried): Finding[] {
  const steps = stepsOf(tried);
  const day = ({ windows }: TriedStep) => edgeDay(windows, 'best', 0.5);
  const barriers = steps.filter(
    ({ step }) => step.apply?.kind === 'pesticide' && step.apply.pesticide === 'pre-emergent',
  );
  const seedings = steps.filter(({ step }) => step.apply?.kind === 'seed');
  return seedings.flatMap((seeding) =>
    barriers.flatMap((barrier) => {
      const [sown, down] = [day(seeding), day(barrier)];
      if (sown === null || down === null || sown < down || sown - down >= BARRIER) return [];
      const args = { step: seeding.step.id, barrier: barrier.step.id, days: sown - down, at: [tried.at] };
      return [finding('seed-on-barrier', args, ['steps', seeding.index, 'window', 'opens'])];
    }),
  );
}
