import { existsSync, realpathSync } from 'node:fs';
import path from 'node:path';
import { hasErrors, inOrder, type Problem, problem } from '../base/problem.ts';
import type { Compiled } from '../compile.ts';
import type { Ledger } from '../model/ledger.ts';
import { readLawn } from '../read/lawn.ts';
import type { Source } from '../read/lookup.ts';
import { changesWritings } from './changes-file.ts';
import { NotWritten, removeLeftParts, writeAll } from './files.ts';
import type { Io } from './io.ts';
import { readOrRebuild } from './ledger-file.ts';
import { withLock } from './lock.ts';
import { zipLookup } from './zips.ts';

interface Publishing {
  readonly ledgerFile: string;
  /** The folder of the feed. */
  readonly feedIn: string;
  readonly lawn: Source;
  /** The instant of this revision, `YYYY-MM-DDTHH:MM:SSZ`. */
  readonly revisedAt: string;
  /** Whether feed and ledger are written; else the plan is only asked for. */
  readonly writes: boolean;
  /** Whether a plan with these problems may be published. */
  readonly isFine: (problems: readonly Problem[]) => boolean;
}

/** A compiled lawn, and where its feed was written as seen from the folder of the command; null where it was not. */
interface Published extends Compiled {
  readonly written: string | null;
}

/**
 * Reads the ledger, plans against it, and writes both ledger and feed, all of it under the ledger's lock: of two runs at
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
 * Writes what moved, the ledger, then the feed: a run that ends in between is made good by the next, tells nothing twice, and no
 * SEQUENCE ever falls.
 */
function planAndWrite(
  { ledgerFile, feedIn, lawn, revisedAt, writes, isFine }: Publishing,
  plan: (ledger: Ledger | null) => Compiled,
  stillHeld: () => void,
  io: Io,
): Published {
  const { ledger, problems: ofLedger } = readOrRebuild(ledgerFile, feedOf(lawn, feedIn), io.cwd);
  if (hasErrors(ofLedger)) return failed(ofLedger);
  const compiled = told(plan(ledger), ofLedger);
  if (!compiled.season || !isFine(compiled.problems)) return failed(compiled.problems);
  if (!writes) return { ...compiled, written: null };
  const file = path.join(feedIn, `${compiled.season.lawn}.ics`);
  const moved = compiled.changes?.isFirst ? [] : (compiled.changes?.told ?? []);
  const writings = [
    ...changesWritings(feedIn, compiled.season, moved, revisedAt),
    { file: ledgerFile, text: `${JSON.stringify(compiled.ledger, null, 1)}\n` },
    { file, text: compiled.feed ?? '' },
  ];
  stillHeld();
  for (const one of writings) removeLeftParts(one.file);
  writeAll(writings);
  return { ...compiled, written: path.relative(io.cwd, file) };
}

/** The file that the lawn's feed goes into; null where the lawn cannot be read, which the plan will tell. */
function feedOf(lawn: Source, feedIn: string): string | null {
  const { value } = readLawn(lawn.text, lawn.name, zipLookup);
  return value === undefined ? null : path.join(feedIn, `${value.id}.ics`);
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
  ledger: null,
  changes: null,
  problems,
  written: null,
});
