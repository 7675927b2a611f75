import { displayOf } from '../../base/display.ts';
import type { Application, Season } from '../../model/season.ts';
import { type DraftEvent, notice, shownDay, withAsOf, wordsFor } from './draft.ts';

/** Millimetres of rain that make a difference to what is left: a tenth of an inch, as rain gauges are read. */
const GAUGED_MM = 2.54;
const gaugedOf = (fallenMm: number | null): number => Math.floor((fallenMm ?? 0) / GAUGED_MM + 1e-9);

/** Watering in: from the day of the work to the last day for it. */
export function waterEvent(season: Season, application: Application): DraftEvent[] {
  const { id, name, date, season: year, waterIn, status } = application;
  if (date === null || waterIn === null) return [];
  const { depthMm, fallenMm, by, irrigated } = waterIn;
  const display = displayOf(season.display.units, season.display.language);
  const depth = (mm: number) => display.depth(mm / 1000);
  const left = depthMm === null ? null : Math.max(0, depthMm - (fallenMm ?? 0));
  const shown = left === null ? null : depth(left);
  const rained = fallenMm === null || fallenMm === 0 ? null : depth(fallenMm);
  const words = wordsFor(season);
  return [
    notice(season, {
      kind: 'water',
      year,
      part: id,
      step: id,
      first: date,
      last: by ?? date,
      summary: left === 0 ? words.rainedInTitle(name) : words.waterTitle(name, shown),
      description: withAsOf(season, [
        words.waterText(depthMm === null ? null : depth(depthMm), by === null ? null : shownDay(season, by)),
        ...(rained === null ? [] : [words.rained(rained, shown)]),
        ...(irrigated ? [] : [words.noIrrigation]),
        words.labelWins,
      ]),
      status: status === 'expected' ? 'TENTATIVE' : 'CONFIRMED',
      substance: [date, by, depthMm, left === 0, gaugedOf(fallenMm), irrigated, status === 'expected', name],
    }),
  ];
}
