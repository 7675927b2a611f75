/** How large a feed may become, and what gives way before it is larger. */
import { type Day, parseDay } from '../../base/day.ts';
import type { LedgerEntry } from '../../model/ledger.ts';
import { removed } from './vanished.ts';

/** Users of calendar services report that subscribed feeds stop being read at about 1 MB or about 1,100 events. */
const FEWER_THAN = { bytes: 1_000_000, events: 1000 } as const;

/** Kinds that go before work that is done, the first first; what is not named goes with the first. */
const EARLY = ['soil-check', 'window', 'buying'];
/** Kinds that go after it. */
const LATE = ['water', 'keep-off', 'job'];

/**
 * A feed of the events that stand, in the order of their starts, where it is under 1 MB and under 1000 events. Else events are left
 * out until it is: what was called off, soil checks, windows, buying, work that is done, watering in, keep-off, at last work to
 * come; of each of them what is farthest from the day of the plan. The soil of today is never left out.
 *
 * @param write A feed of some events, in their order.
 * @returns The feed, and the UIDs that had no room.
 */
export function feedWithin(
  entries: readonly LedgerEntry[],
  asOf: string,
  write: (entries: readonly LedgerEntry[]) => string,
): { readonly text: string; readonly leftOut: ReadonlySet<string> } {
  const standing = entries
    .filter(({ removedOn }) => removedOn === null)
    .sort((a, b) => (a.start < b.start ? -1 : a.start > b.start ? 1 : 0));
  const text = write(standing);
  const leftOut = new Set<string>();
  let [bytes, events] = [bytesOf(text), standing.length];
  const fits = () => bytes < FEWER_THAN.bytes && events < FEWER_THAN.events;
  if (fits()) return { text, leftOut };
  const sizes = text.match(/^BEGIN:VEVENT\r\n.*?^END:VEVENT\r\n/gms)?.map(bytesOf) ?? [];
  const giving = standing
    .map((entry, i) => ({ uid: entry.uid, size: sizes[i] ?? 0, turn: turnOf(entry), far: daysOff(entry, asOf) }))
    .filter(({ turn }) => turn !== null)
    .sort((a, b) => Number(a.turn) - Number(b.turn) || b.far - a.far);
  for (const { uid, size } of giving) {
    if (fits()) break;
    leftOut.add(uid);
    bytes -= size;
    events -= 1;
  }
  return { text: write(standing.filter(({ uid }) => !leftOut.has(uid))), leftOut };
}

/** What the ledger keeps of an event without room: that it has left, where subscribers had it; nothing where they never had. */
export const withoutRoom = (before: LedgerEntry | undefined, asOf: string): LedgerEntry[] => {
  if (before === undefined) return [];
  return [before.removedOn === null ? removed(before, asOf) : before];
};

/** The turn at which an event gives way; null for what keeps a feed from being empty: the soil of today, the word that a feed has ended. */
function turnOf({ kind, status, transparent }: LedgerEntry): number | null {
  if (kind === 'soil' || kind === 'ended') return null;
  if (status === 'CANCELLED') return -1;
  if (kind === 'job' && transparent) return EARLY.length;
  const late = LATE.indexOf(kind);
  return late < 0 ? Math.max(0, EARLY.indexOf(kind)) : EARLY.length + 1 + late;
}

const daysOff = ({ day }: LedgerEntry, asOf: string): number =>
  Math.abs((parseDay(day) as Day) - (parseDay(asOf) as Day));

/** Bytes in UTF-8, as a feed is sent. */
const bytesOf = (text: string): number => new TextEncoder().encode(text).length;
