/** What a site has published, kept beside its publication: what is the whole site's, and a file a place. */
import * as v from 'valibot';
import { parseDay } from '../base/day.ts';
import { id } from './fields.ts';

/** An address that nobody guesses: 128 bits. */
const token = v.pipe(v.string(), v.regex(/^[0-9a-f]{32}$/));

/** A file of the site, from its folder: names of ours, and no way out of it. */
const siteFile = v.pipe(v.string(), v.regex(/^([a-z0-9]+(-[a-z0-9]+)*\/)*[a-z0-9-]+\.(html|ics|txt|xml)$/));

const day = v.pipe(
  v.string(),
  v.check((text) => parseDay(text) !== null),
);

/** What the whole site has published. */
export const SiteLedgerSchema = v.object({
  kind: v.literal('site-ledger'),
  version: v.literal(1),
  /** Places whose pages stand in the site, by id; those that are no longer published with the day on which they ended. */
  places: v.record(id, v.object({ name: v.string(), endedOn: v.nullable(day) })),
  /** The addresses of owners' lawns, by the lawn's id; of each of its readers, by theirs; and the day on which they ended. */
  lawns: v.record(id, v.object({ owner: token, readers: v.record(v.string(), token), endedOn: v.nullable(day) })),
  /** Every file that the site may hold, in order: what is not wanted any more is removed, and nothing else is. */
  files: v.array(siteFile),
});
export type SiteLedger = v.InferOutput<typeof SiteLedgerSchema>;

export const emptySiteLedger: SiteLedger = { kind: 'site-ledger', version: 1, places: {}, lawns: {}, files: [] };
