import { type Day, formatDay, parseDay } from '../base/day.ts';
import { displayOf } from '../base/display.ts';
import type { Application, Season } from '../model/season.ts';
import type { FeedEvent } from './ical.ts';
import { feedWords as words } from './words-en.ts';

/** What an event is about. */
export type EventKind = 'job' | 'window' | 'soil';

/** How much a feed carries: jobs alone, windows too, everything. */
export type Detail = 'quiet' | 'normal' | 'full';

/** An event before it has a revision. */
export interface DraftEvent extends Omit<FeedEvent, 'sequence' | 'lastModified'> {
  readonly kind: EventKind;
  readonly season: number;
  readonly step: string | null;
  /** The chosen day, or the first day of a window. */
  readonly day: string;
  readonly dueSince: string | null;
  /** What makes a revision when it changes: day, hours, status, amounts, product, cautions, odds rounded to 10 points. */
  readonly substance: readonly unknown[];
}

const nextDay = (day: string): string => formatDay((parseDay(day) as Day) + 1);

/** The UID of an event: from feed key, season, step and kind, never from the date. */
const uidOf = (season: Season, kind: EventKind, year: number, step: string | null): string =>
  [season.feedKey, year, step, kind]
    .filter((part) => part !== null)
    .join('-')
    .concat('@soilclock.invalid');

/** The longest description that every client keeps whole. */
const LONGEST = 1900;

/** Lines up to the longest description: `always` whole, then as many of `more` as there is room for. */
function fitted(always: readonly string[], more: readonly string[]): string {
  const kept = [...always];
  let length = kept.join('\n').length;
  for (const line of more) {
    length += line.length + 1;
    if (length > LONGEST) break;
    kept.push(line);
  }
  return kept.join('\n').slice(0, LONGEST);
}

/** The events of a season, in the order of their days. */
export function eventsOf(season: Season, detail: Detail): DraftEvent[] {
  const events = season.applications.flatMap((application) => [
    ...jobEvent(season, application),
    ...(detail === 'quiet' ? [] : windowEvent(season, application)),
  ]);
  return [...events, soilEvent(season)].sort((a, b) => (a.start < b.start ? -1 : a.start > b.start ? 1 : 0));
}

const odds = (share: number | null): number | null => (share === null ? null : Math.round(share * 10) / 10);

function jobEvent(season: Season, application: Application): DraftEvent[] {
  const { id, date, start, end, status, name } = application;
  if (date === null) return [];
  const timed = start !== null && end !== null;
  return [
    {
      uid: uidOf(season, 'job', application.season, id),
      kind: 'job',
      season: application.season,
      step: id,
      day: date,
      dueSince: application.dueSince,
      allDay: !timed,
      start: timed ? start : date,
      end: timed ? end : nextDay(date),
      summary: status === 'done' ? words.doneTitle(name) : words.jobTitle(name, application.inAll),
      description: jobText(season, application),
      status: status === 'expected' ? 'TENTATIVE' : 'CONFIRMED',
      transparent: status === 'done',
      categories: [words.category],
      remindersMin: status === 'done' ? [] : season.remindersMin,
      substance: [
        date,
        start,
        end,
        status,
        application.areas.map(({ id: area, product, amount }) => [area, product, amount]),
        application.cautions,
        odds(application.inWindow),
        application.dueSince,
        name,
        season.remindersMin,
        ...application.secondPasses.map(({ id: area, amount, dial }) => [area, amount, dial]),
        ...application.tanks.map(({ count, sprayL, amount }) => [count, sprayL, amount]),
      ],
    },
  ];
}

function jobText(season: Season, { how, why, notJudged, cautions, status, used }: Application): string {
  const section = (title: string, lines: readonly string[]) =>
    lines.length === 0 ? [] : [title, ...lines.map((line) => `- ${line}`), ''];
  const asOf = words.asOf(season.asOf, season.weather.observedThrough, season.weather.generated);
  if (status === 'done') return fitted([...section(words.whatWasDone, used), asOf], []);
  return fitted(
    [
      ...section(words.whatToDo, how),
      ...(notJudged.length > 0 ? [words.lookFirst(notJudged), ''] : []),
      ...section(words.cautions, cautions),
      words.labelWins,
      asOf,
    ],
    ['', ...section(words.why, why)],
  );
}

function windowEvent(season: Season, application: Application): DraftEvent[] {
  const { id, name, status, window, chance, why, season: year } = application;
  const [first, last] = [window.opens.p50, window.closes.p50];
  if (first === null || last === null || !['expected', 'open', 'due'].includes(status)) return [];
  return [
    {
      uid: uidOf(season, 'window', year, id),
      kind: 'window',
      season: year,
      step: id,
      day: first,
      dueSince: null,
      allDay: true,
      start: first,
      end: nextDay(last),
      summary: words.windowTitle(name),
      description: fitted(
        [
          words.windowText(window.opens, window.closes, displayOf(season.display.units, season.display.language)),
          '',
          words.asOf(season.asOf, season.weather.observedThrough, season.weather.generated),
        ],
        ['', ...why],
      ),
      status: status === 'expected' ? 'TENTATIVE' : 'CONFIRMED',
      transparent: true,
      categories: [words.category],
      remindersMin: [],
      substance: [first, last, status, odds(chance), name],
    },
  ];
}

/** The one event that changes every day: the values of today. A feed is never empty, since this stands in it. */
function soilEvent(season: Season): DraftEvent {
  const { today, asOf } = season;
  return {
    uid: uidOf(season, 'soil', season.season.year, null),
    kind: 'soil',
    season: season.season.year,
    step: null,
    day: asOf,
    dueSince: null,
    allDay: true,
    start: asOf,
    end: nextDay(asOf),
    summary: today.title,
    description: fitted(
      [...today.lines, '', words.asOf(asOf, season.weather.observedThrough, season.weather.generated)],
      ['', ...season.now],
    ),
    status: 'CONFIRMED',
    transparent: true,
    categories: [words.category],
    remindersMin: [],
    substance: [asOf, today.lines, season.now],
  };
}
