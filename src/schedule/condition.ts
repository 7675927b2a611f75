import type { SquareMetres } from '../base/units.ts';
import type { Condition } from '../model/condition.ts';
import type { Lawn } from '../model/lawn.ts';
import { byTestOf, type Step } from '../model/program.ts';
import type { SoilTest } from '../model/soil-test.ts';

/** A key of a condition that speaks against a step on an area. */
export type Unwanted =
  | { readonly key: 'lawn'; readonly fact: string; readonly wanted: boolean }
  | { readonly key: 'pH'; readonly below: number | null; readonly above: number | null; readonly wanted: boolean }
  | { readonly key: 'phosphorus' | 'potassium'; readonly levels: readonly string[]; readonly wanted: boolean }
  | { readonly key: 'area'; readonly over: number | null; readonly under: number | null; readonly wanted: boolean }
  | { readonly key: 'shelf'; readonly product: string; readonly wanted: boolean };

/** The facts of an area: the lawn's, with its own over them. */
export const factsOf = (lawn: Lawn, area: string): Readonly<Record<string, boolean>> => ({
  ...lawn.facts,
  ...lawn.areas[area]?.facts,
});

/** The latest soil test that is of an area or of the whole lawn; of two of one day the area's own. */
export function soilTestOf(lawn: Lawn, area: string): SoilTest | undefined {
  const tests = (lawn.soil?.tests ?? []).filter((test) => test.area === undefined || test.area === area);
  return tests.toSorted((a, b) => b.date - a.date || Number(b.area !== undefined) - Number(a.area !== undefined))[0];
}

/** What speaks against a step on an area; nothing where it is wanted there. All keys of `only-if` have to hold, of `unless` not all. */
export function unwanted(step: Step, lawn: Lawn, area: string, size: SquareMetres): readonly Unwanted[] {
  const judge = (condition: Condition, wanted: boolean) => keysOf(condition, lawn, area, size, wanted);
  const missing = step.onlyIf
    ? judge(step.onlyIf, true).filter(({ holds, about }) => !holds && !isAsked(about.key, step, soilTestOf(lawn, area)))
    : [];
  const against = step.unless ? judge(step.unless, false) : [];
  const hindering = against.length > 0 && against.every(({ holds }) => holds) ? against : [];
  return [...missing, ...hindering].map(({ about }) => about);
}

const OF_KEY = { pH: 'lime', phosphorus: 'P2O5', potassium: 'K2O' } as const;

/** Whether the report names an amount of what the step puts down by it: that goes before a program's bounds. */
function isAsked(key: Unwanted['key'], step: Step, test: SoilTest | undefined): boolean {
  const what = key in OF_KEY ? OF_KEY[key as keyof typeof OF_KEY] : null;
  return what !== null && byTestOf(step) !== null && (test?.[what] ?? 0) > 0;
}

interface Judged {
  readonly holds: boolean;
  readonly about: Unwanted;
}

/** Each key of a condition, and whether it holds. A fact that nobody names is false; without a soil test none of it holds. */
function keysOf(condition: Condition, lawn: Lawn, area: string, size: SquareMetres, wanted: boolean): Judged[] {
  const facts = factsOf(lawn, area);
  const test = soilTestOf(lawn, area);
  const { pH, phosphorus, potassium } = condition.soilTest ?? {};
  const judged: Judged[] = Object.entries(condition.lawn ?? {}).map(([fact, value]) => ({
    holds: (facts[fact] ?? false) === value,
    about: { key: 'lawn', fact, wanted: value === wanted },
  }));
  if (pH) {
    const [below, above] = [pH.below ?? null, pH.above ?? null];
    const holds = test?.pH !== undefined && (below === null || test.pH < below) && (above === null || test.pH > above);
    judged.push({ holds, about: { key: 'pH', below, above, wanted } });
  }
  for (const [key, levels] of Object.entries({ phosphorus, potassium })) {
    if (!levels) continue;
    const level = key === 'phosphorus' ? test?.phosphorus : test?.potassium;
    const holds = level !== undefined && levels.includes(level);
    judged.push({ holds, about: { key: key as 'phosphorus' | 'potassium', levels, wanted } });
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
