/** What the tests share: the command in a folder of its own, and files to put there. */
import { createHash } from 'node:crypto';
import { cpSync, existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import type { DailySeries } from '../src/base/series.ts';
import { main } from '../src/cli.ts';
import type { SiteDays } from '../src/climate/site-days.ts';

export const root = path.resolve(fileURLToPath(import.meta.url), '../..');

/** Real measurements beside the project; tests that need them skip, and say so, where the folder is absent. */
export const sharedFile = (name: string): string | null => {
  const file = path.join(root, '../shared', name);
  return existsSync(file) ? file : null;
};

const folders: string[] = [];
/** Takes away the folders of the tests so far. */
export function tidy(): void {
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true });
}

/** A folder of its own with these files, gone after the tests of the file. */
export function folderWith(files: Readonly<Record<string, string>> = {}): string {
  const folder = mkdtempSync(path.join(tmpdir(), 'soilclock-'));
  folders.push(folder);
  for (const [name, text] of Object.entries(files)) {
    mkdirSync(path.dirname(path.join(folder, name)), { recursive: true });
    writeFileSync(path.join(folder, name), text);
  }
  return folder;
}

/** A copy of the shipped programs and the demo lawn, since a plan writes its ledger beside the lawn. */
export function demoCopy(): { readonly cwd: string; readonly lawn: string } {
  const cwd = folderWith();
  const demo = (file: string) => !file.endsWith('.ledger.json');
  cpSync(path.join(root, 'programs'), path.join(cwd, 'programs'), { recursive: true, filter: demo });
  return { cwd, lawn: 'programs/demo/lawn.yaml' };
}

/**
 * Runs the command in a folder.
 *
 * @param answers What somebody at a terminal types, a line each, until nobody answers any more; null without a terminal.
 */
export async function soilclock(
  cwd: string,
  argv: readonly string[],
  now = Date.UTC(2027, 3, 2, 12),
  answers: readonly string[] | null = null,
  columns = 100,
) {
  const [out, err]: [string[], string[]] = [[], []];
  const before = feedsIn(cwd);
  const code = await main(argv, {
    stdout: (text) => void out.push(text),
    stderr: (text) => void err.push(text),
    cwd,
    now: () => now,
    columns,
    ...(answers && { openTerminal: () => typing(answers, (prompt) => void err.push(prompt)) }),
  });
  for (const [file, feed] of feedsIn(cwd)) if (before.get(file) !== feed) keepFeed(feed);
  return { code, stdout: out.join(''), stderr: err.join('') };
}

/** Keeps a feed that a test made for other people's readers, where SOILCLOCK_FEEDS names a folder for them. */
export function keepFeed(text: string): string {
  const folder = process.env.SOILCLOCK_FEEDS;
  if (folder) {
    mkdirSync(path.resolve(root, folder), { recursive: true });
    writeFileSync(
      path.resolve(root, folder, `${createHash('sha256').update(text).digest('hex').slice(0, 16)}.ics`),
      text,
    );
  }
  return text;
}

/** The feeds in a folder, by their files; none where nobody keeps them. */
function feedsIn(folder: string): ReadonlyMap<string, string> {
  if (!process.env.SOILCLOCK_FEEDS || !existsSync(folder)) return new Map();
  const files = readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith('.ics'))
    .map((entry) => path.join(entry.parentPath, entry.name));
  return new Map(files.map((file) => [path.relative(folder, file), readFileSync(file, 'utf8')]));
}

function typing(answers: readonly string[], show: (prompt: string) => void) {
  const left = [...answers];
  return {
    ask: async (prompt: string) => {
      show(`${prompt}\n`);
      return left.shift() ?? null;
    },
    close: () => {},
  };
}

/** A program with the given steps as YAML, one list entry each. */
export const programText = (steps: string, extra = ''): string => `kind: program
version: 1
id: test-program
name: Test program
grass: [tall-fescue]
${extra}steps:
${steps}`;

/** A small lawn; `extra` is YAML at the top level. */
export const lawnText = (extra = '', weather = 'weather.csv'): string => `kind: lawn
version: 1
id: test-lawn
location: { latitude: 39, longitude: -84, elevation: 270 m }
timezone: America/New_York
grass: tall-fescue
program: program.yaml
weather: { files: [${weather}] }
${extra.includes('areas:') ? '' : 'areas: { front: { rectangle: [50 ft, 20 ft] } }\n'}${extra}`;

/** A place without a frost, with this length of the day. */
export const noFrost = (dayLength: DailySeries): SiteDays => ({ dayLength, frost: () => null });

/**
 * How often a property is tried: three tenths of `whole`, at least five times; whole where SOILCLOCK_RUNS=whole, as in one of
 * the runs of `.ci/run`.
 */
export const runs = (whole: number): number =>
  process.env.SOILCLOCK_RUNS === 'whole' ? whole : Math.max(5, Math.ceil(0.3 * whole));

/**
 * For what plans, checks or validates by the dozen: alone it takes 2 to 10 s, and four times as long beside coverage and
 * other work on the machine.
 */
export const LONG = { timeout: 120_000 } as const;
