import path from 'node:path';
import * as v from 'valibot';
import { atomFeed } from '../emit/changes/atom.ts';
import { type Digest, DigestSchema, digestText, digestWith, type FeedAbout } from '../emit/changes/digest.ts';
import type { Told } from '../emit/changes/words.ts';
import { readText, type Writing } from './files.ts';

/** The digest of what moved, as it is kept, as text and as an Atom feed, all beside the calendar feed. */
export function changesWritings(
  folder: string,
  about: FeedAbout,
  told: readonly Told[],
  revisedAt: string,
): readonly Writing[] {
  const beside = (end: string) => path.join(folder, `${about.lawn}${end}`);
  const digest = digestWith(readDigest(beside('.changes.json'), about), told, about.asOf, revisedAt);
  return [
    { file: beside('.changes.json'), text: `${JSON.stringify(digest, null, 1)}\n` },
    { file: beside('-changes.txt'), text: digestText(digest, about) },
    { file: beside('-changes.xml'), text: atomFeed(digest, about) },
  ];
}

/** Nothing is lost but what was told before: a file that cannot be read begins anew, like one that was deleted. */
function readDigest(file: string, { mayTell = () => true }: FeedAbout): Digest | null {
  const source = readText(file, path.dirname(file));
  if (source === null || 'reason' in source) return null;
  try {
    const result = v.safeParse(DigestSchema, JSON.parse(source.text));
    if (!result.success) return null;
    return { ...result.output, entries: result.output.entries.filter(({ uid }) => mayTell(uid)) };
  } catch {
    return null;
  }
}
