import { type Place, type Problem, problem } from '../../base/problem.ts';
import type { Name } from './format.ts';

/** The most problems of one kind that are listed; a file in disorder would otherwise print a line a day. */
const MOST = 10;

/** Where a value stands in a text file: line and column from 1. */
export interface Spot {
  readonly line: number;
  readonly column: number;
  readonly length: number;
}

type Code =
  | 'weather-cells'
  | 'weather-line'
  | 'weather-stations'
  | 'not-a-date'
  | 'weather-twice'
  | 'weather-order'
  | 'weather-value'
  | 'weather-range'
  | 'weather-crossed';
type Found = { [C in Code]: [C, Spot, Parameters<typeof problem<C>>[1]] }[Code];

/** Problems of one weather file; of each kind the first few are kept. */
export class Collector {
  readonly problems: Problem[] = [];
  readonly #file: string;
  readonly #counts = new Map<string, number>();
  constructor(file: string) {
    this.#file = file;
  }
  add(...[code, spot, args]: Found): void {
    const count = (this.#counts.get(code) ?? 0) + 1;
    this.#counts.set(code, count);
    if (count <= MOST) this.problems.push(problem(code, args as never, this.place(spot)));
  }
  place(spot: Spot): Place {
    return { file: this.#file, ...spot, length: Math.max(1, spot.length) };
  }
}

/** Lowest and highest air temperature ever measured outdoors [°C]: Vostok 1983, Furnace Creek 1913 (WMO archive). */
export const EXTREMES = { low: -89.2, high: 56.7 } as const;

/** Whether a value [°C or mm] cannot be one of the weather; twice the record leaves °F for the check of a whole file. */
export const impossible = (name: Name, value: number): boolean =>
  name === 'precip' ? value < 0 : value < EXTREMES.low || value > 2 * EXTREMES.high;

/**
 * Where the cell of an index stands in a line of CSV as it is written, quotes and all.
 *
 * @param line Counted from 1.
 */
export function cellSpot(written: string, delimiter: string, line: number, cell: number): Spot {
  let [from, index, quoted] = [0, 0, false];
  for (let i = 0; i <= written.length; i++) {
    if (written[i] === '"') quoted = !quoted;
    if (i < written.length && (quoted || written[i] !== delimiter)) continue;
    if (index === cell) return { line, column: from + 1, length: Math.max(1, i - from) };
    from = i + 1;
    index++;
  }
  return { line, column: 1, length: Math.max(1, written.length) };
}

const NUMBER = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i;

/** A number as files write it; null for anything else. */
export const numberIn = (text: string): number | null => (NUMBER.test(text) ? Number(text) : null);
