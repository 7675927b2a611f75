import path from 'node:path';
import { type Problem, problem } from '../base/problem.ts';
import type { Ledger, LedgerEntry } from '../model/ledger.ts';
import { feedKeyOf, keyOfReader, readersOf } from '../model/reader.ts';
import { readLawn } from '../read/lawn.ts';
import type { Source } from '../read/lookup.ts';
import { readText } from './files.ts';
import { zipLookup } from './zips.ts';

/** Where a feed of a lawn stands, and what its events are called by. */
export interface LawnFeed {
  /** The reader's id; null for the lawn's own feed. */
  readonly reader: string | null;
  readonly file: string;
  readonly key: string;
}

/** The file of a lawn's own feed, or of a reader's. @param folder The folder of the feeds. */
export const feedFile = (folder: string, lawn: string, reader: string | null): string =>
  path.join(folder, `${lawn}${reader === null ? '' : `-${reader}`}.ics`);

/** The file of a lawn's sheet, beside its feed. */
export const sheetFile = (folder: string, lawn: string): string => path.join(folder, `${lawn}.html`);

/** The feeds that a lawn file asks for, the lawn's own first; none where it cannot be read, which the plan will tell. */
export function feedsOfLawn({ text, name }: Source, folder: string): LawnFeed[] {
  const { value: lawn } = readLawn(text, name, zipLookup);
  if (lawn === undefined) return [];
  return [
    { reader: null, file: feedFile(folder, lawn.id, null), key: feedKeyOf(lawn) },
    ...readersOf(lawn).map((reader) => ({
      reader: reader.id,
      file: feedFile(folder, lawn.id, reader.id),
      key: keyOfReader(lawn, reader),
    })),
  ];
}

/** Whether a text has an event of this feed: one that is called by its key, or that its ledger knows. */
const isOf = (text: string, key: string, entries: readonly LedgerEntry[]): boolean =>
  text.includes(`UID:${key}-`) || entries.some(({ uid }) => text.includes(uid.slice(0, 60)));

/** A problem for each file that holds the feed of another lawn or reader: two ids may run together into one name. */
export function takenFiles(feeds: readonly LawnFeed[], ledger: Ledger | null, cwd: string): Problem[] {
  return feeds.flatMap(({ reader, file, key }) => {
    const source = readText(file, cwd);
    if (source === null || 'reason' in source || !source.text.includes('@soilclock.invalid')) return [];
    const entries = (reader === null ? ledger?.events : ledger?.readers[reader]) ?? [];
    return isOf(source.text, key, entries) ? [] : [problem('feed-taken', { feed: source.name }, null)];
  });
}
