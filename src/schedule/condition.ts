import type { Day } from '../base/day.ts';
import type { SquareMetres } from '../base/units.ts';
import type { Condition, Level } from '../model/condition.ts';
import type { Lawn } from '../model/lawn.ts';
import { byTestOf, type Step } from '../model/program.ts';
import type { SoilTest } from '../model/soil-test.ts';

/** A key of a condition that speaks against a step on an area. */
export type Unwanted =
  | { readonly key: 'lawn'; readonly fact: string; readonly wanted: boolean }
  | { readonly key: 'pH'; readonly below: number | null; readonly above: number | null; readonly wanted: boolean }
  | { readonly key: 'phosphorus' | 'potassium'; readonly levels: readonly Level[]; readonly wanted: boolean }
  | { readonly key: 'area'; readonly over: number | null; readonly under: number | null; readonly wanted: boolean }
  | { readonly key: 'shelf'; readonly product: string; readonly wanted: boolean };

/** The facts of an area: the lawn's, with its own over them. */
export const factsOf = (lawn: Lawn, area: string): Readonly<Record<string, boolean>> => ({
  ...lawn.facts,
  ...lawn.areas[area]?.facts,
});

/** What of a soil test goes together: a later one that tells some of it takes the place of all of it, and of nothing else. */
const TOLD = {
  pH: ['pH', 'lime', 'acidity'],
  phosphorus: ['phosphorus', 'P2O5'],
  potassium: ['potassium', 'K2O'],
} as const;

/**
 * The soil test that counts for the acidity or a nutrient of an area: the latest of the area or of the whole lawn that tells of
 * it, of two of one day the area's own; where none does, the latest of all.
 */
export function soilTestOf(lawn: Lawn, area: string, about: keyof typeof TOLD): SoilTest | undefined {
  const tests = (lawn.soil?.tests ?? [])
    .filter((test) => test.area === undefined || test.area === area)
    .toSorted((a, b) => b.date - a.date || Number(b.area !== undefined) - Number(a.area !== undefined));
  return tests.find((test) => TOLD[about].some((key) => test[key] !== undefined)) ?? tests[0];
}

/** A lawn without the soil tests of days that are still to come. */
export const knownOn = (lawn: Lawn, asOf: Day): Lawn =>
  lawn.soil?.tests
    ? { ...lawn, soil: { ...lawn.soil, tests: lawn.soil.tests.filter(({ date }) => date <= asOf) } }
    : lawn;

/** What speaks against a step on an area; nothing where it is wanted there. All keys of `only-if` have to hold, of `unless` not all. */
export function unwanted(step: Step, lawn: Lawn, area: string, size: SquareMetres): readonly Unwanted[] {
  const judge = (condition: Condition, wanted: boolean) => keysOf(condition, lawn, area, size, wanted);
  const missing = step.onlyIf
    ? judge(step.onlyIf, true).filter(({ holds, about }) => !holds && !isAsked(about.key, step, lawn, area))
    : [];
  const against = step.unless ? judge(step.unless, false) : [];
  const hindering = against.length > 0 && against.every(({ holds }) => holds) ? against : [];
  return [...missing, ...hindering].map(({ about }) => about);
}

const OF_KEY = { pH: 'lime', phosphorus: 'P2O5', potassium: 'K2O' } as const;

/** Whether the report names an amount of what the step puts down by it: that goes before a program's bounds. */
function isAsked(key: Unwanted['key'], step: Step, lawn: Lawn, area: string): boolean {
  if ((key !== 'pH' && key !== 'phosphorus' && key !== 'potassium') || byTestOf(step) === null) return false;
  return (soilTestOf(lawn, area, key)?.[OF_KEY[key]] ?? 0) > 0;
}

interface Judged {
  readonly holds: boolean;
  readonly about: Unwanted;
}

/** Each key of a condition, and whether it holds. A fact that nobody names is false; without a soil test none of it holds. */
function keysOf(condition: Condition, lawn: Lawn, area: string, size: SquareMetres, wanted: boolean): Judged[] {
  const facts = factsOf(lawn, area);
  const { pH, phosphorus, potassium } = condition.soilTest ?? {};
  const judged: Judged[] = Object.entries(condition.lawn ?? {}).map(([fact, value]) => ({
    holds: (facts[fact] ?? false) === value,
    about: { key: 'lawn', fact, wanted: value === wanted },
  }));
  if (pH) {
    const [below, above] = [pH.below ?? null, pH.above ?? null];
    const found = soilTestOf(lawn, area, 'pH')?.pH;
    const holds = found !== undefined && (below === null || found < below) && (above === null || found > above);
    judged.push({ holds, about: { key: 'pH', below, above, wanted } });
  }
  for (const [key, levels] of [['phosphorus', phosphorus] as const, ['potassium', potassium] as const]) {
    if (!levels) continue;
    const level = soilTestOf(lawn, area, key)?.[key];
    const holds = level !== undefined && levels.includes(level);
    judged.push({ holds, about: { key, levels, wanted } });
  }
  if (condition.area) {
    const [over, under] = [condition.area.over ?? null, condition.area.under ?? null];
    const holds = (over === null || size > over) && (under === null || size < under);
    judged.push({ holds, about: { key: 'area', over, under, wanted } });
  }
  for (const product of condition.shelf ?? []) {
    const holds = (lawn.shelf?.stock[product]?.value ?? 0) > 0;
    judged.push({ holds, about: { key: 'shelf', product, wanted } });
  }
  return judged;
}
