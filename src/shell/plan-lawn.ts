import path from 'node:path';
import { formatDay } from '../base/day.ts';
import type { Problem } from '../base/problem.ts';
import { formatInstant } from '../base/zone.ts';
import { type Compiled, type CompileInput, compile } from '../compile.ts';
import { isAddress } from '../model/program-ref.ts';
import type { Detail } from '../model/reader.ts';
import type { Io } from './io.ts';
import { feedsOfLawn } from './lawn-feeds.ts';
import { ledgerPath } from './ledger-file.ts';
import { lookupFrom, readNamed } from './lookup.ts';
import { publish, type WrittenFeed } from './publish.ts';
import { EXIT, exitCode } from './report-problems.ts';
import { keptWeather } from './weather/kept-weather.ts';
import type { Asked } from './which-lawn.ts';
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
  /** False for the feeds alone. */
  readonly sheet?: boolean;
}

/** A plan with what draws the sheet of a season; without one no sheet is written. */
export interface DrawnPlan extends PlanOptions {
  readonly draw?: (made: Compiled) => string | null;
}

/** A planned lawn; without its plan where a problem counts. */
interface PlannedLawn {
  readonly made: Compiled | null;
  /** Of the plan, and what was known before it. */
  readonly problems: readonly Problem[];
  readonly written: readonly WrittenFeed[] | null;
  /** The sheet that was written; null where none was. */
  readonly sheet: string | null;
}

/** What somebody who plans several lawns adds: how a calendar wants it told besides, and thermometers that serve it. */
type Besides = Pick<CompileInput, 'calendar' | 'shared'>;

/** Plans a lawn, and publishes the plan where that is asked. */
export function planLawn(asked: Asked, options: DrawnPlan, io: Io, besides: Besides = {}): PlannedLawn {
  const feedIn = feedFolder(options, io);
  // Nobody's backup holds the demo's ledger, and its folder may not be writable: it stands beside the feed.
  const ledgerFile = ledgerPath(asked.isDemo ? path.join(feedIn, path.basename(asked.file)) : asked.file);
  const revisedAt = options.asOf === undefined ? formatInstant(io.now()) : `${formatDay(asked.asOf)}T00:00:00Z`;
  const { made, problems, written, sheet } = publish(
    {
      revisedAt,
      ledgerFile,
      feedIn,
      asked: feedsOfLawn(asked.source, feedIn),
      writes: asked.step === undefined && writes(asked, options),
      isFine: isFineWith(options),
    },
    (ledger) => {
      const compiled = compile({
        lawn: asked.source,
        lookup: lookupOnCommandLine(options, io),
        weather: options.weather?.map((file) => path.resolve(io.cwd, file)),
        program: options.program === undefined ? undefined : fromFolder(options.program, io),
        zips: zipLookup,
        service: options.weather ? undefined : keptWeather(asked, io),
        asOf: asked.asOf,
        ledger,
        revisedAt,
        detail: options.detail,
        ...besides,
      });
      const { season } = compiled;
      return { ...compiled, about: season, sheet: options.draw?.(compiled) ?? null };
    },
    io,
  );
  if (!made?.season) return { made: null, problems, written, sheet };
  const { about: _, sheet: __, ...compiled } = made;
  return { made: { ...compiled, problems, season: { ...made.season, problems } }, problems, written, sheet };
}

/** The folder that feeds go into. */
export const feedFolder = ({ out }: PlanOptions, io: Io): string => path.resolve(io.cwd, out ?? 'out/site');

/** Whether nothing of these problems counts, so that a plan with them may be published. */
export const isFineWith =
  ({ strict = false }: PlanOptions) =>
  (problems: readonly Problem[]): boolean =>
    exitCode(problems, strict) === EXIT.fine;

/** A plan is published where the lawn's own files make it; a question asked of it (other files, JSON) only into a named folder. */
export function writes(
  { isDemo }: Pick<Asked, 'isDemo'>,
  { dryRun, out, weather, program, json }: PlanOptions,
): boolean {
  if (dryRun) return false;
  return out !== undefined || !(isDemo || weather || program || json);
}

/** Paths of the command line count from the folder of the command; those in files from the file. */
function lookupOnCommandLine({ weather, program }: PlanOptions, io: Io) {
  const lookup = lookupFrom(io.cwd);
  const given = new Set(
    [...(weather ?? []), ...(program === undefined ? [] : [program])].map((file) => fromFolder(file, io)),
  );
  return (ref: string, from: string) => (given.has(ref) ? readNamed(ref, io.cwd) : lookup(ref, from));
}

/** A path of the command line from the root; an address is one already. */
const fromFolder = (ref: string, { cwd }: Io): string => (isAddress(ref) ? ref : path.resolve(cwd, ref));
