import { parseDay } from '../base/day.ts';
import type { Display } from '../base/display.ts';
import type { Spread } from '../model/season.ts';

/** The English words of a feed that a Season does not carry. */
export const feedWords = {
  category: 'Lawn',
  calendarAbout: (lawn: string, program: string) =>
    `${program}, for ${lawn}. Dates follow soil temperature and degree days; ranges firm up as the season unfolds.`,
  jobTitle: (name: string, inAll: string | null) => (inAll === null ? name : `${name}: ${inAll}`),
  doneTitle: (name: string) => `Done: ${name}`,
  cancelledTitle: (title: string) => `Cancelled: ${title}`,
  cancelledText: (asOf: string) => `No longer in this calendar as of ${asOf}. There is nothing to do here.`,
  windowTitle: (name: string) => `Window: ${name}`,
  windowText: (opens: Spread, closes: Spread, display: Display) =>
    `Opens ${range(opens, display)}; last good day ${range(closes, display)}. Shown from the middle opening to the middle last day.`,
  whatToDo: 'What to do',
  whatWasDone: 'What was done',
  cautions: 'Take care',
  why: 'Why this day',
  lookFirst: (what: readonly string[]) => `Not judged: ${what.join(', ')}. Look before you start.`,
  asOf: (day: string, observed: string | null, generated: boolean) =>
    `As of ${day}. ${observed === null ? 'No weather of this place was seen' : `Weather observed through ${observed}`}${generated ? '; made-up years after the nearest known climate' : ''}.`,
  labelWins: 'The label in hand, local rules and licensed practice go before this plan.',
} as const;

function range({ p10, p50, p90 }: Spread, display: Display): string {
  const shown = (day: string | null) => {
    const parsed = parseDay(day ?? '');
    return parsed === null ? 'much later' : display.shortDay(parsed);
  };
  return p10 === p90 ? shown(p50) : `about ${shown(p50)} (8 in 10: ${shown(p10)} to ${shown(p90)})`;
}
