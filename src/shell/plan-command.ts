import path from 'node:path';
import * as v from 'valibot';
import { formatDay } from '../base/day.ts';
import { type Problem, problem } from '../base/problem.ts';
import { formatInstant } from '../base/zone.ts';
import { type Compiled, compile } from '../compile.ts';
import { compareSeasons, movesInWords } from '../emit/compare.ts';
import { planReport, stepReport } from '../emit/report.ts';
import { folded } from '../emit/table.ts';
import type { Detail } from '../model/reader.ts';
import type { Season } from '../model/season.ts';
import { wordsOf } from '../words/words.ts';
import { lookupFrom, readText } from './files.ts';
import type { Io } from './io.ts';
import { ledgerPath } from './ledger-file.ts';
import { publish, type WrittenFeed } from './publish.ts';
import { EXIT, exitCode, failing, printProblems } from './report-problems.ts';
import { keptWeather } from './weather/kept-weather.ts';
import { type Asked, unknownStep, whichLawn } from './which-lawn.ts';
import { zipLookup } from './zips.ts';

export interface PlanOptions {
  readonly asOf?: string;
  readonly weather?: readonly string[];
  readonly program?: string;
  readonly out?: string;
  readonly detail: Detail;
  readonly compare?: string;
  readonly dryRun?: boolean;
  readonly json?: boolean;
  readonly strict?: boolean;
}

/** Plans a lawn: prints the season, writes the feed and the ledger; one step's whole why where a step is named. */
export function planCommand(words: readonly string[], options: PlanOptions, io: Io): number {
  const strict = options.strict ?? false;
  const fail = failing(options, io);
  const asked = whichLawn(words, options.asOf, io);
  if ('problems' in asked) return fail(asked.problems);
  const earlier = readEarlier(options.compare, io);
  if ('problems' in earlier) return fail(earlier.problems);

  // Nobody's backup holds the demo's ledger, and its folder may not be writable: it stands beside the feed.
  const outFolder = path.resolve(io.cwd, options.out ?? 'out/site');
  const ledgerFile = ledgerPath(asked.isDemo ? path.join(outFolder, path.basename(asked.file)) : asked.file);
  const revisedAt = options.asOf === undefined ? formatInstant(io.now()) : `${formatDay(asked.asOf)}T00:00:00Z`;
  const made = publish(
    {
      revisedAt,
      ledgerFile,
      feedIn: outFolder,
      lawn: asked.source,
      writes: asked.step === undefined && writes(asked, options),
      isFine: (problems) => exitCode(problems, strict) === EXIT.fine,
    },
    (ledger) =>
      compile({
        lawn: asked.source,
        lookup: lookupOnCommandLine(options, io),
        weather: options.weather?.map((file) => path.resolve(io.cwd, file)),
        program: options.program === undefined ? undefined : path.resolve(io.cwd, options.program),
        zips: zipLookup,
        service: options.weather ? undefined : keptWeather(asked, io),
        asOf: asked.asOf,
        ledger,
        revisedAt,
        detail: options.detail,
      }),
    io,
  );
  const { season, problems } = made;
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
  io.stdout(seenChanges(made, season.display.language, made.written !== null, io.columns));
  if (problems.length > 0) io.stderr('\n');
  printProblems(problems, io);
  io.stdout(made.written === null ? NOT_WRITTEN : subscribing(made.written, io.columns));
  return EXIT.fine;
}

/** A plan is published where the lawn's own files make it; a question asked of it (other files, JSON) only into a named folder. */
function writes({ isDemo }: Asked, { dryRun, out, weather, program, json }: PlanOptions): boolean {
  if (dryRun) return false;
  return out !== undefined || !(isDemo || weather || program || json);
}

/** Paths of the command line count from the folder of the command; those in files from the file. */
function lookupOnCommandLine({ weather, program }: PlanOptions, io: Io) {
  const lookup = lookupFrom(io.cwd);
  const given = new Set(
    [...(weather ?? []), ...(program === undefined ? [] : [program])].map((file) => path.resolve(io.cwd, file)),
  );
  return (ref: string, from: string) => (given.has(ref) ? readText(ref, io.cwd) : lookup(ref, from));
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

/** What subscribers see change, or would see where nothing was written. */
function seenChanges(
  { changes, feed }: Pick<Compiled, 'changes' | 'feed'>,
  language: string,
  isWritten: boolean,
  columns: number,
): string {
  const { told, isFirst } = changes ?? { told: [], isFirst: false };
  const words = wordsOf(language).changes;
  const lines = isFirst ? [words.firstFeed(eventsIn(feed))] : told.map(({ text }) => text);
  const title = isWritten ? words.seen : words.wouldSee;
  const shown = lines.length > 0 ? lines : [words.nothing];
  return `\n${title}\n${shown.flatMap((line) => folded(`  ${line}`, columns)).join('\n')}\n`;
}

const eventsIn = (feed: string | null): number => (feed?.match(/^BEGIN:VEVENT/gm) ?? []).length;

const NOT_WRITTEN = '\nNothing was written. With --out FOLDER the calendar feed goes there.\n';

/** How a phone comes to the feeds. */
function subscribing(feeds: readonly WrittenFeed[], columns: number): string {
  const [own, ...others] = feeds;
  const lines = [
    ...feeds.map(({ reader, file, text, ended }) => {
      const whose = reader === null ? 'Calendar feed' : ended ? `Ended, of ${reader}` : `For ${reader}`;
      return `${whose}: ${file} (${eventsIn(text)} events)`;
    }),
    `To subscribe: put the file on any web space, and add its address to the calendar on your phone ("add a calendar by address", or open webcal://your.place/${path.basename(own?.file ?? '')}). It then follows every new plan that you put there. For the phones of your household "soilclock serve" gives it out from here. To look at it first, open the file in any calendar program.`,
    ...(others.length > 0
      ? [
          'Each reader is told an address of their own. Give your own feed, and what stands beside it, to nobody who may not see all of it: put only their file where they can reach it.',
        ]
      : []),
  ];
  return `\n${folded(lines.join('\n'), columns).join('\n')}\n`;
}
