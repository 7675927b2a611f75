import path from 'node:path';
import * as v from 'valibot';
import { type Problem, problem } from '../base/problem.ts';
import { rebuiltFrom } from '../emit/ledger/rebuilt.ts';
import { type Ledger, LedgerSchema } from '../model/ledger.ts';
import { readLawn } from '../read/lawn.ts';
import { fileBeside } from '../read/link.ts';
import { readText } from './files.ts';
import type { Io } from './io.ts';
import type { Asked } from './which-lawn.ts';
import { zipLookup } from './zips.ts';

/** The ledger that stands beside a lawn file. */
export const ledgerPath = (lawn: string): string => fileBeside(lawn, 'ledger.json');

/** What came of reading a ledger: null where there is none yet. */
interface LedgerRead {
  readonly ledger: Ledger | null;
  readonly problems: readonly Problem[];
}

/**
 * Reads the ledger, or where that is lost or damaged the one that the feed on disk was written with, with a note that says so.
 *
 * @param feed The feed's file; null where nobody knows it.
 */
export function readOrRebuild(file: string, feed: string | null, cwd: string): LedgerRead {
  const read = readLedger(file, cwd);
  if (read.ledger !== null || feed === null) return read;
  const source = readText(feed, cwd);
  const ledger = source === null || 'reason' in source ? null : rebuiltFrom(source.text);
  if (source === null || 'reason' in source || ledger === null) return read;
  const state = read.problems.length > 0 ? ('damaged' as const) : ('lost' as const);
  const args = { state, feed: source.name, events: ledger.events.length };
  return { ledger, problems: [problem('ledger-rebuilt', args, { file: path.relative(cwd, file) })] };
}

/** Where a plan writes the feed and, for the demo, the ledger too, unless it is told otherwise. */
const SITE = 'out/site';

/**
 * The ledger for a command that only asks: read, or rebuilt from the feed where a plan writes that by default. It takes no
 * lock, since a ledger is replaced whole.
 */
export function ledgerToAsk({ file, source, isDemo }: Asked, io: Io): LedgerRead {
  const site = path.resolve(io.cwd, SITE);
  const { value } = readLawn(source.text, source.name, zipLookup);
  const beside = isDemo ? path.join(site, path.basename(file)) : file;
  return readOrRebuild(ledgerPath(beside), value ? path.join(site, `${value.id}.ics`) : null, io.cwd);
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
