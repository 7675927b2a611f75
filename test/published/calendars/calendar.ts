/**
 * Compares a program of ours with a calendar that somebody published.
 *
 * A file beside this one retypes one publication and exports it as `calendar`; `calendars.test.ts` finds it there. The
 * program is planned at the reference climate nearest to the publication's place. Every difference has a key, and the
 * file gives its reason under that key in `explained`; the test fails on a difference without a reason and on a reason
 * without a difference. The keys:
 *
 *     <step>: day          the median window reaches into the printed days, the chosen day lies outside
 *     <step>: window       the median window (opening to close) has no printed day, or there is none
 *     <step>: rate         the planned nitrogen is not within the printed range
 *     <name>: not in the program      a printed feed or piece of work that no step answers (`step: null`)
 *     <step>: not printed             nitrogen that the program feeds and the publication does not name
 *     year: nitrogen       the season's planned nitrogen is not within the printed range
 */
import type { Application, Season } from '../../../src/model/season.ts';
import { fromPrograms, planProgram } from '../../programs/plan-program.ts';
import { LB_PER_1000_SQFT } from '../pounds.ts';

/** Printed days of a year, `MM-DD` both, the first and the last; past the new year where the last is the earlier. */
export type Printed = readonly [from: string, to: string];

/** A whole month or a run of them, by number. @example months(9, 10) //=> ['09-01', '10-31'] */
export const months = (from: number, to = from): Printed => [`${two(from)}-01`, `${two(to)}-31`];

const two = (month: number): string => String(month).padStart(2, '0');

/** A feed or another piece of work as it is printed. */
export interface PrintedWork {
  /** What the publication calls it. */
  readonly name: string;
  /** The step of the program that answers it; null where none does. */
  readonly step: string | null;
  readonly days: Printed;
  /** Nitrogen at that feed [lb/1000 ft²]: one figure, or from and to; left out where none is printed. */
  readonly N?: number | readonly [number, number];
}

/** A published calendar. */
export interface PublishedCalendar {
  /** Publisher, title, year, and how the text was seen. */
  readonly source: string;
  /** The file in `programs/` that is compared. */
  readonly program: string;
  readonly grass: string;
  /** The place that the publication is for, or the largest town of its region. */
  readonly place: { readonly name: string; readonly latitude: number; readonly longitude: number };
  readonly facts?: Readonly<Record<string, boolean>>;
  readonly pH?: number;
  readonly feeds: readonly PrintedWork[];
  /** Pre-emergents, seeding, coring and the like, where months are printed. */
  readonly other?: readonly PrintedWork[];
  /** Nitrogen of a year [lb/1000 ft²]: one figure, or from and to; left out where none is printed. */
  readonly yearly?: number | readonly [number, number];
  /** Why the program differs, by the key of the difference. */
  readonly explained: Readonly<Record<string, string>>;
}

/** Differences in nitrogen below this are rounding [lb/1000 ft²]. */
const ROUNDING = 0.005;

/**
 * The differences between a published calendar and the program, each with what was found.
 * @param lookup Finds the program and what it extends.
 */
export function differences(calendar: PublishedCalendar, lookup = fromPrograms): ReadonlyMap<string, string> {
  const { season, problems } = planProgram({ ...calendar, ...calendar.place }, lookup);
  if (!season) throw new Error(problems.map(({ message }) => message).join('\n'));
  const found = new Map<string, string>();
  const planned = season.applications.filter((one) => one.season === season.season.year && one.status !== 'dropped');
  const works = [...calendar.feeds, ...(calendar.other ?? [])];
  for (const work of works) {
    const [key, told] = differenceOf(work, planned, season) ?? [];
    if (key !== undefined) found.set(key, told ?? '');
  }
  for (const { step, N } of calendar.feeds) {
    const application = planned.find(({ id }) => id === step);
    if (application && N !== undefined && !within(nitrogenOf(application), N))
      found.set(`${step}: rate`, `${nitrogenOf(application).toFixed(2)} lb`);
  }
  for (const one of planned)
    if (nitrogenOf(one) > 0 && !works.some(({ step }) => step === one.id))
      found.set(`${one.id}: not printed`, `${nitrogenOf(one).toFixed(2)} lb`);
  const total = planned.reduce((sum, one) => sum + nitrogenOf(one), 0);
  if (calendar.yearly !== undefined && !within(total, calendar.yearly))
    found.set('year: nitrogen', `${total.toFixed(2)} lb`);
  return found;
}

function differenceOf(
  { name, step, days }: PrintedWork,
  planned: readonly Application[],
  season: Season,
): readonly [string, string] | null {
  if (step === null) return [`${name}: not in the program`, days.join(' to ')];
  const application = planned.find(({ id }) => id === step);
  if (!application) throw new Error(`The season of ${season.program} has no step "${step}" here.`);
  const { date, window } = application;
  const [opens, closes] = [window.opens.p50, window.closes.p50 ?? season.season.end];
  const told = `${opens} to ${closes}, chosen ${date}; printed ${days.join(' to ')}`;
  if (opens === null || date === null || !daysFrom(opens, closes).some((day) => isPrinted(day, days)))
    return [`${step}: window`, told];
  return isPrinted(date, days) ? null : [`${step}: day`, told];
}

const nitrogenOf = ({ nutrientsGPerM2 }: Application): number => nutrientsGPerM2.N / LB_PER_1000_SQFT;

function within(value: number, printed: number | readonly [number, number]): boolean {
  const [from, to] = typeof printed === 'number' ? [printed, printed] : printed;
  return value >= from - ROUNDING && value <= to + ROUNDING;
}

/** Whether a day `YYYY-MM-DD` is one of the printed days of the year. */
function isPrinted(day: string, [from, to]: Printed): boolean {
  const monthDay = day.slice(5);
  return from <= to ? monthDay >= from && monthDay <= to : monthDay >= from || monthDay <= to;
}

function daysFrom(first: string, last: string): string[] {
  const days: string[] = [];
  for (let at = Date.parse(first); at <= Date.parse(last); at += 86_400_000)
    days.push(new Date(at).toISOString().slice(0, 10));
  return days;
}
