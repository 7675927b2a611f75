import { formatDay, parseDay } from '../../base/day.ts';
import { type Display, displayOf } from '../../base/display.ts';
import type { LedgerEntry } from '../../model/ledger.ts';
import type { Application, Season } from '../../model/season.ts';
import { type Words, wordsOf } from '../../words/words.ts';
import { dayText } from '../day-text.ts';
import { type Change, type Part, wholePart } from '../published-as.ts';
import { changedParts } from './parts.ts';

/** A change as it is told to those who follow the feed. */
export interface Told {
  readonly uid: string;
  /** The revision that brought it. */
  readonly sequence: number;
  readonly what: keyof Words['changes']['heads'];
  readonly kind: string;
  readonly step: string | null;
  /** The days before and after, `YYYY-MM-DD`. */
  readonly before: string | null;
  readonly after: string | null;
  /** Days later (earlier below zero), where it has both. */
  readonly days: number | null;
  readonly title: string;
  /** The whole of it, in one line. */
  readonly text: string;
}

/**
 * Changes in words, in the order of their days. Left out: the soil of today, which changes daily; events that leave the feed,
 * having been called off before; what goes with a job that is itself told as done or cancelled.
 *
 * @example changesInWords(changes, season)[0].text
 * //=> 'Moved: First autumn feed, Sat, Sep 18 → Sat, Sep 25 (7 days later): that day has left the window.'
 */
export const changesInWords = (changes: readonly Change[], season: Season): Told[] =>
  changesOfParts(changes, [wholePart(season)]);

/** The same of a feed of several plans. */
export function changesOfParts(changes: readonly Change[], parts: readonly Part[]): Told[] {
  const told = changes.flatMap((change) => {
    const entry = change.after ?? change.before;
    const part = entry === null ? undefined : parts.find(({ owns }) => owns(entry.uid));
    if (entry === null || part === undefined || entry.kind === 'soil' || change.what === 'removed') return [];
    return [{ ...tell(change, entry, part), part }];
  });
  const isSame = (a: (typeof told)[number], b: (typeof told)[number]) =>
    a.part === b.part && a.season === b.season && a.step === b.step;
  const over = told.filter(({ kind, what }) => kind === 'job' && isOver(what));
  return told
    .filter((one) => one.kind === 'job' || !isOver(one.what) || !over.some((job) => isSame(job, one)))
    .map(({ season: _, part: __, ...one }) => one)
    .sort((a, b) => compare(a.after ?? a.before ?? '', b.after ?? b.before ?? '') || compare(a.uid, b.uid));
}

/** Whether a feed is the first that its ledger knows: everything in it is new. */
export const isFirstFeed = (changes: readonly Change[], events: readonly LedgerEntry[]): boolean =>
  changes.length === events.length && changes.every(({ before }) => before === null);

const isOver = (what: Told['what']): boolean => what === 'done' || what === 'cancelled';
const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

function tell(change: Change, entry: LedgerEntry, { plan, titled }: Part): Told & { readonly season: number } {
  const { before, after } = change;
  const display = displayOf(plan.display.units, plan.display.language);
  const found = plan.applications.find(({ id, season: year }) => id === entry.step && year === entry.season);
  const application = found && { ...found, name: titled(found.name) };
  const what = headOf(change);
  const words = wordsOf(plan.display.language);
  const name = (entry.kind === 'job' && application?.name) || (before ?? entry).summary;
  const title = oneLine(`${words.changes.heads[what]}: ${name}`);
  const [from, to] = [parseDay(before?.day ?? ''), parseDay(after?.day ?? '')];
  return {
    season: entry.season,
    uid: entry.uid,
    sequence: entry.sequence,
    what,
    kind: entry.kind,
    step: entry.step,
    before: before?.day ?? null,
    after: what === 'cancelled' ? null : (after?.day ?? null),
    days: from === null || to === null || what === 'cancelled' ? null : to - from,
    title,
    text: oneLine(`${title}, ${detail({ what, before, after }, application, plan.asOf, display)}`),
  };
}

function headOf({ what, before, after }: Change): Told['what'] {
  if (what === 'removed' || what === 'cancelled') return 'cancelled';
  if (after?.kind === 'job' && after.transparent && !(before?.transparent ?? false)) return 'done';
  if (what === 'new' || before === null || after === null) return 'new';
  return before.day === after.day ? 'changed' : 'moved';
}

function detail(
  { what, before, after }: Pick<Change, 'before' | 'after'> & Pick<Told, 'what'>,
  application: Application | undefined,
  asOf: string,
  display: Display,
): string {
  const words = wordsOf(display.language);
  const shown = (entry: LedgerEntry) => spanOf(entry, asOf, display);
  const standing = after ?? before;
  if (standing === null) return '';
  if (what === 'cancelled') return shown(before ?? standing);
  if (before === null || after === null || what === 'new' || what === 'done') return shown(standing);
  if (what === 'changed') {
    const day = display.day(parseDay(after.day) ?? 0);
    const parts = changedParts(before, after, application?.name ?? null, day, words).map((part) =>
      part === 'amount' && application?.inAll ? words.changes.amountNow(application.inAll) : words.changes.parts[part],
    );
    return `${shown(after)}: ${parts.join(', ')}`;
  }
  const days = (parseDay(after.day) ?? 0) - (parseDay(before.day) ?? 0);
  const reason = after.kind === 'job' && application ? reasonFor(before.day, application, display) : null;
  return `${shown(before)} → ${shown(after)} (${words.changes.byDays(days)})${reason === null ? '' : `: ${reason}`}`;
}

/** Why it moved from a day: what the season says of that day. */
function reasonFor(day: string, { moved, dueSince }: Application, display: Display): string | null {
  if (moved?.from === day) return `${moved.reason}.`;
  const due = dueSince === day ? parseDay(day) : null;
  return due === null ? null : wordsOf(display.language).choice.dueSince(display.day(due));
}

/** The day of an event, or its first and last where it has several. */
function spanOf({ day, allDay, end }: LedgerEntry, asOf: string, display: Display): string {
  const first = dayText(day, asOf, display);
  const after = allDay ? parseDay(end) : null;
  const begins = parseDay(day);
  if (after === null || begins === null || after - begins <= 1) return first;
  return wordsOf(display.language).changes.span(first, dayText(formatDay(after - 1), asOf, display));
}

const oneLine = (text: string): string => text.replace(/\s*\n\s*/g, ' ');
