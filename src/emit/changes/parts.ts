import type { LedgerEntry } from '../../model/ledger.ts';
import { feedWords } from '../words-en.ts';
import type { changeWords } from './words-en.ts';

type Part = keyof typeof changeWords.parts;

/**
 * What of an event differs, read from the event itself, since nothing else is kept of what subscribers had.
 *
 * @param name The step's name; null for an event without one.
 * @param day Its day as the season's words have it.
 * @returns `details` alone where it is none of what can be told.
 */
export function changedParts(before: LedgerEntry, after: LedgerEntry, name: string | null, day: string): Part[] {
  const [oddsBefore, oddsAfter] = [oddsIn(before.description, day), oddsIn(after.description, day)];
  const times = before.start !== after.start || before.end !== after.end || before.allDay !== after.allDay;
  const isAmount = after.kind === 'job' && name !== null && before.summary.startsWith(name);
  const parts: [Part, boolean][] = [
    [before.allDay && after.allDay ? 'days' : 'hours', times],
    ['status', before.status !== after.status || before.transparent !== after.transparent],
    [isAmount ? 'amount' : 'title', before.summary !== after.summary],
    ['cautions', cautionsIn(before.description) !== cautionsIn(after.description)],
    ['odds', oddsBefore !== null && oddsAfter !== null && oddsBefore !== oddsAfter],
  ];
  const different = parts.flatMap(([part, differs]) => (differs ? [part] : []));
  return different.length > 0 ? different : ['details'];
}

/** The section of the cautions; it ends at an empty line. */
function cautionsIn(description: string): string {
  const lines = description.split('\n');
  const at = lines.indexOf(feedWords.cautions);
  if (at < 0) return '';
  const end = lines.indexOf('', at);
  return lines.slice(at, end < 0 ? undefined : end).join('\n');
}

/** The odds of a day, to ten points as in a revision, by the reason that names the day; null where there was no room for it. */
function oddsIn(description: string, day: string): number | null {
  const at = description.indexOf(`\n${feedWords.why}\n`);
  const lines = at < 0 ? [] : description.slice(at).split('\n');
  const [, percent] = lines.flatMap((line) => (line.includes(day) ? [/(\d+)\s?%/.exec(line)] : [])).find(Boolean) ?? [];
  return percent === undefined ? null : Math.round(Number(percent) / 10);
}
