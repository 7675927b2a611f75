import { type Day, formatDay, latestOnOrBefore, type MonthDay } from '../base/day.ts';
import { type HeatMeasure, heatOn } from '../climate/heat.ts';
import type { Trace } from '../climate/trace.ts';
import type { Climate } from '../climate/traces.ts';
import { triggersIn } from '../model/program.ts';
import type { HeatSignal, SignalThreshold } from '../model/signals.ts';
import type { TriggerOf } from '../model/trigger.ts';
import type { PlacedStep } from './placed.ts';
import type { SeasonYear } from './season-year.ts';

const EDGES = ['opens', 'closes'] as const;

const waits = ({ status }: PlacedStep): boolean => status === 'expected' || status === 'open' || status === 'due';

/** Every trigger of the windows that are to come, with its step and its end of the window. */
const awaited = (placed: readonly PlacedStep[]) =>
  placed.filter(waits).flatMap(({ id, step }) =>
    EDGES.flatMap((edge) => {
      const rule = step.window[edge];
      return rule ? triggersIn(rule).map((trigger) => ({ step: id, edge, trigger })) : [];
    }),
  );

/** Soil and air temperatures that open or close windows to come. */
export const thresholdsOf = (placed: readonly PlacedStep[]): SignalThreshold[] =>
  unique(
    awaited(placed).flatMap(({ step, edge, trigger }): SignalThreshold[] =>
      trigger.kind === 'soil' || trigger.kind === 'air' ? [{ step, edge, ...crossingOf(trigger) }] : [],
    ),
  );

const crossingOf = (trigger: TriggerOf<'soil'> | TriggerOf<'air'>): Omit<SignalThreshold, 'step' | 'edge'> => ({
  of: trigger.kind,
  depthM: trigger.kind === 'soil' ? trigger.depth : null,
  stat: trigger.kind === 'air' ? trigger.stat : 'mean',
  meanDays: trigger.mean,
  valueC: trigger.threshold,
  direction: trigger.direction,
});

/** What heat is summed in. */
interface SummedIn {
  readonly climate: Climate;
  readonly season: SeasonYear;
  /** The last observed day, and the last that is known by a forecast. */
  readonly through: Day;
  readonly ahead: Day;
}

/** The degree days that windows to come wait for: a curve each way of counting. */
export function heatSignals(
  placed: readonly PlacedStep[],
  past: readonly Trace[],
  { climate, season, through, ahead }: SummedIn,
): HeatSignal[] {
  const rules = awaited(placed).flatMap(({ step, edge, trigger }) =>
    trigger.kind === 'degree-days' ? [{ step, edge, trigger, key: keyOf(trigger) }] : [],
  );
  return [...new Set(rules.map(({ key }) => key))].flatMap((key): HeatSignal[] => {
    const alike = rules.filter((one) => one.key === key);
    const rule = alike[0]?.trigger;
    if (!rule) return [];
    const sums = (trace: Trace, to: Day) => summed(trace, rule, rule.from, season.start, to);
    const known = sums(climate.modelled, ahead);
    const seen = Math.max(0, through - season.start + 1);
    const ofPast = past.map((trace) => sums(trace, season.end));
    return [
      {
        baseC: rule.base,
        upperC: rule.upper ?? null,
        method: rule.method,
        cutoff: rule.cutoff ?? null,
        of: rule.of ?? 'air',
        depthM: rule.depth ?? null,
        from: formatDay(latestOnOrBefore(rule.from, season.end)),
        sums: known.slice(0, seen).map(whole),
        forecast: known.slice(seen).map(whole),
        usual: (ofPast[0] ?? []).map((_, i) =>
          whole(ofPast.reduce((sum, one) => sum + (one[i] ?? Number.NaN), 0) / ofPast.length),
        ),
        reaches: unique(alike.map(({ step, edge, trigger }) => ({ step, edge, sumC: trigger.reaches }))),
      },
    ];
  });
}

/** Rules that count alike have the same curve. */
const keyOf = ({ base, upper, method, cutoff, of, depth, from }: TriggerOf<'degree-days'>): string =>
  JSON.stringify([base, upper, method, cutoff, of, depth, from]);

/** Sums of heat day by day through another, each begun anew on the day of the year from which it is counted. */
function summed(trace: Trace, rule: HeatMeasure, from: MonthDay, start: Day, to: Day): number[] {
  const begin = latestOnOrBefore(from, start);
  const sums: number[] = [];
  let sum = 0;
  for (let day = begin; day <= to; day++) {
    if (latestOnOrBefore(from, day) === day) sum = 0;
    sum += heatOn(trace, rule, day);
    if (day >= start) sums.push(sum);
  }
  return sums;
}

const whole = (value: number): number | null => (Number.isNaN(value) ? null : Math.round(value));

const unique = <T>(values: readonly T[]): T[] => [
  ...new Map(values.map((value) => [JSON.stringify(value), value])).values(),
];
