import * as v from 'valibot';
import { type Problem, problem } from '../base/problem.ts';
import { compareSeasons, movesInWords } from '../emit/compare.ts';
import { planReport, stepReport } from '../emit/report.ts';
import { folded } from '../emit/table.ts';
import type { Season } from '../model/season.ts';
import { planCalendar } from './calendar/plan-calendar.ts';
import { readText } from './files.ts';
import type { Io } from './io.ts';
import { type PlanOptions, planLawn, writes } from './plan-lawn.ts';
import { EXIT, failing, printProblems } from './report-problems.ts';
import { seenChanges, subscribing } from './tell-feeds.ts';
import { asOfDay, isCalendar, unknownStep, whichFile } from './which-lawn.ts';

/** Plans a lawn: prints the season, writes the feed and the ledger; one step's whole why where a step is named. Or a calendar of lawns. */
export async function planCommand(words: readonly string[], given: PlanOptions, io: Io): Promise<number> {
  const fail = failing(given, io);
  const file = whichFile(words, given.asOf, io);
  if ('problems' in file) return fail(file.problems);
  // What draws is slow to load, so only who writes a sheet loads it.
  const draw = writes(file, given) && given.sheet !== false ? (await import('./draw-sheet.ts')).drawSheet : undefined;
  const options = { ...given, ...(draw && { draw }) };
  if (isCalendar(file)) return planCalendar(file, options, io);
  const asked = asOfDay(file, options.asOf, io);
  if ('problems' in asked) return fail(asked.problems);
  const earlier = readEarlier(options.compare, io);
  if ('problems' in earlier) return fail(earlier.problems);

  const { made, problems, written, sheet } = planLawn(asked, options, io);
  const season = made?.season;
  if (!season) return fail(problems);
  if (asked.step !== undefined) return tellStep(asked.step, season, options, io, fail);

  const moves = earlier.season ? compareSeasons(earlier.season, season) : null;
  if (options.json) {
    const changes = made.changes?.told ?? [];
    io.stdout(`${JSON.stringify({ ...season, changes, ...(moves ? { moves } : {}) }, null, 2)}\n`);
    return EXIT.fine;
  }
  io.stdout(planReport(season, io.columns));
  if (earlier.season && moves)
    io.stdout(
      `\nSince the plan of ${earlier.season.asOf}\n${movesInWords(moves, earlier.season, season)
        .flatMap((line) => folded(`  ${line}`, io.columns))
        .join('\n')}\n`,
    );
  io.stdout(seenChanges(made, season.display.language, written !== null, io));
  if (problems.length > 0) io.stderr('\n');
  printProblems(problems, io);
  io.stdout(subscribing(written, io, sheet));
  return EXIT.fine;
}

function tellStep(
  step: string,
  season: Season,
  options: PlanOptions,
  io: Io,
  fail: (problems: readonly Problem[]) => number,
): number {
  const found = season.applications.filter(({ id }) => id === step);
  if (found.length === 0) return fail([unknownStep(step, [...new Set(season.applications.map(({ id }) => id))])]);
  io.stdout(
    options.json
      ? `${JSON.stringify(found.length === 1 ? found[0] : found, null, 2)}\n`
      : found.map((one) => stepReport(one, season, io.columns)).join('\n'),
  );
  return EXIT.fine;
}

/** What of an earlier plan is compared. */
const EarlierSchema = v.looseObject({
  kind: v.literal('season'),
  asOf: v.string(),
  lawn: v.string(),
  applications: v.array(
    v.looseObject({
      id: v.string(),
      name: v.string(),
      season: v.number(),
      status: v.string(),
      date: v.nullable(v.string()),
      window: v.object({
        opens: v.looseObject({ p50: v.nullable(v.string()) }),
        best: v.unknown(),
        closes: v.looseObject({ p50: v.nullable(v.string()) }),
      }),
      areas: v.array(v.looseObject({ id: v.string(), amount: v.nullable(v.string()) })),
    }),
  ),
});

/** The earlier plan to compare with. */
function readEarlier(
  file: string | undefined,
  io: Io,
): { readonly season: Season | null } | { readonly problems: readonly Problem[] } {
  if (file === undefined) return { season: null };
  const source = readText(file, io.cwd);
  if (source === null) return { problems: [problem('file-missing', { ref: file }, null)] };
  if ('reason' in source) return { problems: [problem('file-unreadable', { ref: file, reason: source.reason }, null)] };
  const refuse = (reason: string) => ({ problems: [problem('compare-file', { reason }, { file: source.name })] });
  try {
    const result = v.safeParse(EarlierSchema, JSON.parse(source.text));
    return result.success
      ? { season: result.output as unknown as Season }
      : refuse('its keys are not those of a season.');
  } catch {
    return refuse('it is not JSON.');
  }
}
