import { type Day, firstOnOrAfter, latestOnOrBefore, type MonthDay } from '../base/day.ts';
import { type DailySeries, endOf, seriesOf, trailingMean } from '../base/series.ts';
import { growthPotential } from '../climate/growth.ts';
import { heatReached } from '../climate/heat.ts';
import type { SiteDays } from '../climate/site-days.ts';
import { airMean, type Trace } from '../climate/trace.ts';
import type { Crossing } from '../model/crossing.ts';
import type { Trigger, TriggerOf } from '../model/trigger.ts';
import type { SeasonYear } from './season-year.ts';

/** What a trigger is resolved in. */
export interface TriggerContext {
  readonly trace: Trace;
  /** What is the same in all traces. */
  readonly site: SiteDays;
  readonly season: SeasonYear;
  /** The window's own opening in this trace; null while the opening itself is resolved. */
  readonly opening: Day | null;
  /** The one day from which steps that wait for another count; null where that step gives none. */
  referenceDay(step: string): Day | null;
}

type Resolver<K extends Trigger['kind']> = (trigger: TriggerOf<K>, context: TriggerContext) => Day | null;

const HALF_YEAR = 183;
/** Thresholds are exact; this only absorbs the last bits of a conversion from °F. */
const HAIR = 1e-9;

/** One function a kind: a new kind of trigger is added here and in `model/trigger.ts`. */
const resolvers: { readonly [K in Trigger['kind']]: Resolver<K> } = {
  // In `opens` a month-day is the season's; in `best` and `closes` it is the first on or after the opening. One that would
  // come only more than half a year later has passed: the window opened after it.
  date: ({ on }, { season, opening }) => {
    const day = firstOnOrAfter(on, opening ?? season.start);
    return opening !== null && day - opening > HALF_YEAR ? latestOnOrBefore(on, opening) : day;
  },
  soil: (trigger, context) => crossing(context.trace.soil(trigger.depth), trigger, context),
  air: (trigger, context) => crossing(airSeries(context.trace, trigger.stat), trigger, context),
  'degree-days': (trigger, { trace, season }) => {
    // Each `from` begins a sum of its own; the day is the first in the season on which one is reached.
    for (
      let from = latestOnOrBefore(trigger.from, season.start);
      from < endOf(trace.tmin);
      from = nextOf(trigger.from, from)
    ) {
      const day = heatReached(trace, trigger, from, nextOf(trigger.from, from));
      if (day !== null && day >= season.start) return day;
    }
    return null;
  },
  growth: (trigger, context) =>
    // The potential of a mean, as published for weeks and months: not the mean of daily potentials.
    crossing(growthSeries(context.trace, trigger), { ...trigger, mean: 1 }, context),
  'day-length': (trigger, context) => crossing(context.site.dayLength, trigger, context),
  frost: (trigger, { site, season }) => {
    const day = site.frost(trigger, season.start);
    return day === null ? null : Math.max(day, season.start);
  },
  after: (trigger, context) => {
    const base = trigger.step === undefined ? context.opening : context.referenceDay(trigger.step);
    if (base === null) return trigger.otherwise ? resolveTrigger(trigger.otherwise, context) : null;
    if (trigger.heat) return heatReached(context.trace, trigger.heat, base + 1, endOf(context.trace.tmin));
    return base + (trigger.wait ?? 0);
  },
  'any-of': ({ of }, context) => {
    const days = of.flatMap((one) => resolveTrigger(one, context) ?? []);
    return days.length === 0 ? null : Math.min(...days);
  },
  'all-of': ({ of }, context) => {
    const days = of.flatMap((one) => resolveTrigger(one, context) ?? []);
    return days.length < of.length ? null : Math.max(...days);
  },
};

/** The day that a trigger gives in one trace; null where it gives none. */
export function resolveTrigger(trigger: Trigger, context: TriggerContext): Day | null {
  return (resolvers[trigger.kind] as Resolver<Trigger['kind']>)(trigger as never, context);
}

const nextOf = (monthDay: MonthDay, day: Day): Day => firstOnOrAfter(monthDay, day + 1);

function airSeries(trace: Trace, stat: 'min' | 'mean' | 'max'): DailySeries {
  return stat === 'min' ? trace.tmin : stat === 'max' ? trace.tmax : airMean(trace);
}

/** Growth potential of the trailing mean of the air [0 to 1]. */
export function growthSeries(trace: Trace, { grass, mean }: Pick<TriggerOf<'growth'>, 'grass' | 'mean'>): DailySeries {
  const air = airMean(trace);
  return seriesOf(air.start, endOf(air), (day) => growthPotential(trailingMean(air, day, mean), grass));
}

/**
 * The last day of the hold: the first day on or after `from` on which the trailing mean has met the threshold for
 * `holds` days running. Days before `from` count for a hold that is still unbroken on it.
 *
 * Without `from` the season's start counts; for `falls-to` in `best` and `closes` it is the opening, since a winter's
 * cold would otherwise have come first.
 */
function crossing(series: DailySeries, rule: Crossing, { season, opening }: TriggerContext): Day | null {
  const from = rule.from
    ? firstOnOrAfter(rule.from, season.start)
    : rule.direction === 'falls'
      ? (opening ?? season.start)
      : season.start;
  const sign = rule.direction === 'rises' ? 1 : -1;
  let run = 0;
  for (let day = from - rule.holds + 1; day < endOf(series); day++) {
    const met = sign * (trailingMean(series, day, rule.mean) - rule.threshold) >= -HAIR;
    run = met ? run + 1 : 0;
    if (day >= from && run >= rule.holds) return day;
  }
  return null;
}
