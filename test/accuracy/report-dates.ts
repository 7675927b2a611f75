/** Errors of dates as text: station by station, then in sum. */
import { type DateError, dateSummary, EVENTS } from './dates.ts';
import { type Depth, isEast, type Station } from './stations.ts';
import { heading, num, percent, signed } from './tables.ts';

/** A way of prediction with its dates. */
export interface Dated {
  readonly name: string;
  readonly errors: readonly DateError[];
}

const cell = (error: DateError['error'] | undefined): string =>
  typeof error === 'number'
    ? signed(error, 5, 0)
    : error === 'only measured'
      ? 'never'
      : error === 'only predicted'
        ? 'extra'
        : '    .';

/** The last word of a way's name where it is short, else its beginning. */
const short = (name: string): string => name.split(/[ -]/).findLast((word) => word.length <= 4) ?? name.slice(0, 4);

/** Every station and year: days that each way is late (+) or early (-). */
export function stationDates(ways: readonly Dated[]): string {
  const [first] = ways;
  const parts = [3, 7].flatMap((hold) =>
    ([5, 10] as const).map((depth) => {
      const events = EVENTS.filter((event) => event.hold === hold);
      const rows = first?.errors.filter((one) => one.depth === depth && one.event === events[0]) ?? [];
      const lines = rows.map(({ station, year }) => {
        const of = ({ errors }: Dated, event: (typeof events)[number]) =>
          errors.find(
            (one) => one.station === station && one.depth === depth && one.year === year && one.event === event,
          )?.error;
        return (
          `${station.name.slice(0, 24).padEnd(25)}${year}` +
          events.map((event) => ` |${ways.map((way) => cell(of(way, event))).join('')}`).join('')
        );
      });
      const width = 5 * ways.length;
      return `${heading(`b. Dates at ${depth} cm, 5-day mean held ${hold} days: days late (+) or early (-)`)}${' '.repeat(29)}${events
        .map(({ label }) => ` |${label.padStart(width)}`)
        .join('')}
station                  year${events.map(() => ` |${ways.map(({ name }) => short(name).padStart(5)).join('')}`).join('')}
${lines.join('\n')}
`;
    }),
  );
  return `${parts.join('')}".": measured soil has no such event, or a gap hides it.\n"never": measured, not predicted; "extra": predicted, not measured.\n`;
}

const SETS: readonly { label: string; depth: Depth; holds(station: Station): boolean }[] = [
  { label: 'all 50', depth: 5, holds: ({ weight }) => weight === 1 },
  { label: 'all 50', depth: 10, holds: ({ weight }) => weight === 1 },
  { label: 'east', depth: 5, holds: isEast },
  { label: 'Phoenix Park', depth: 10, holds: ({ weight }) => weight !== 1 },
];

export const dateSummaries = (ways: readonly Dated[]) =>
  SETS.flatMap(({ label, depth, holds }) =>
    EVENTS.flatMap((event) =>
      ways.map(({ name, errors }) => ({
        set: label,
        depth,
        event: { label: event.label },
        hold: event.hold,
        way: name,
        ...dateSummary(errors.filter((one) => one.depth === depth && one.event === event && holds(one.station))),
      })),
    ),
  ).filter(({ n, onlyMeasured }) => n + onlyMeasured > 0);

export function dateSummaryText(ways: readonly Dated[]): string {
  const lines = dateSummaries(ways).map(
    (one, i) =>
      `${i % ways.length === 0 ? `\n${one.set.padEnd(13)}${String(one.depth).padStart(2)} cm  ${one.event.label.padEnd(11)}${one.hold} d` : ' '.repeat(33)}  ` +
      `${one.way.padEnd(12)}${num(one.n, 4, 0)}${num(one.mae, 7, 1)}${num(one.median, 7, 1)}${signed(one.bias, 7, 1)}` +
      `${percent(one.within3, 6)}${percent(one.within7, 6)}${num(one.onlyMeasured, 6, 0)}${num(one.onlyPredicted, 6, 0)}`,
  );
  return `${heading('b. Dates in sum: error in days')}set                event    held   way            n   mean median   mean  <=3 d <=7 d  only one has
                                                  error  error   bias     %     %  soil  pred.${lines.join('\n')}
`;
}
