import { formatDay, parseDay } from '../../base/day.ts';
import { displayOf } from '../../base/display.ts';
import type { Purchase, Season } from '../../model/season.ts';
import { type DraftEvent, notice, shownDay, withAsOf, wordsFor } from './draft.ts';

/** Days ahead of the work: a week, then the day before, then the day itself; common practice. */
const AHEAD = [7, 1, 0];

/** What is to be bought, an event a day. It steps to a later day twice at most, where a day passes with the shelf unchanged. */
export function buyingEvents(season: Season): DraftEvent[] {
  const byDay = new Map<string, Purchase[]>();
  for (const purchase of season.shopping) {
    const day = buyingDay(purchase, season.asOf);
    if (day !== null) byDay.set(day, [...(byDay.get(day) ?? []), purchase]);
  }
  return [...byDay].map(([day, purchases]) => buyingOn(season, day, purchases));
}

function buyingDay({ neededOn }: Purchase, asOf: string): string | null {
  const needed = parseDay(neededOn ?? '');
  if (needed === null) return null;
  return AHEAD.map((days) => formatDay(needed - days)).find((day) => day >= asOf) ?? neededOn;
}

function buyingOn(season: Season, day: string, purchases: readonly Purchase[]): DraftEvent {
  const { currency, language, units } = season.display;
  const words = wordsFor(season);
  const { money } = displayOf(units, language);
  const lines = purchases.map(({ name, packages, cost, neededOn }) => {
    const sizes = packages.map(({ size, count }) => `${count} × ${size}`).join(', ');
    const price = cost === null ? null : money(cost, currency);
    return words.buyLine(name, sizes === '' ? null : sizes, price, shownDay(season, neededOn ?? day));
  });
  // A product is bought on one day, so the first in the order of the alphabet tells days apart, and no date is needed.
  const [head = ''] = purchases.map(({ product }) => product).sort();
  return notice(season, {
    kind: 'buying',
    year: season.season.year,
    part: head,
    step: null,
    first: day,
    last: day,
    summary: words.buyTitle(purchases.map(({ name }) => name)),
    description: withAsOf(
      season,
      lines.map((line) => `- ${line}`),
    ),
    substance: [day, purchases.map(({ product, name, packages, neededOn }) => [product, name, packages, neededOn])],
  });
}
