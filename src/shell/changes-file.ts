import path from 'node:path';
import * as v from 'valibot';
import { atomFeed } from '../emit/changes/atom.ts';
import { type Digest, DigestSchema, digestText, digestWith } from '../emit/changes/digest.ts';
import type { Told } from '../emit/changes/words.ts';
import type { Season } from '../model/season.ts';
import { readText, type Writing } from './files.ts';

/** The digest of what moved, as it is kept, as text and as an Atom feed, all beside the calendar feed. */
export function changesWritings(
  folder: string,
  season: Season,
  told: readonly Told[],
  revisedAt: string,
): readonly Writing[] {
  const beside = (end: string) => path.join(folder, `${season.lawn}${end}`);
  const digest = digestWith(readDigest(beside('.changes.json')), told, season.asOf, revisedAt);
  return [
    { file: beside('.changes.json'), text: `${JSON.stringify(digest, null, 1)}\n` },
    { file: beside('-changes.txt'), text: digestText(digest, season) },
    { file: beside('-changes.xml'), text: atomFeed(digest, season) },
  ];
}

/** Nothing is lost but what was told before: a file that cannot be read begins anew, like one that was deleted. */
function readDigest(file: string): Digest | null {
  const source = readText(file, path.dirname(file));
  if (source === null || 'reason' in source) return null;
  try {
    const result = v.safeParse(DigestSchema, JSON.parse(source.text));
    return result.success ? result.output : null;
  } catch {
    return null;
  }
}
