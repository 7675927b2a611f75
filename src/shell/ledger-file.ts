import path from 'node:path';
import * as v from 'valibot';
import { type Problem, problem } from '../base/problem.ts';
import { rebuiltFrom } from '../emit/ledger/rebuilt.ts';
import { emptyLedger, type Ledger, LedgerSchema } from '../model/ledger.ts';
import { fileBeside } from '../read/link.ts';
import { readText } from './files.ts';
import type { Io } from './io.ts';
import { feedsOfLawn, type LawnFeed } from './lawn-feeds.ts';
import type { Asked } from './which-lawn.ts';

/** The ledger that stands beside a lawn file. */
export const ledgerPath = (lawn: string): string => fileBeside(lawn, 'ledger.json');

/** What came of reading a ledger: null where there is none yet. */
interface LedgerRead {
  readonly ledger: Ledger | null;
  readonly problems: readonly Problem[];
}

/** Reads the ledger, or where that is lost or damaged the one that the feeds on disk were written with, with a note that says so. */
export function readOrRebuild(file: string, feeds: readonly LawnFeed[], cwd: string): LedgerRead {
  const read = readLedger(file, cwd);
  if (read.ledger !== null) return read;
  const found = feeds.flatMap((feed) => rebuiltOf(feed, cwd) ?? []);
  const names = found.map(({ name }) => name);
  if (names.length === 0) return read;
  const ledger: Ledger = {
    ...emptyLedger,
    events: found.find(({ reader }) => reader === null)?.events ?? [],
    readers: Object.fromEntries(found.flatMap(({ reader, events }) => (reader === null ? [] : [[reader, events]]))),
  };
  const state = read.problems.length > 0 ? ('damaged' as const) : ('lost' as const);
  const events = found.reduce((sum, one) => sum + one.events.length, 0);
  return {
    ledger,
    problems: [problem('ledger-rebuilt', { state, feeds: names, events }, { file: path.relative(cwd, file) })],
  };
}

/** What one feed was written with; null where its file holds no whole feed of its own. */
function rebuiltOf({ reader, file, key }: LawnFeed, cwd: string) {
  const source = readText(file, cwd);
  const events = source === null || 'reason' in source ? undefined : rebuiltFrom(source.text)?.events;
  return source !== null && 'name' in source && events?.some(({ uid }) => uid.startsWith(`${key}-`))
    ? { reader, name: source.name, events }
    : null;
}

/** Where a plan writes the feeds and, for the demo, the ledger too, unless it is told otherwise. */
const SITE = 'out/site';

/**
 * The ledger for a command that only asks: read, or rebuilt from the feeds where a plan writes them by default. It takes no
 * lock, since a ledger is replaced whole.
 */
export function ledgerToAsk({ file, source, isDemo }: Asked, io: Io): LedgerRead {
  const site = path.resolve(io.cwd, SITE);
  const beside = isDemo ? path.join(site, path.basename(file)) : file;
  return readOrRebuild(ledgerPath(beside), feedsOfLawn(source, site), io.cwd);
}

/** Reads a ledger. A damaged one is an error: publishing over it would confuse every subscriber. */
function readLedger(file: string, cwd: string): LedgerRead {
  const source = readText(file, cwd);
  if (source === null) return { ledger: null, problems: [] };
  const damaged = (reason: string, name: string) => ({
    ledger: null,
    problems: [problem('ledger-damaged', { reason }, { file: name })],
  });
  if ('reason' in source) return damaged(`${source.reason}.`, path.relative(cwd, file));
  try {
    const result = v.safeParse(LedgerSchema, JSON.parse(source.text));
    return result.success
      ? { ledger: result.output, problems: [] }
      : damaged('its keys are not those of a ledger.', source.name);
  } catch {
    return damaged('it is not JSON.', source.name);
  }
}
