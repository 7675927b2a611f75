import { type Display, displayOf } from '../base/display.ts';
import { cleaned } from '../base/text.ts';
import type { Application, Season } from '../model/season.ts';
import { dayText } from './day-text.ts';
import { type Column, table, wrapped } from './table.ts';

const COLUMNS: readonly Column[] = [
  { title: 'Tank' },
  { title: 'Fill to', right: true },
  { title: 'Product', right: true },
  { title: 'Water', right: true },
  { title: 'Covers', right: true },
  { title: 'On', flexible: true },
];

/** The sprayer's output and the tanks of each step, to take along to the tap; in full where it is of one step. */
export function sprayerReport(
  season: Season,
  applications: readonly Application[],
  isOne: boolean,
  width: number,
): string {
  const display = displayOf(season.display.units, season.display.language);
  const lines = (text: readonly string[]) =>
    text.flatMap((line) => wrapped(line, width - 2, '  ').map((l) => `  ${l}`));
  const section = (title: string, text: readonly string[]) => (text.length === 0 ? [] : ['', title, ...lines(text)]);
  const steps = applications.flatMap((one) => [
    '',
    ...wrapped(titleOf(one, season.asOf, display), width, '  '),
    ...tankTable(one, display, width),
    ...(isOne ? section('What to do', withoutTanks(one, season)) : []),
    ...(isOne ? section('Not judged: look before you start', one.notJudged) : []),
  ]);
  const cautions = [...new Set(applications.flatMap((one) => one.cautions))];
  return cleaned(
    `${[
      `Sprayer of ${season.lawnName}, as of ${season.asOf}`,
      ...lines(season.sprayer?.how ?? []),
      ...(applications.length === 0 ? ['', 'Nothing that is still to come this season is sprayed.'] : steps),
      ...section('Take care', cautions),
    ].join('\n')}\n`,
  );
}

/** What to do beyond what the head and the table tell. */
const withoutTanks = ({ how, tanks }: Application, { sprayer }: Season): string[] =>
  how.filter((line) => !(sprayer?.how.includes(line) || tanks.some((tank) => tank.line === line)));

function titleOf({ name, id, date, status }: Application, asOf: string, display: Display): string {
  return `${name} (${id}), ${date === null ? status : `${status}, ${dayText(date, asOf, display)}`}`;
}

/** The tanks of a step, full ones in one row. */
function tankTable({ tanks }: Application, display: Display, width: number): string[] {
  const rows = tanks.map(({ areas, count, areaM2, sprayL, waterL, amount }, i) => {
    const before = tanks.slice(0, i).reduce((sum, tank) => sum + tank.count, 0);
    return [
      count === 1 ? `${before + 1}` : `${before + 1}–${before + count}, each`,
      display.volume(sprayL / 1000),
      amount,
      waterL === null ? 'top up' : waterL === 0 ? 'no room' : display.volume(waterL / 1000),
      display.area(areaM2),
      areas.join(', '),
    ];
  });
  return table(COLUMNS, rows, width);
}
