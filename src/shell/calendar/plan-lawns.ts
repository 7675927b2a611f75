import path from 'node:path';
import { type Problem, problem } from '../../base/problem.ts';
import type { Telling } from '../../model/reader.ts';
import type { Season } from '../../model/season.ts';
import type { ListedLawn } from '../../read/listed-lawns.ts';
import type { Io } from '../io.ts';
import { type DrawnPlan, planLawn } from '../plan-lawn.ts';
import { asOfDay } from '../which-lawn.ts';

/** The lawns of a calendar, planned. */
interface PlannedLawns {
  /** As the calendar wants them told, in its order. */
  readonly seasons: readonly Season[];
  /** Of every lawn; of one without a plan also that its events are kept. */
  readonly problems: readonly Problem[];
}

/**
 * Plans each lawn as by its own file, its feed and ledger written where that is asked. What cannot be planned is told.
 *
 * @param between Called before each lawn.
 */
export function planLawns(
  lawns: readonly ListedLawn[],
  telling: Telling,
  options: DrawnPlan,
  io: Io,
  between: () => void,
): PlannedLawns {
  const problems: Problem[] = [];
  const seasons: Season[] = [];
  for (const lawn of lawns) {
    between();
    const one = planOne(lawn, telling, options, io);
    problems.push(...one.problems);
    if (one.season) seasons.push(one.season);
    else problems.push(problem('calendar-kept', { ref: lawn.ref }, lawn.place));
  }
  return { seasons, problems: once(problems) };
}

/** Problems of files that several lawns name, told once. */
function once(problems: readonly Problem[]): Problem[] {
  return [...new Map(problems.map((one) => [JSON.stringify(one), one])).values()];
}

function planOne(
  { source, problems }: ListedLawn,
  telling: Telling,
  options: DrawnPlan,
  io: Io,
): { readonly season: Season | null; readonly problems: readonly Problem[] } {
  if (source === null) return { season: null, problems };
  const file = { file: path.resolve(io.cwd, source.name), source, step: undefined, isDemo: false };
  const asked = asOfDay(file, options.asOf, io);
  if ('problems' in asked) return { season: null, problems: asked.problems };
  const planned = planLawn(asked, options, io, { calendar: telling });
  // Among several lawns a problem of no file says whose it is.
  const told = planned.problems.map((one) => (one.file === null ? { ...one, file: source.name } : one));
  return { season: planned.made?.forCalendar ?? null, problems: told };
}
