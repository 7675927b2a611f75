import { type Dose, nutrientsOf } from '../amounts/product.ts';
import { type Day, firstOnOrAfter, latestOnOrBefore, weekday } from '../base/day.ts';
import { at } from '../base/series.ts';
import { NODES } from '../climate/conduction.ts';
import type { Climate } from '../climate/traces.ts';
import type { Lawn } from '../model/lawn.ts';
import type { LocalRule } from '../model/local-rule.ts';
import { isPesticide } from '../model/product.ts';
import type { Program, Step } from '../model/program.ts';

/** What a step puts on the lawn, in the words of local rules. */
export type Substance = 'fertilizer' | 'pesticide' | 'nitrogen' | 'phosphorus' | 'seed';

/** Why a day is not allowed for a step. */
export type Forbidden =
  | { readonly rule: 'not-working' | 'away' | 'full' | 'frozen' | 'unseen' }
  | { readonly rule: 'local'; readonly substance: Substance; readonly because: string | null }
  | { readonly rule: 'spacing'; readonly from: Day; readonly days: number };

/** The substances of a step with its dose. A step for a nutrient counts as fertilizer before its product is known. */
export function substancesOf(step: Step, dose: Dose | null): ReadonlySet<Substance> {
  const substances = new Set<Substance>();
  const kind = step.apply?.kind;
  if (kind === 'pesticide' || (dose?.product && isPesticide(dose.product))) substances.add('pesticide');
  if (kind === 'seed' || dose?.product?.form === 'seed') substances.add('seed');
  const asked = step.apply?.kind === 'nutrient' ? step.apply.rates : {};
  const brought = dose ? nutrientsOf(dose) : { N: 0, P2O5: 0, K2O: 0 };
  if (asked.N !== undefined || brought.N > 0) substances.add('nitrogen');
  if (asked.P2O5 !== undefined || brought.P2O5 > 0) substances.add('phosphorus');
  if (kind === 'nutrient' || brought.N + brought.P2O5 + brought.K2O > 0) substances.add('fertilizer');
  return substances;
}

/** Work already placed: what other steps have to keep clear of. */
export interface Placed {
  readonly day: Day;
  readonly nitrogen: boolean;
  /** Whether it is planned work that takes a place among the day's jobs. */
  readonly job: boolean;
}

interface RuleInput {
  readonly lawn: Lawn;
  readonly program: Program;
  readonly climate: Climate;
  readonly step: Step;
  readonly dose: Dose | null;
  readonly placed: readonly Placed[];
  /** Nothing is chosen afresh before this day. */
  readonly earliest: Day;
  /** The day that stands published; it may stay where nothing new may be chosen. */
  readonly published: Day | null;
}

/** A rule that says why a day is not allowed for a step, or null. The first one that speaks is the reason given. */
export function forbiddenBy(input: RuleInput): (day: Day) => Forbidden | null {
  const { lawn, program, climate, step, dose, placed, earliest, published } = input;
  const substances = substancesOf(step, dose);
  const working = lawn.working;
  const spacing = substances.has('nitrogen') ? (program.nitrogen?.spacing ?? 0) : 0;
  const onGround = step.work === 'spread' || step.work === 'spray';
  return (day) => {
    if (working?.days && !working.days.includes(weekday(day))) return { rule: 'not-working' };
    if (working?.away?.some(([from, to]) => from <= day && day <= to)) return { rule: 'away' };
    for (const rule of lawn.localRules ?? []) {
      const substance = forbidden(rule, substances, day);
      if (substance) return { rule: 'local', substance, because: rule.because ?? null };
    }
    const near = placed.find((other) => other.nitrogen && Math.abs(other.day - day) < spacing);
    if (near) return { rule: 'spacing', from: near.day, days: spacing };
    if (onGround && frozenShare(climate, day) >= 0.5) return { rule: 'frozen' };
    if (
      placed.filter((other) => other.job && other.day === day).length >=
      (working?.jobsPerDay ?? Number.POSITIVE_INFINITY)
    )
      return { rule: 'full' };
    return day < earliest && day !== published ? { rule: 'unseen' } : null;
  };
}

/** The substance that a local rule forbids on a day. */
function forbidden(rule: LocalRule, substances: ReadonlySet<Substance>, day: Day): Substance | null {
  if (!('forbid' in rule)) return null;
  const substance = rule.forbid.find((one): one is Substance => (substances as ReadonlySet<string>).has(one));
  if (!substance) return null;
  if (!rule.between) return substance;
  const [from, to] = rule.between;
  return day <= firstOnOrAfter(to, latestOnOrBefore(from, day)) ? substance : null;
}

/** Share of the traces in which the soil near the surface is at or below freezing. */
function frozenShare({ traces }: Climate, day: Day): number {
  return traces.filter((trace) => at(trace.soil(NODES[0]), day) <= 0).length / Math.max(traces.length, 1);
}
