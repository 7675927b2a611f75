import type { LedgerEntry } from '../../model/ledger.ts';

/** The property of an event that carries what a ledger knows of it beyond what calendars show. */
export const KEPT_NAME = 'X-SOILCLOCK-LEDGER';

/** What stands in it, in this order; none of them has a blank. */
const KEYS = ['kind', 'season', 'step', 'day', 'dueSince', 'hash', 'cancelledOn'] as const;
const NONE = '-';

type Kept = Pick<LedgerEntry, (typeof KEYS)[number]>;

/** The value of the property. @example 'job 2027 autumn-feed-1 2027-09-04 - 0123456789abcdef -' */
export const keptLine = (entry: Kept): string => KEYS.map((key) => entry[key] ?? NONE).join(' ');

/** Reads the value back; nothing is checked yet. Null where it is none of ours. */
export function readKeptLine(value: string): Record<(typeof KEYS)[number], string | number | null> | null {
  const parts = value.split(' ');
  if (parts.length !== KEYS.length) return null;
  const [kind = '', season, step = '', day = '', dueSince = '', hash = '', cancelledOn = ''] = parts;
  const orNull = (part: string) => (part === NONE ? null : part);
  return {
    kind,
    season: Number(season),
    step: orNull(step),
    day,
    dueSince: orNull(dueSince),
    hash,
    cancelledOn: orNull(cancelledOn),
  };
}
