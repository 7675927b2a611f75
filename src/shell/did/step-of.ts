import type { Step } from '../../model/program.ts';
import type { Linked } from '../../read/link.ts';
import { programsOf } from '../../schedule/assign.ts';

/** Every step of the programs of a lawn by its id in the journal, with the areas of its program. */
export function stepsByIdOf({ lawn, program, areaPrograms }: Linked): ReadonlyMap<string, StepOfLawn> {
  const programs = new Map([[program, [] as readonly string[]], ...programsOf(lawn, program, areaPrograms)]);
  return new Map(
    [...programs].flatMap(([own, areas]) =>
      own.steps.map((step): [string, StepOfLawn] => [
        own.id === program.id ? step.id : `${own.id}.${step.id}`,
        { step, areas },
      ]),
    ),
  );
}

interface StepOfLawn {
  readonly step: Step;
  readonly areas: readonly string[];
}
