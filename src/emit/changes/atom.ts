import { contentHash } from '../../base/hash.ts';
import { wordsOf } from '../../words/words.ts';
import { escaped } from '../html.ts';
import type { Digest, FeedAbout } from './digest.ts';

/**
 * A digest as an Atom feed: an entry a change, the latest first.
 *
 * Source: IETF (2005), RFC 4287, The Atom Syndication Format, 4.1.1 and 4.1.2. No link of its own: a file knows no address.
 */
export function atomFeed({ began, entries }: Digest, { feedKey, lawnName, display }: FeedAbout): string {
  const updated = [began, ...entries.map(({ at }) => at)].sort().at(-1) ?? began;
  return [
    '<?xml version="1.0" encoding="utf-8"?>',
    `<feed xmlns="http://www.w3.org/2005/Atom" xml:lang="${escaped(display.language)}">`,
    `  <id>${idOf(feedKey, 'changes')}</id>`,
    `  <title>${asXml(wordsOf(display.language).changes.digestTitle(lawnName))}</title>`,
    `  <updated>${updated}</updated>`,
    '  <author><name>soilclock</name></author>',
    ...entries.flatMap(({ uid, sequence, what, at, title, text }) => [
      '  <entry>',
      `    <id>${idOf(feedKey, uid, sequence, what)}</id>`,
      `    <title>${asXml(title)}</title>`,
      `    <updated>${at}</updated>`,
      `    <content type="text">${asXml(text)}</content>`,
      '  </entry>',
    ]),
    '</feed>',
    '',
  ].join('\n');
}

/**
 * The same for the same event and revision, and telling nothing of either: 122 bits of a SHA-256 as a UUID of version 8.
 * Source: IETF (2024), RFC 9562, Universally Unique IDentifiers, 5.8.
 */
function idOf(...parts: readonly (string | number)[]): string {
  const hex = contentHash(JSON.stringify(parts), 32);
  const variant = ((Number.parseInt(hex.slice(16, 17), 16) & 3) | 8).toString(16);
  return `urn:uuid:${hex.slice(0, 8)}-${hex.slice(8, 12)}-8${hex.slice(13, 16)}-${variant}${hex.slice(17, 20)}-${hex.slice(20)}`;
}

/** XML knows two characters less than Unicode, where controls are out already. Source: W3C (2008), XML 1.0, 2.2. */
const asXml = (text: string): string => escaped(text).replace(/[\ufffe\uffff]/g, '');
