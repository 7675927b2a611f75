import { displayOf } from '../base/display.ts';
import type { Application, Season } from '../model/season.ts';
import { type Column, table } from './table.ts';

const COLUMNS: readonly Column[] = [
  { title: 'Tank' },
  { title: 'Fill to', right: true },
  { title: 'Product', right: true },
  { title: 'Water', right: true },
  { title: 'Covers', right: true },
  { title: 'On', flexible: true },
];

/** The tanks of a step as a table, to take along to the tap; nothing where nothing is sprayed or no sprayer is known. */
export function tankTable({ tanks }: Application, season: Season, width: number): string[] {
  if (tanks.length === 0) return [];
  const display = displayOf(season.display.units, season.display.language);
  const rows = tanks.map(({ areas, count, areaM2, sprayL, waterL, amount }, i) => {
    const before = tanks.slice(0, i).reduce((sum, tank) => sum + tank.count, 0);
    return [
      count === 1 ? `${before + 1}` : `${before + 1}–${before + count}`,
      display.volume(sprayL / 1000),
      amount,
      waterL === null ? 'top up' : display.volume(waterL / 1000),
      display.area(areaM2),
      areas.join(', '),
    ];
  });
  return table(COLUMNS, rows, width);
}
