import type { LedgerEntry } from '../../model/ledger.ts';
import type { Words } from '../../words/words.ts';

type Part = keyof Words['changes']['parts'];

/**
 * What of an event differs, read from the event itself, since nothing else is kept of what subscribers had.
 *
 * @param name The step's name; null for an event without one.
 * @param day Its day as the season's words have it.
 * @param words Those of the season.
 * @returns `details` alone where it is none of what can be told.
 */
export function changedParts(
  before: LedgerEntry,
  after: LedgerEntry,
  name: string | null,
  day: string,
  { feed }: Words,
): Part[] {
  const odds = ({ description }: LedgerEntry) => oddsIn(description, feed.why, day);
  const cautions = ({ description }: LedgerEntry) => sectionIn(description, feed.cautions);
  const [oddsBefore, oddsAfter] = [odds(before), odds(after)];
  const times = before.start !== after.start || before.end !== after.end || before.allDay !== after.allDay;
  const isAmount = after.kind === 'job' && name !== null && before.summary.startsWith(name);
  const parts: [Part, boolean][] = [
    [before.allDay && after.allDay ? 'days' : 'hours', times],
    ['status', before.status !== after.status || before.transparent !== after.transparent],
    [isAmount ? 'amount' : 'title', before.summary !== after.summary],
    ['cautions', cautions(before) !== cautions(after)],
    ['odds', oddsBefore !== null && oddsAfter !== null && oddsBefore !== oddsAfter],
  ];
  const different = parts.flatMap(([part, differs]) => (differs ? [part] : []));
  return different.length > 0 ? different : ['details'];
}

/** The section under a heading; it ends at an empty line. */
function sectionIn(description: string, heading: string): string {
  const lines = description.split('\n');
  const at = lines.indexOf(heading);
  if (at < 0) return '';
  const end = lines.indexOf('', at);
  return lines.slice(at, end < 0 ? undefined : end).join('\n');
}

/** The odds of a day, to ten points as in a revision, by the reason that names the day; null where there was no room for it. */
function oddsIn(description: string, why: string, day: string): number | null {
  const at = description.indexOf(`\n${why}\n`);
  const lines = at < 0 ? [] : description.slice(at).split('\n');
  const [, percent] = lines.flatMap((line) => (line.includes(day) ? [/(\d+)\s?%/.exec(line)] : [])).find(Boolean) ?? [];
  return percent === undefined ? null : Math.round(Number(percent) / 10);
}
