/** Errors of temperature as text: station by station, then in sum. */
import { type StationScore, summaryOf } from './score.ts';
import { type Depth, isEast } from './stations.ts';
import { heading, num, signed } from './tables.ts';

/** A way of prediction with its scores. */
export interface Scored {
  readonly name: string;
  readonly scores: readonly StationScore[];
}

const cells = ({ rmse, mae, bias }: StationScore) => ` |${num(rmse, 5, 2)}${num(mae, 5, 2)}${signed(bias, 6, 2)}`;

/** Every station: RMSE, MAE and bias of up to four ways side by side. */
export function stationScores(ways: readonly Scored[]): string {
  const [first] = ways;
  const lines = first?.scores.map(
    ({ station, depth }, i) =>
      `${station.name.slice(0, 25).padEnd(26)}${String(depth).padStart(2)}` +
      ways.map(({ scores }) => cells(scores[i] as StationScore)).join(''),
  );
  return `${heading('a. Every station: RMSE, MAE and bias [°C], 1 February to 31 December')}${' '.repeat(28)}${ways
    .map(({ name }) => ` |${name.padStart(16)}`)
    .join('')}
station                   cm${ways.map(() => ' | RMSE  MAE  bias').join('')}
${lines?.join('\n')}
`;
}

/** The sets that are summed up. */
const SETS: readonly { label: string; depth: Depth; holds(score: StationScore): boolean }[] = [
  { label: 'all 50', depth: 5, holds: ({ station }) => station.weight === 1 },
  { label: 'all 50', depth: 10, holds: ({ station }) => station.weight === 1 },
  { label: 'east of 100° W', depth: 5, holds: ({ station }) => isEast(station) },
  { label: 'east of 100° W', depth: 10, holds: ({ station }) => isEast(station) },
  { label: 'Phoenix Park', depth: 10, holds: ({ station }) => station.weight !== 1 },
];

export const summaries = (ways: readonly Scored[]) =>
  SETS.flatMap(({ label, depth, holds }) =>
    ways.map(({ name, scores }) => ({
      set: label,
      depth,
      way: name,
      ...summaryOf(scores.filter((one) => one.depth === depth && holds(one))),
    })),
  );

export function scoreSummary(ways: readonly Scored[]): string {
  const lines = summaries(ways).map(
    (one, i) =>
      `${i % ways.length === 0 ? '\n' : ''}${one.set.padEnd(16)}${String(one.depth).padStart(2)} cm  ${one.way.padEnd(16)}` +
      `${num(one.stations, 4, 0)}${num(one.rmse, 10, 3)}${num(one.mae, 8, 3)}${num(one.pooled, 9, 3)}` +
      `${signed(one.bias, 11, 2)}${num(one.biasSd, 9, 2)}`,
  );
  return `${heading('a. In sum [°C]')}                                          median station    pooled     mean   its sd
set                    way                n      RMSE     MAE     RMSE       bias  by site${lines.join('\n')}
`;
}
