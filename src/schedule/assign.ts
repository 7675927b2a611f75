import { netArea } from '../amounts/area.ts';
import type { SquareMetres } from '../base/units.ts';
import type { Lawn } from '../model/lawn.ts';
import type { Program, Step } from '../model/program.ts';
import { type Unwanted, unwanted } from './condition.ts';
import { type SeasonYear, seasonsOf, southernSteps } from './season-year.ts';

/** A step of a program in a season, on the areas of the lawn that want it. */
export interface Assigned {
  /** The step's id; for the program of an area, behind that program's id and a dot. */
  readonly id: string;
  readonly step: Step;
  readonly program: Program;
  readonly season: SeasonYear;
  /** The areas that want it; none where its conditions hold on none of them. */
  readonly areas: readonly string[];
  /** What keeps it from the areas that do not want it. */
  readonly unwanted: readonly Unwanted[];
}

/** Sizes of the areas [m²], in the lawn's order. */
export const sizesOf = (lawn: Lawn): ReadonlyMap<string, SquareMetres> =>
  new Map(Object.entries(lawn.areas).map(([id, shape]) => [id, netArea(shape)]));

/** The programs of a lawn, each with its areas; its own program first. */
export function programsOf(
  lawn: Lawn,
  program: Program,
  areaPrograms: ReadonlyMap<string, Program>,
): ReadonlyMap<Program, readonly string[]> {
  const byId = new Map([[program.id, program]]);
  const areas = new Map<Program, string[]>();
  for (const area of Object.keys(lawn.areas)) {
    const own = areaPrograms.get(area) ?? program;
    const first = byId.get(own.id) ?? own;
    byId.set(own.id, first);
    areas.set(first, [...(areas.get(first) ?? []), area]);
  }
  return areas;
}

/**
 * Every step of every program of a lawn in the seasons that a plan covers, the earlier season's first.
 *
 * @param asOf The as-of day: its season, and near the end of that the next as well, each program by its own season.
 */
export function assign(
  lawn: Lawn,
  program: Program,
  areaPrograms: ReadonlyMap<string, Program>,
  asOf: number,
): readonly (readonly Assigned[])[] {
  const southern = lawn.location.latitude < 0;
  const sizes = sizesOf(lawn);
  const inTurn: Assigned[][] = [];
  for (const [own, areas] of programsOf(lawn, program, areaPrograms)) {
    const steps = southern ? southernSteps(own.steps) : own.steps;
    for (const [turn, season] of seasonsOf(own, southern, asOf).entries()) {
      const assigned = steps.map((step) => {
        const id = own.id === program.id ? step.id : `${own.id}.${step.id}`;
        return { id, step, program: own, season, ...areasFor(step, id, areas, sizes, lawn) };
      });
      inTurn[turn] = [...(inTurn[turn] ?? []), ...assigned];
    }
  }
  return inTurn;
}

/** The areas that a step is for: those that its conditions and the lawn's own choice leave it. */
function areasFor(
  step: Step,
  id: string,
  areas: readonly string[],
  sizes: ReadonlyMap<string, SquareMetres>,
  lawn: Lawn,
): Pick<Assigned, 'areas' | 'unwanted'> {
  const asked = lawn.steps?.[id];
  const chosen = areas.filter(
    (area) => asked === undefined || asked === 'skip' || (asked.areas?.includes(area) ?? true),
  );
  const judged = chosen.map((area) => ({ area, against: unwanted(step, lawn, area, sizes.get(area) ?? 0) }));
  return {
    areas: judged.flatMap(({ area, against }) => (against.length === 0 ? [area] : [])),
    unwanted: judged.flatMap(({ against }) => against),
  };
}
