import { randomInt } from 'node:crypto';
import { lstatSync } from 'node:fs';
import path from 'node:path';
import { hasErrors, type Problem, problem } from '../../base/problem.ts';
import { readAll } from '../../compile.ts';
import { lawnFile } from '../../emit/lawn-file.ts';
import type { Draft } from '../../model/draft.ts';
import { otherClimate } from '../../read/answers/place-questions.ts';
import { readLawn } from '../../read/lawn.ts';
import { NotWritten, writeAll } from '../files.ts';
import type { Io } from '../io.ts';
import { lookupFrom } from '../lookup.ts';
import { EXIT, printProblems, tellProblems } from '../report-problems.ts';
import { zipLookup } from '../zips.ts';
import { askAll } from './ask-all.ts';
import { say } from './ask-one.ts';
import { type FlagValues, flagProblems, withoutAsking } from './flags.ts';
import { refFrom, shippedOf, worldFor } from './world.ts';

export interface NewOptions extends FlagValues {
  readonly yes?: boolean;
  readonly force?: boolean;
  readonly json?: boolean;
}

/**
 * Asks for a lawn and writes its file.
 *
 * @param name The file to write, from the folder of the command.
 * @returns The exit code: 0 where the file is written, 2 where it is not.
 */
export async function newCommand(name: string, options: NewOptions, io: Io): Promise<number> {
  const fail = (problems: readonly Problem[]): number => {
    tellProblems(problems, options.json, io);
    return EXIT.usage;
  };
  const file = path.resolve(io.cwd, name);
  const unfit = unfitName(name, file, options);
  if (unfit) return fail([unfit]);
  const world = worldFor(file, io.cwd);

  let draft: Draft | null;
  if (io.openTerminal && !options.yes) {
    const problems = flagProblems(options, world);
    if (problems.length > 0) return fail(problems);
    draft = await asked(name, options, io, world);
    if (draft === null) {
      io.stderr('\nNothing was written.\n');
      return EXIT.usage;
    }
  } else {
    const made = withoutAsking(options, world);
    if (made.problems.length > 0) return fail(made.problems);
    draft = made.draft;
  }
  const products = shippedOf('products', io.cwd).map((one) => refFrom(file, one));
  return write(name, { ...draft, products }, options, io, otherClimate(draft, world), fail);
}

async function asked(name: string, options: NewOptions, io: Io, world: ReturnType<typeof worldFor>) {
  const terminal = io.openTerminal?.();
  if (!terminal) return null;
  say(
    { io },
    `A new lawn, for ${name}. Enter takes what stands in [brackets], ? explains, < goes back. Ctrl-C leaves, and nothing is written.`,
  );
  io.stderr('\n');
  try {
    return await askAll(options, { terminal, io, world });
  } finally {
    terminal.close();
  }
}

/** Why a file cannot have this name; null where it can. */
function unfitName(name: string, file: string, { force }: NewOptions): Problem | null {
  if (!/\.ya?ml$/i.test(name)) return problem('new-file-name', { file: name }, null);
  // A link that leads nowhere counts too: writing would put a file in its place.
  return !force && isThere(file) ? problem('new-exists', { file: name }, null) : null;
}

function isThere(file: string): boolean {
  try {
    lstatSync(file);
    return true;
  } catch {
    // Where even that cannot be told, the writing will tell.
    return false;
  }
}

/** Reads the text back with all it names, as a check would, and only then writes it. @param warnings Of the answers. */
function write(
  name: string,
  draft: Draft,
  options: NewOptions,
  io: Io,
  warnings: readonly Problem[],
  fail: (problems: readonly Problem[]) => number,
): number {
  const text = lawnFile(draft, randomKey(), path.basename(name));
  const { problems } = readAll({ lawn: { name, text }, lookup: lookupFrom(io.cwd), zips: zipLookup });
  if (hasErrors(problems)) return fail([...problems, problem('new-unusable', {}, null)]);
  const file = path.resolve(io.cwd, name);
  const unfit = unfitName(name, file, options);
  if (unfit) return fail([unfit]);
  try {
    writeAll([{ file, text }]);
  } catch (error) {
    if (!(error instanceof NotWritten)) throw error;
    return fail([problem('write-failed', { file: error.file, reason: error.message }, null)]);
  }
  if (options.json) {
    const lawn = readLawn(text, name, zipLookup).data;
    io.stdout(`${JSON.stringify({ kind: 'new-lawn', version: 1, file: name, lawn }, null, 2)}\n`);
  } else io.stdout(written(name, draft));
  printProblems([...problems.filter(({ severity }) => severity !== 'note'), ...warnings], io);
  return EXIT.fine;
}

const LETTERS = 'abcdefghijklmnopqrstuvwxyz0123456789';
const KEY_LENGTH = 8;
const randomKey = (): string => Array.from({ length: KEY_LENGTH }, () => LETTERS[randomInt(LETTERS.length)]).join('');

/** What was written, and what comes next. */
function written(name: string, { weather }: Draft): string {
  const asksService = [weather?.service, weather?.forecast].some((one) => one !== undefined && one !== 'none');
  const shown = /\s/.test(name) ? `"${name}"` : name;
  return [
    `\n${name} is written. Each line in it is explained; change what you like. Next:`,
    ...(asksService ? [`  soilclock weather fetch ${shown}`] : []),
    `  soilclock plan ${shown}`,
    '',
  ].join('\n');
}
