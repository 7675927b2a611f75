import { existsSync, realpathSync } from 'node:fs';
import path from 'node:path';
import { hasErrors, inOrder, type Problem, problem } from '../base/problem.ts';
import type { Compiled } from '../compile.ts';
import type { Ledger } from '../model/ledger.ts';
import type { Source } from '../read/lookup.ts';
import { changesWritings } from './changes-file.ts';
import { NotWritten, removeLeftParts, writeAll } from './files.ts';
import type { Io } from './io.ts';
import { feedFile, feedsOfLawn, takenFiles } from './lawn-feeds.ts';
import { readOrRebuild } from './ledger-file.ts';
import { withLock } from './lock.ts';

interface Publishing {
  readonly ledgerFile: string;
  /** The folder of the feeds. */
  readonly feedIn: string;
  readonly lawn: Source;
  /** The instant of this revision, `YYYY-MM-DDTHH:MM:SSZ`. */
  readonly revisedAt: string;
  /** Whether feeds and ledger are written; else the plan is only asked for. */
  readonly writes: boolean;
  /** Whether a plan with these problems may be published. */
  readonly isFine: (problems: readonly Problem[]) => boolean;
}

/** A compiled lawn, and the feeds that were written, the lawn's own first; null where none were. */
interface Published extends Compiled {
  readonly written: readonly WrittenFeed[] | null;
}

/** A feed as it was written. */
export interface WrittenFeed {
  /** The reader's id; null for the lawn's own feed. */
  readonly reader: string | null;
  /** As seen from the folder of the command. */
  readonly file: string;
  readonly text: string;
  readonly ended: boolean;
}

/**
 * Reads the ledger, plans against it, and writes ledger and feeds, all of it under the ledger's lock: of two runs at
 * once the second plans on what the first has published.
 *
 * @returns Without a season where there is a problem.
 */
export function publish(publishing: Publishing, plan: (ledger: Ledger | null) => Compiled, io: Io): Published {
  const { ledgerFile, writes } = publishing;
  if (!writes) return planAndWrite(publishing, plan, () => {}, io);
  // The lock stands beside the file itself, so that all who come to it by links meet there.
  const lockedFile = existsSync(ledgerFile) ? realpathSync(ledgerFile) : ledgerFile;
  const done = withLock(lockedFile, (stillHeld) => planAndWrite(publishing, plan, stillHeld, io));
  if (done instanceof NotWritten)
    return failed([problem('write-failed', { file: done.file, reason: done.message }, null)]);
  return 'season' in done ? done : failed(done.problems);
}

/**
 * Writes what moved, the ledger, then the feeds: a run that ends in between is made good by the next, tells nothing twice, and no
 * SEQUENCE ever falls.
 */
function planAndWrite(
  { ledgerFile, feedIn, lawn, revisedAt, writes, isFine }: Publishing,
  plan: (ledger: Ledger | null) => Compiled,
  stillHeld: () => void,
  io: Io,
): Published {
  const asked = feedsOfLawn(lawn, feedIn);
  const { ledger, problems: ofLedger } = readOrRebuild(ledgerFile, asked, io.cwd);
  const known = [...ofLedger, ...(writes ? takenFiles(asked, ledger, io.cwd) : [])];
  if (hasErrors(known)) return failed(known);
  const compiled = told(plan(ledger), known);
  if (!compiled.season || !isFine(compiled.problems)) return failed(compiled.problems);
  if (!writes) return { ...compiled, written: null };
  const written = feedsOf(compiled, feedIn, ledger, io.cwd);
  const moved = compiled.changes?.isFirst ? [] : (compiled.changes?.told ?? []);
  const writings = [
    ...changesWritings(feedIn, compiled.season, moved, revisedAt),
    { file: ledgerFile, text: `${JSON.stringify(compiled.ledger, null, 1)}\n` },
    ...written.map(({ file, text }) => ({ file, text })),
  ];
  stillHeld();
  for (const one of writings) removeLeftParts(one.file);
  writeAll(writings);
  return { ...compiled, written: written.map((one) => ({ ...one, file: path.relative(io.cwd, one.file) })) };
}

/** The feeds to write. Where a former reader's file has become that of another lawn, it stays so. */
function feedsOf(
  { season, feed, readers }: Compiled,
  folder: string,
  ledger: Ledger | null,
  cwd: string,
): WrittenFeed[] {
  const fileOf = (reader: string | null) => feedFile(folder, season?.lawn ?? '', reader);
  const isFree = (id: string) => takenFiles([{ reader: id, file: fileOf(id), key: '-' }], ledger, cwd).length === 0;
  return [
    { reader: null, file: fileOf(null), text: feed ?? '', ended: false },
    ...readers
      .filter(({ id, ended }) => !ended || isFree(id))
      .map(({ id, text, ended }) => ({ reader: id, file: fileOf(id), text, ended })),
  ];
}

/** A compiled lawn with problems that were known before it. */
function told(compiled: Compiled, before: readonly Problem[]): Compiled {
  if (before.length === 0) return compiled;
  const problems = inOrder([...before, ...compiled.problems]);
  return { ...compiled, problems, season: compiled.season && { ...compiled.season, problems } };
}

const failed = (problems: readonly Problem[]): Published => ({
  season: null,
  feed: null,
  readers: [],
  ledger: null,
  changes: null,
  problems,
  written: null,
});
