import { type Day, formatDay, parseDay } from '../base/day.ts';
import type { Display } from '../base/display.ts';
import type { Application, Purchase } from '../model/season.ts';
import type { Today } from '../model/signals.ts';
import type { Words } from '../words/words.ts';
import { againstUsual } from './in-words/window.ts';

interface NowInput {
  readonly applications: readonly Application[];
  /** The name of a product by its id. */
  readonly names: (product: string) => string;
  readonly shopping: readonly Purchase[];
  /** Whether a step was published, or work written down before it was missed; what a newcomer has missed is not news. */
  readonly begun: (application: Application) => boolean;
  readonly asOf: Day;
  readonly display: Display;
  readonly words: Words;
  readonly currency: string;
}

const WEEK = 7;
const SOON = 21;
/** What has closed longer ago than this is history, not news. */
const RECENT = 30;

/** What now: what is due and open, this week, the next two weeks, what to buy. */
export function whatNow({
  applications,
  names,
  begun,
  shopping,
  asOf,
  display,
  words: { now: words },
  currency,
}: NowInput): string[] {
  const lines: { readonly rank: number; readonly day: Day; readonly line: string }[] = [];
  for (const application of applications) {
    const { name, status, date, window } = application;
    const day = date === null ? null : (parseDay(date) as Day);
    const [total] = application.totals;
    const amount =
      application.inAll === null || !total ? null : words.amountOf(application.inAll, names(total.product));
    const onDay = day === null ? null : display.day(day);
    if (status === 'missed' && begun(application) && (parseDay(window.closes.p50 ?? '') ?? 0) >= asOf - RECENT)
      lines.push({ rank: 1, day: 0, line: words.missed(name) });
    if (status === 'open' || status === 'due') {
      const line =
        status === 'due' && onDay !== null ? words.due(name, onDay, amount) : words.open(name, onDay, amount);
      lines.push({ rank: status === 'due' ? 0 : 2, day: day ?? 0, line });
    } else if (status === 'expected' && day !== null && onDay !== null && day <= asOf + SOON) {
      const line = day < asOf + WEEK ? words.week(name, onDay, amount) : words.threeWeeks(name, onDay, amount);
      lines.push({ rank: day < asOf + WEEK ? 3 : 4, day, line });
    }
  }
  for (const { packages, name, buyBy, cost } of shopping) {
    const day = buyBy === null ? null : parseDay(buyBy);
    if (day === null || day > asOf + SOON || packages.length === 0) continue;
    const what = packages.map(({ size, count }) => `${count} × ${size}`).join(' + ');
    lines.push({
      rank: 5,
      day,
      line: words.buy(what, name, display.day(day), cost === null ? null : display.money(cost, currency)),
    });
  }
  if (lines.length === 0) {
    const next = applications
      .filter(({ date, status }) => status === 'expected' && date !== null && date > formatDay(asOf))
      .sort((a, b) => ((a.date ?? '') < (b.date ?? '') ? -1 : 1))[0];
    return [next ? words.nothing(next.name, display.day(parseDay(next.date ?? '') as Day)) : words.seasonOver];
  }
  return lines.sort((a, b) => a.rank - b.rank || a.day - b.day).map(({ line }) => line);
}

/** An opening this many days off its usual day is worth telling. */
const WORTH_TELLING = 3;

/** What has moved against the usual, and the soil and heat behind it. */
export function movedAgainstUsual(
  applications: readonly Application[],
  today: Today,
  display: Display,
  { now: words }: Words,
): string[] {
  const moved = applications.flatMap(({ name, window, status }) => {
    const [day, usual] = [parseDay(window.opens.p50 ?? ''), parseDay(window.opens.usual ?? '')];
    if (day === null || usual === null || !['expected', 'open', 'due'].includes(status)) return [];
    return Math.abs(day - usual) < WORTH_TELLING
      ? []
      : [words.moved(name, display.shortDay(day), againstUsual(day, usual, display))];
  });
  return moved.length === 0 ? [] : [...moved, words.behindIt, ...today.lines.map((line) => `  ${line}`)];
}
