import type { ProblemCode, WordingArgs } from '../base/wording.ts';
import type { Trace } from '../climate/trace.ts';
import type { Program, Step } from '../model/program.ts';
import type { PlacedSeason } from '../schedule/placed-season.ts';
import type { SeasonYear } from '../schedule/season-year.ts';
import type { Window } from '../schedule/windows.ts';
import type { DosedStep } from '../schedule/within-caps.ts';

/** What a rule of agronomy has found: a problem, and the way to what it is about in the program or lawn file. */
export interface Finding {
  readonly code: ProblemCode;
  readonly args: WordingArgs<ProblemCode>;
  readonly path: readonly (string | number)[];
}

/** A finding, its words checked against its code. */
export const finding = <C extends ProblemCode>(code: C, args: WordingArgs<C>, path: Finding['path']): Finding => ({
  code,
  args: args as Finding['args'],
  path,
});

/** A program planned at a place. */
export interface Tried {
  /** Where, in words: "Milwaukee, WI"; null on the lawn's own weather. */
  readonly at: string | null;
  readonly program: Program;
  readonly season: PlacedSeason;
}

/** A step as it was placed there, and where it stands in its program; judged by whole past years, not by this season. */
export interface TriedStep {
  readonly step: Step;
  readonly index: number;
  readonly placed: DosedStep;
  /** The past years, and the step's window in each. */
  readonly years: readonly Trace[];
  readonly windows: readonly (Window | null)[];
  /** Share of them that have a window. */
  readonly chance: number;
}

/** The steps of the program that the place wants, in the season of the as-of day. */
export const stepsOf = ({ program, season }: Tried): TriedStep[] =>
  program.steps.flatMap((step, index) => {
    const placed = season.placed.find(
      (one) => one.program.id === program.id && one.step.id === step.id && one.season.year === season.season.year,
    );
    if (!placed || placed.areas.length === 0) return [];
    const windows = placed.windows.ofPastYears;
    const chance = windows.filter((window) => window !== null).length / Math.max(windows.length, 1);
    return [{ step, index, placed, years: yearsOf(season, placed.season), windows, chance }];
  });

/** Whole past years, moved to the days of a season. */
export const yearsOf = ({ ground }: PlacedSeason, { start, end }: SeasonYear): readonly Trace[] =>
  ground.climate.past(start, end);

/** Nitrogen that a step asks for [kg/m²]; 0 where it asks for none. */
export const nitrogenAsked = ({ apply }: Step): number => (apply?.kind === 'nutrient' ? (apply.rates.N ?? 0) : 0);
