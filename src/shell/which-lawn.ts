import { existsSync } from 'node:fs';
import path from 'node:path';
import { type Day, formatDay, parseDay } from '../base/day.ts';
import { type Problem, problem } from '../base/problem.ts';
import { nearestWord } from '../base/quantity.ts';
import { dayAt, zoneAt } from '../base/zone.ts';
import { kindOf } from '../read/any.ts';
import { readCalendar } from '../read/calendar.ts';
import { readLawn } from '../read/lawn.ts';
import type { Source } from '../read/lookup.ts';
import { readText } from './files.ts';
import type { Io } from './io.ts';
import { shippedFolder } from './shipped.ts';
import { zipLookup } from './zips.ts';

/** The demo lawn that comes with the package, and the as-of day that it is told for. */
const DEMO = { file: path.join(shippedFolder, 'demo/lawn.yaml'), asOf: '2027-04-02' } as const;

/** The lawn that a command is about, and the day it is asked for. */
export interface Asked {
  readonly file: string;
  readonly source: Source;
  readonly asOf: Day;
  readonly step: string | undefined;
  /** Whether nobody named a lawn and the demo stands in. */
  readonly isDemo: boolean;
}

/** Years that a plan may be asked for; far ones are slips of the finger. */
const YEARS = /^(19|20|21)/;

const isLawnFile = (word: string): boolean => /\.ya?ml$/i.test(word);

/** The file that a command is about. */
export type AskedFile = Omit<Asked, 'asOf'>;
export interface Failed {
  readonly problems: readonly Problem[];
}

/**
 * Finds the file: the one named, else `lawn.yaml` in the folder, else the demo lawn.
 *
 * @param words What stands on the command line: a file, a step, both or neither.
 */
export function whichFile(words: readonly string[], asOf: string | undefined, io: Io): AskedFile | Failed {
  const [first] = words;
  const named = first !== undefined && isLawnFile(first) ? first : undefined;
  const step = words[named === undefined ? 0 : 1];
  const file = named ?? (existsSync(path.join(io.cwd, 'lawn.yaml')) ? 'lawn.yaml' : DEMO.file);
  const source = readText(file, io.cwd);
  if (source === null) return { problems: [problem('no-lawn', { ref: file }, null)] };
  if ('reason' in source) return { problems: [problem('file-unreadable', { ref: file, reason: source.reason }, null)] };
  const isDemo = named === undefined && file === DEMO.file;
  if (isDemo)
    io.stderr(
      `No lawn named and no lawn.yaml here: this is the demo lawn${asOf === undefined ? `, as of ${DEMO.asOf}` : ''}.\n`,
    );
  return { file: path.resolve(io.cwd, file), source, step, isDemo };
}

/** Finds the lawn that a command is about, and the as-of day. @param words As in `whichFile`. */
export function whichLawn(words: readonly string[], asOf: string | undefined, io: Io): Asked | Failed {
  const asked = whichFile(words, asOf, io);
  if ('problems' in asked) return asked;
  if (!isCalendar(asked)) return asOfDay(asked, asOf, io);
  const { value, place } = readCalendar(asked.source.text, asked.source.name);
  return { problems: [problem('calendar-for-lawn', { lawns: value?.lawns ?? [] }, place(['kind']))] };
}

/** Whether the file is a calendar of several lawns. */
export const isCalendar = ({ source }: AskedFile): boolean => kindOf(source.text, source.name) === 'calendar';

/** A lawn's file with the as-of day: the one given, else today in the lawn's zone. */
export function asOfDay(asked: AskedFile, asOf: string | undefined, io: Io): Asked | Failed {
  const written = asOf ?? (asked.isDemo ? DEMO.asOf : today(asked.source, io));
  const day = parseDay(written);
  const problems = asOfProblem(written);
  return day === null || problems.length > 0 ? { problems } : { ...asked, asOf: day };
}

/** A problem where an as-of day is none. */
export const asOfProblem = (written: string): Problem[] =>
  parseDay(written) === null || !YEARS.test(written) ? [problem('as-of', { found: written }, null)] : [];

/** Today in the lawn's zone; in UTC where the lawn cannot be read. */
function today({ text, name }: Source, io: Io): string {
  const lawn = readLawn(text, name, zipLookup).value;
  const zone = lawn ? (lawn.timezone ?? zoneAt(lawn.location.latitude, lawn.location.longitude)) : 'UTC';
  return formatDay(dayAt(io.now(), zone));
}

/** The problem of a step that the program does not have. */
export const unknownStep = (step: string, steps: readonly string[]): Problem =>
  problem('plan-step', { found: step, allowed: steps, nearest: nearestWord(step, steps) }, null);
