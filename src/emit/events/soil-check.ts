import { formatDay, parseDay } from '../../base/day.ts';
import { displayOf } from '../../base/display.ts';
import type { Application, Season } from '../../model/season.ts';
import { type DraftEvent, notice, withAsOf, wordsFor } from './draft.ts';

/** Days before the middle opening: the soil is then near its threshold; common practice. */
const BEFORE = 7;
/** A published check stands while it is 3 to 14 days before the middle opening: it is a look or two ahead, not a date. */
const STANDS = { early: 7, late: 4 } as const;

/** A look at the soil's own temperature, ahead of a window that it opens. */
export function soilCheckEvent(season: Season, application: Application): DraftEvent[] {
  const { id, name, season: year, soilChecks, status, window } = application;
  const opens = parseDay(window.opens.p50 ?? '');
  if (opens === null || soilChecks.length === 0 || status === 'skipped' || status === 'dropped') return [];
  const day = formatDay(opens - BEFORE);
  const display = displayOf(season.display.units, season.display.language);
  const depths = [...new Set(soilChecks.map(({ depthM }) => display.soilDepth(depthM)))];
  const rules = soilChecks.map(({ rule }) => rule);
  const words = wordsFor(season);
  return [
    notice(season, {
      kind: 'soil-check',
      year,
      part: id,
      step: id,
      first: day,
      last: day,
      summary: words.soilCheckTitle(name, depths),
      description: withAsOf(season, [words.soilCheckText(depths), ...rules.map(words.soilRule)]),
      substance: [depths, rules, name],
      about: { odds: null, days: { start: STANDS, end: STANDS } },
    }),
  ];
}
