import * as Plot from '@observablehq/plot';
import { civil, partsOf } from '../../../base/day.ts';
import type { Display } from '../../../base/display.ts';
import type { Size, Span } from './plot.ts';

interface Month {
  readonly start: number;
  readonly middle: number;
  readonly name: string;
}

/** The months of a span that are at least half in it. */
function monthsOf({ from, to }: Span, { kind }: Size, display: Display): Month[] {
  const { year, month } = partsOf(from);
  const months: Month[] = [];
  for (let i = month; ; i++) {
    const [start, end] = [civil(year, i, 1), civil(year, i + 1, 1)];
    if (start > to) return months;
    const [first, last] = [Math.max(start, from), Math.min(end, to)];
    const name = display.month(((i - 1) % 12) + 1, kind === 'wide' ? 'short' : 'narrow');
    months.push({ start, middle: (first + last) / 2, name: last - first > 14 ? name : '' });
  }
}

/** Thin lines where months begin, down the whole of a chart. */
export const monthLines = (span: Span, size: Size, display: Display, height: number) =>
  Plot.ruleX(
    monthsOf(span, size, display).filter(({ start }) => start > span.from),
    { x: 'start', y1: 0, y2: height, stroke: 'var(--line)', strokeWidth: 1 },
  );

/** Their names in a line. @param y Middle of the line [px]. */
export const monthNames = (span: Span, size: Size, display: Display, y: number) =>
  Plot.text(monthsOf(span, size, display), { x: 'middle', y: () => y, text: 'name', fill: 'var(--soft)' });
