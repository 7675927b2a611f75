/** What the tests of readers share: the demo lawn with readers, and the feeds that a plan of it has written. */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { demoCopy, soilclock } from '../kit.ts';

const LAWN = 'programs/demo/lawn.yaml';
const KEY = /^feed: .*$/m;

/** A copy of the demo lawn whose file names these readers, in YAML. */
export function demoWith(readers: string): string {
  const { cwd } = demoCopy();
  name(cwd, readers);
  return cwd;
}

/** Names other readers in the lawn file. */
export function name(cwd: string, readers: string): void {
  change(cwd, LAWN, (text) => text.replace(KEY, `feed: { key: 482akxt7, readers: { ${readers} } }`));
}

export function change(cwd: string, file: string, how: (text: string) => string): void {
  const at = path.join(cwd, file);
  const before = readFileSync(at, 'utf8');
  const after = how(before);
  if (after === before) throw new Error(`nothing changed in ${file}`);
  writeFileSync(at, after);
}

export const plan = (cwd: string, asOf: string, ...more: string[]) =>
  soilclock(cwd, ['plan', LAWN, '--no-sheet', '--as-of', asOf, '--out', 'out', ...more]);

export const LEDGER = 'programs/demo/lawn.ledger.json';
export const ledgerAt = (cwd: string): string =>
  [LEDGER, 'out/lawn.ledger.json'].map((file) => path.join(cwd, file)).find((file) => existsSync(file)) ?? LEDGER;

/** The feed of a reader, the owner's where none is named, with its folds undone and its texts as they are read. */
export const feed = (cwd: string, reader?: string): string =>
  raw(cwd, reader)
    .replace(/\r\n[ \t]/g, '')
    .replace(/\\n/g, '\n')
    .replace(/\\(.)/g, '$1');

export const raw = (cwd: string, reader?: string): string => readFileSync(fileOf(cwd, reader), 'utf8');

export const fileOf = (cwd: string, reader?: string): string =>
  path.join(cwd, 'out', `saltwether-lawn${reader === undefined ? '' : `-${reader}`}.ics`);

interface Event {
  readonly uid: string;
  readonly kind: string;
  readonly sequence: number;
  readonly status: string;
  readonly text: string;
}

/** The events of a feed; `kind` is the last word of the UID. */
export const eventsIn = (text: string): Event[] =>
  [...text.replace(/\r\n[ \t]/g, '').matchAll(/BEGIN:VEVENT\r\n(.*?)END:VEVENT/gs)].map(([, lines = '']) => {
    const value = (key: string) => new RegExp(`^${key}[^:\r\n]*:(.*)\r$`, 'm').exec(lines)?.[1] ?? '';
    const uid = value('UID');
    return {
      uid,
      kind: /(job|window|buying|water|keep-off|soil-check|soil|ended)@/.exec(uid)?.[1] ?? '',
      sequence: Number(value('SEQUENCE')),
      status: value('STATUS'),
      text: lines,
    };
  });

export const kindsIn = (text: string): string[] => [...new Set(eventsIn(text).map(({ kind }) => kind))].sort();
