import type { Day } from '../base/day.ts';
import { type Problem, problem } from '../base/problem.ts';
import type { Program } from '../model/program.ts';
import type { Linked } from '../read/link.ts';
import type { Parsed } from '../read/validate.ts';
import { type PlanInput, placeSeason } from '../schedule/placed-season.ts';
import type { Finding, Tried } from './finding.ts';
import { labels, missingTest, shortWindows, unlabelled } from './lawn-rules.ts';
import { closeFeeds, tooMuchAtOnce, yearlyNitrogen } from './nitrogen.ts';
import { dormantNitrogen, hotNitrogen, lateNitrogen, seedOnBarrier } from './season.ts';
import { untestedPhosphorus, withoutSource } from './sources.ts';
import { tryProgram } from './trial.ts';
import { bestOutside, metOnFrom, neverReached, rarelyReached } from './triggers.ts';

/** What a program says by itself. */
const OF_PROGRAM: readonly ((program: Program) => Finding[])[] = [
  tooMuchAtOnce,
  yearlyNitrogen,
  closeFeeds,
  withoutSource,
  untestedPhosphorus,
];

/** What shows where a program is planned. */
const WHERE_TRIED: readonly ((tried: Tried) => Finding[])[] = [
  dormantNitrogen,
  lateNitrogen,
  hotNitrogen,
  seedOnBarrier,
  rarelyReached,
];

/** What shows over all the places together. */
const OVER_ALL: readonly ((tried: readonly Tried[]) => Finding[])[] = [neverReached, bestOutside];

/** What only many places together show: on one lawn a trigger may well be met early. */
const AT_PLACES: readonly ((tried: Tried) => Finding[])[] = [...WHERE_TRIED, metOnFrom];

/** Problems of a program by agronomy: as it stands, and at several places of each climate that it claims. */
export function checkProgram({ value, place }: Parsed<Program>, asOf: Day): Problem[] {
  if (!value) return [];
  const tried = tryProgram(value, asOf);
  const found = [
    ...OF_PROGRAM.flatMap((rule) => rule(value)),
    ...tried.flatMap((one) => AT_PLACES.flatMap((rule) => rule(one))),
    ...OVER_ALL.flatMap((rule) => rule(tried)),
  ];
  return joined(found).map(({ code, args, path }) => problem(code, args as never, place(path)));
}

/** The same finding at several places, told once with all of them. */
function joined(findings: readonly Finding[]): Finding[] {
  const byPlace = new Map<string, Finding>();
  for (const one of findings) {
    const key = `${one.code} ${one.path.join('.')}`;
    const before = byPlace.get(key);
    const at = [before, one].flatMap(
      (each) => (each?.args as { at?: readonly (string | null)[] } | undefined)?.at ?? [],
    );
    byPlace.set(key, before ? { ...before, args: { ...before.args, at: [...new Set(at)] } as Finding['args'] } : one);
  }
  return [...byPlace.values()];
}

/** Problems of a lawn by agronomy, on its own weather, areas and products. */
export function checkLawn(linked: Linked, lawn: Parsed<unknown>, input: PlanInput): Problem[] {
  const { value: season } = placeSeason(input);
  if (!season) return [];
  const programs = [...new Set([linked.program, ...linked.areaPrograms.values()])];
  const ofPrograms = programs.flatMap((program) => {
    const tried = { at: null, program, season };
    const place = linked.places.get(program) ?? lawn.place;
    return joined([
      ...[...WHERE_TRIED, shortWindows, unlabelled].flatMap((rule) => rule(tried)),
      ...neverReached([tried]),
    ]).map(({ code, args, path }) => problem(code, args as never, place(path)));
  });
  const whole = { at: null, program: linked.program, season };
  return [
    ...ofPrograms,
    ...missingTest(whole).map(({ code, args, path }) => problem(code, args as never, lawn.place(path))),
    ...labels(whole).map(({ product, finding: { code, args } }) =>
      problem(code, args as never, linked.placeOfProduct(product)),
    ),
  ];
}
