/**
 * Readers of a lawn's feeds. The owner has one without naming it; every other reader has a feed of its own, told from the same
 * placed season, with events of its own and its own list in the ledger.
 */
import * as v from 'valibot';
import { contentHash, nameHash } from '../base/hash.ts';
import { displayKeys } from './display.ts';
import { byId, map, maybe, text, word } from './fields.ts';
import type { Season } from './season.ts';

/** How much a feed carries, the least first: jobs alone; windows, buying, watering in and keep-off too; soil checks as well. */
export const DETAILS = ['quiet', 'normal', 'full'] as const;
export type Detail = (typeof DETAILS)[number];

/** What a reader may see: everything; the work alone; a program at a place without a lawn. */
const ROLES = ['owner', 'helper', 'public'] as const;
export type Role = (typeof ROLES)[number];

/** How one reader wants a season told; what is left out is the lawn's own. */
export type Telling = Partial<Season['display']>;

/** What makes events of a feed its own. */
export const feedKey = v.pipe(
  v.string(),
  v.regex(/^[a-z0-9]{4,64}$/, 'wrong-type:4 to 64 lower-case letters and digits'),
);

/** What makes a lawn's feeds their own, and who reads them. */
export const FeedSchema = map({
  key: feedKey,
  readers: maybe(byId(map({ as: word(ROLES), detail: maybe(word(DETAILS)), title: maybe(text), ...displayKeys }))),
});

/** What the lawn file says of its feeds. */
interface WithFeed {
  readonly feed?: v.InferOutput<typeof FeedSchema>;
}

/** Somebody with a feed of their own. */
export interface Reader {
  readonly id: string;
  readonly as: Role;
  readonly detail: Detail;
  /** What the calendar is called; null where the lawn file does not say. */
  readonly title: string | null;
  readonly telling: Telling;
}

/** The readers that a lawn file names, in its order. */
export const readersOf = ({ feed }: WithFeed): Reader[] =>
  Object.entries(feed?.readers ?? {}).map(([id, { as, detail = 'normal', title = null, ...telling }]) => ({
    id,
    as,
    detail,
    title,
    telling,
  }));

/** What every event of a lawn's own feed is called by: the key of its file, or one of its id. */
export const feedKeyOf = ({ feed, id }: WithFeed & { readonly id: string }): string => feed?.key ?? nameHash(id, 12);

/**
 * What every event of a reader's feed is called by: made one way from the lawn's own key, so that nobody finds that from it.
 * Who comes to see other things gets other events, so that nothing stays of what the first were told.
 *
 * @example readerKey('7f3k9q2m', { id: 'crew', as: 'helper' })
 */
export const readerKey = (key: string, { id, as }: Pick<Reader, 'id' | 'as'>): string => nameHash(`${key} ${as} ${id}`);

/** What a season for the public is called by, so that not even the lawn's key is in it. */
export const publicKeyOf = (lawn: Parameters<typeof feedKeyOf>[0]): string =>
  contentHash(`${feedKeyOf(lawn)} ${PUBLIC_PLACE}`);

/** What the events of a reader of this lawn are called by. */
export const keyOfReader = (lawn: Parameters<typeof feedKeyOf>[0], reader: Pick<Reader, 'id' | 'as'>): string =>
  readerKey(reader.as === 'public' ? publicKeyOf(lawn) : feedKeyOf(lawn), reader);

/** The lawn of a season for the public. No lawn file can have this id. */
export const PUBLIC_PLACE = 'a place';
