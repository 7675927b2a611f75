import { existsSync, realpathSync } from 'node:fs';
import path from 'node:path';
import { hasErrors, inOrder, type Problem, problem } from '../base/problem.ts';
import type { Compiled } from '../compile.ts';
import type { FeedAbout } from '../emit/changes/digest.ts';
import type { Ledger } from '../model/ledger.ts';
import { changesWritings } from './changes-file.ts';
import { NotWritten, removeLeftParts, writeAll } from './files.ts';
import type { Io } from './io.ts';
import { feedFile, type LawnFeed, sheetFile, takenFiles } from './lawn-feeds.ts';
import { readOrRebuild } from './ledger-file.ts';
import { withLock } from './lock.ts';

interface Publishing {
  readonly ledgerFile: string;
  /** The folder of the feeds. */
  readonly feedIn: string;
  /** The feeds that are asked for, the own first. */
  readonly asked: readonly LawnFeed[];
  /** The instant of this revision, `YYYY-MM-DDTHH:MM:SSZ`. */
  readonly revisedAt: string;
  /** Whether feeds and ledger are written; else the plan is only asked for. */
  readonly writes: boolean;
  /** Whether a plan with these problems may be published. */
  readonly isFine: (problems: readonly Problem[]) => boolean;
}

/** A plan as far as it is published. */
interface Publishable extends Pick<Compiled, 'feed' | 'readers' | 'ledger' | 'changes' | 'problems'> {
  /** What the feed is of; null where there is nothing to publish. */
  readonly about: FeedAbout | null;
  /** The season as a page; null where none is drawn. */
  readonly sheet: string | null;
}

/** What came of publishing: the plan, null where it may not be published; and the feeds that were written, null where none were. */
interface Published<T> {
  readonly made: T | null;
  /** Of the plan, and what was known before it. */
  readonly problems: readonly Problem[];
  readonly written: readonly WrittenFeed[] | null;
  /** The sheet that was written with them, as seen from the folder of the command; null where none was. */
  readonly sheet: string | null;
}

/** Plans on what was published before. It calls `stillHeld` between long works, so that nobody takes it for dead. */
type Plan<T> = (ledger: Ledger | null, stillHeld: () => void) => T;

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
 */
export function publish<T extends Publishable>(publishing: Publishing, plan: Plan<T>, io: Io): Published<T> {
  const { ledgerFile, writes } = publishing;
  if (!writes) return planAndWrite(publishing, plan, () => {}, io);
  // The lock stands beside the file itself, so that all who come to it by links meet there.
  const lockedFile = existsSync(ledgerFile) ? realpathSync(ledgerFile) : ledgerFile;
  const done = withLock(lockedFile, (stillHeld) => planAndWrite(publishing, plan, stillHeld, io));
  if (done instanceof NotWritten)
    return failed([problem('write-failed', { file: done.file, reason: done.message }, null)]);
  return 'made' in done ? done : failed(done.problems);
}

/**
 * Writes what moved, the ledger, then the feeds: a run that ends in between is made good by the next, tells nothing twice, and no
 * SEQUENCE ever falls.
 */
function planAndWrite<T extends Publishable>(
  { ledgerFile, feedIn, asked, revisedAt, writes, isFine }: Publishing,
  plan: Plan<T>,
  stillHeld: () => void,
  io: Io,
): Published<T> {
  const { ledger, problems: ofLedger } = readOrRebuild(ledgerFile, asked, io.cwd);
  const known = [...ofLedger, ...(writes ? takenFiles(asked, ledger, io.cwd) : [])];
  if (hasErrors(known)) return failed(known);
  const made = plan(ledger, stillHeld);
  const problems = known.length === 0 ? made.problems : inOrder([...known, ...made.problems]);
  if (made.about === null || !isFine(problems)) return failed(problems);
  if (!writes) return { made, problems, written: null, sheet: null };
  const written = feedsOf(made, made.about.lawn, feedIn, ledger, io.cwd);
  const sheet = made.sheet === null ? null : { file: sheetFile(feedIn, made.about.lawn), text: made.sheet };
  const moved = made.changes?.isFirst ? [] : (made.changes?.told ?? []);
  const writings = [
    ...changesWritings(feedIn, made.about, moved, revisedAt),
    { file: ledgerFile, text: `${JSON.stringify(made.ledger, null, 1)}\n` },
    ...written.map(({ file, text }) => ({ file, text })),
    ...(sheet ? [sheet] : []),
  ];
  stillHeld();
  for (const one of writings) removeLeftParts(one.file);
  writeAll(writings);
  const shown = written.map((one) => ({ ...one, file: path.relative(io.cwd, one.file) }));
  return { made, problems, written: shown, sheet: sheet && path.relative(io.cwd, sheet.file) };
}

/** The feeds to write. Where a former reader's file has become that of another lawn, it stays so. */
function feedsOf(
  { feed, readers }: Publishable,
  id: string,
  folder: string,
  ledger: Ledger | null,
  cwd: string,
): WrittenFeed[] {
  const fileOf = (reader: string | null) => feedFile(folder, id, reader);
  const isFree = (reader: string) => takenFiles([{ reader, file: fileOf(reader), key: '-' }], ledger, cwd).length === 0;
  return [
    { reader: null, file: fileOf(null), text: feed ?? '', ended: false },
    ...readers
      .filter(({ id, ended }) => !ended || isFree(id))
      .map(({ id, text, ended }) => ({ reader: id, file: fileOf(id), text, ended })),
  ];
}

const failed = (problems: readonly Problem[]): Published<never> => ({
  made: null,
  problems,
  written: null,
  sheet: null,
});
