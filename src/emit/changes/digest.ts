import * as v from 'valibot';
import { formatDay, parseDay } from '../../base/day.ts';
import { displayOf } from '../../base/display.ts';
import type { Season } from '../../model/season.ts';
import { wordsOf } from '../../words/words.ts';
import { dayText } from '../day-text.ts';
import type { Told } from './words.ts';

/** Weeks that a digest goes back. */
const WEEKS = 4;

/** What a digest keeps of the changes that it has told. */
export const DigestSchema = v.object({
  kind: v.literal('changes'),
  version: v.literal(1),
  /** The instant of its first revision. */
  began: v.pipe(v.string(), v.isoTimestamp()),
  /** The latest first; those of one revision in the order of their days. */
  entries: v.array(
    v.object({
      uid: v.string(),
      sequence: v.number(),
      what: v.string(),
      /** The instant and the as-of day of the revision that brought it. */
      at: v.pipe(v.string(), v.isoTimestamp()),
      day: v.string(),
      title: v.string(),
      text: v.string(),
    }),
  ),
});

/** What a digest is of: a lawn's feed, or that of a calendar of several. */
export interface FeedAbout extends Pick<Season, 'lawn' | 'lawnName' | 'asOf' | 'display' | 'feedKey'> {
  /** Whether what an event was may be told on to this reader; any where left out. */
  readonly mayTell?: (uid: string) => boolean;
}

export type Digest = Readonly<v.InferOutput<typeof DigestSchema>>;

/**
 * The digest with what this revision has changed, and without what is older than four weeks.
 *
 * @param kept The digest of the revision before; null where there is none.
 * @param told What this revision changed; nothing of a first feed, where all is new.
 */
export function digestWith(kept: Digest | null, told: readonly Told[], asOf: string, revisedAt: string): Digest {
  const keyOf = ({ uid, sequence, what }: { uid: string; sequence: number; what: string }) =>
    `${uid} ${sequence} ${what}`;
  const added = told.map(({ uid, sequence, what, title, text }) => ({
    ...{ uid, sequence, what },
    ...{ at: revisedAt, day: asOf, title, text },
  }));
  // A run that ended between the digest and the ledger tells the same once more.
  const again = new Set(added.map(keyOf));
  const oldest = formatDay((parseDay(asOf) ?? 0) - WEEKS * 7);
  const older = (kept?.entries ?? []).filter((one) => !again.has(keyOf(one)) && one.day > oldest);
  return { kind: 'changes', version: 1, began: kept?.began ?? revisedAt, entries: [...added, ...older] };
}

/** A digest as plain text: a heading a day, the latest first. */
export function digestText({ entries }: Digest, { asOf, lawnName, display: asked }: FeedAbout): string {
  const words = wordsOf(asked.language).changes;
  const display = displayOf(asked.units, asked.language);
  const days = [...new Set(entries.map(({ day }) => day))];
  const blocks = days.map((day) => [
    dayText(day, asOf, display),
    ...entries.flatMap((one) => (one.day === day ? [`- ${one.text}`] : [])),
  ]);
  const head = [
    words.digestTitle(lawnName.replace(/\s*\n\s*/g, ' ')),
    words.digestAbout(WEEKS, dayText(asOf, asOf, display)),
  ];
  const told = blocks.length > 0 ? blocks : [[words.digestNothing]];
  return `${[head, ...told].map((lines) => lines.join('\n')).join('\n\n')}\n`;
}
