import { parseDay } from '../base/day.ts';
import { type Display, displayOf } from '../base/display.ts';
import type { Application, Season, Spread } from '../model/season.ts';
import { wordsOf } from '../words/words.ts';

/** What moved between two plans of one lawn, and by how much. */
export interface Move {
  readonly id: string;
  readonly name: string;
  readonly season: number;
  readonly what: 'new' | 'gone' | 'status' | 'date' | 'opens' | 'closes' | 'amount';
  readonly before: string | null;
  readonly after: string | null;
  /** Days later (earlier below zero), where both are days. */
  readonly days: number | null;
}

const PLACES = ['opens', 'closes'] as const;

/** Compares an earlier plan with a later one, application by application. */
export function compareSeasons(before: Season, after: Season): Move[] {
  const key = ({ id, season }: Application) => `${season} ${id}`;
  const earlier = new Map(before.applications.map((one) => [key(one), one]));
  const later = new Map(after.applications.map((one) => [key(one), one]));
  const gone = before.applications.filter((one) => !later.has(key(one)));
  return [
    ...after.applications.flatMap((one) => {
      const old = earlier.get(key(one));
      return old ? movesOf(old, one) : [move(one, 'new', null, one.date ?? one.status)];
    }),
    ...gone.map((one) => move(one, 'gone', one.date ?? one.status, null)),
  ];
}

function movesOf(old: Application, now: Application): Move[] {
  const middle = ({ p50 }: Spread) => p50;
  const amountOf = ({ areas }: Application) =>
    areas.flatMap(({ id, amount }) => (amount === null ? [] : [`${id} ${amount}`])).join(', ') || null;
  const pairs: [Move['what'], string | null, string | null][] = [
    ['status', old.status, now.status],
    ['date', old.date, now.date],
    ...PLACES.map((edge): [Move['what'], string | null, string | null] => [
      edge,
      middle(old.window[edge]),
      middle(now.window[edge]),
    ]),
    ['amount', amountOf(old), amountOf(now)],
  ];
  return pairs.filter(([, a, b]) => a !== b).map(([what, a, b]) => move(now, what, a, b));
}

function move(
  { id, name, season }: Application,
  what: Move['what'],
  before: string | null,
  after: string | null,
): Move {
  const [a, b] = [parseDay(before ?? ''), parseDay(after ?? '')];
  return { id, name, season, what, before, after, days: a === null || b === null ? null : b - a };
}

/** The moves in words, a line each; one line that says so where nothing moved. */
export function movesInWords(moves: readonly Move[], before: Season, after: Season): string[] {
  const display = displayOf(after.display.units, after.display.language);
  if (moves.length === 0) return [`Nothing has moved since the plan of ${before.asOf}.`];
  return moves.map(
    ({ name, what, before: a, after: b, days }) =>
      `${name}: ${sentence(what, shown(a, display), shown(b, display), days)}`,
  );
}

const shown = (value: string | null, display: Display): string => {
  const day = parseDay(value ?? '');
  return day === null ? (value ?? 'none') : display.shortDay(day);
};

function sentence(what: Move['what'], before: string, after: string, days: number | null): string {
  const by = days === null ? '' : ` (${wordsOf('en').changes.byDays(days)})`;
  switch (what) {
    case 'new':
      return `new, ${after}`;
    case 'gone':
      return `no longer in the plan, was ${before}`;
    case 'status':
      return `${before} → ${after}`;
    case 'date':
      return `day ${before} → ${after}${by}`;
    case 'opens':
      return `opens ${before} → ${after}${by}`;
    case 'closes':
      return `closes ${before} → ${after}${by}`;
    case 'amount':
      return `amount ${before} → ${after}`;
  }
}
