import * as Plot from '@observablehq/plot';
import { parseDay } from '../../../base/day.ts';
import type { Html } from '../../html.ts';
import type { Told } from '../told.ts';
import { monthLines, monthNames } from './months.ts';
import { dayAt, drawn, type Size, type Span } from './plot.ts';
import { spreadApart } from './spread-apart.ts';
import { lined } from './text-lines.ts';

/** Values of consecutive days. */
export interface Curve {
  readonly start: number;
  readonly values: readonly (number | null)[];
  readonly stroke: string;
  readonly width: number;
  readonly dash?: string;
}

/** A value that steps wait for: a line over the panel, strong where it is awaited, named by a letter. */
export interface Level {
  readonly letter: string;
  readonly label: string;
  readonly value: number;
  /** Days between which it is awaited. */
  readonly awaited: readonly (readonly [number, number])[];
}

/** A panel of curves over the days of the season. */
export interface Panel {
  readonly height: number;
  readonly values: readonly [least: number, most: number];
  readonly ticks: readonly { readonly value: number; readonly label: string }[];
  readonly curves: readonly Curve[];
  readonly band?: {
    readonly start: number;
    readonly low: readonly (number | null)[];
    readonly high: readonly (number | null)[];
  };
  readonly levels: readonly Level[];
  /** Words beside a curve, above or below it [px]. */
  readonly beside: readonly {
    readonly day: number;
    readonly value: number;
    readonly away: number;
    readonly text: string;
  }[];
  readonly today: string;
}

/** Room above the curves for the months and the word of today. */
const HEAD = 36;
const FOOT = 8;
/** Days that words beside a curve have to each end. */
const ROOM = 30;

/** A panel as a drawing. The names of its levels stand in the room on its left, or on a phone their letters on its right. */
export function panelChart({ season, display }: Told, size: Size, span: Span, panel: Panel): Html {
  const { values, curves, band, levels, ticks } = panel;
  const [least, most] = values;
  const height = panel.height + HEAD + FOOT;
  const y = (value: number) => HEAD + ((most - value) / (most - least)) * panel.height;
  const isIn = (value: number | null): value is number => value !== null && value >= least && value <= most;
  const isSeen = (day: number) => day >= span.from && day <= span.to;
  const points = ({ start, values: all }: Pick<Curve, 'start' | 'values'>) =>
    all.map((value, i) => ({ day: start + i, y: isIn(value) && isSeen(start + i) ? y(value) : Number.NaN }));
  const today = parseDay(season.asOf) ?? span.from;
  const isWide = size.kind === 'wide';
  return drawn(size, span, height, [
    monthLines(span, size, display, height),
    monthNames(span, size, display, 10),
    Plot.ruleY(ticks, { y: ({ value }) => y(value), stroke: 'var(--line)', strokeWidth: 0.5 }),
    Plot.text(ticks, {
      frameAnchor: isWide ? 'right' : 'left',
      textAnchor: isWide ? 'start' : 'end',
      dx: isWide ? 6 : -4,
      y: ({ value }) => y(value),
      text: 'label',
      fill: 'var(--soft)',
    }),
    ...(band
      ? [
          Plot.areaY(
            band.low
              .map((low, i) => ({ day: band.start + i, low, high: band.high[i] ?? null }))
              .filter(({ day, low, high }) => isSeen(day) && isIn(low) && isIn(high)),
            { x: 'day', y1: ({ low }) => y(low), y2: ({ high }) => y(high), fill: 'var(--soil)', fillOpacity: 0.16 },
          ),
        ]
      : []),
    Plot.ruleY(levels, { y: ({ value }) => y(value), stroke: 'var(--navy)', strokeWidth: 0.6, strokeDasharray: '1 4' }),
    ...curves.map(({ stroke, width, dash, ...curve }) =>
      Plot.line(points(curve), {
        x: 'day',
        y: 'y',
        stroke,
        strokeWidth: width,
        ...(dash && { strokeDasharray: dash }),
      }),
    ),
    Plot.ruleY(
      levels.flatMap(({ value, awaited }) =>
        awaited
          .map(([from, to]) => ({ value, from: Math.max(from, span.from), to: Math.min(to, span.to) }))
          .filter(({ from, to }) => from < to),
      ),
      { x1: 'from', x2: 'to', y: ({ value }) => y(value), stroke: 'var(--navy)', strokeWidth: 2.4 },
    ),
    Plot.ruleX([today], { x: (day) => day, y1: 34, y2: height, stroke: 'var(--ink)', strokeDasharray: '2 3' }),
    Plot.text([panel.today], {
      x: () => today,
      y: () => 26,
      text: (text) => text,
      fill: 'var(--ink)',
      fontWeight: 600,
      textAnchor: anchorAt(today, span),
    }),
    Plot.text(
      panel.beside.filter(({ day }) => isSeen(day - ROOM) && isSeen(day + ROOM)),
      {
        x: 'day',
        y: ({ value, away }) => y(value) + away,
        text: 'text',
        fill: 'var(--ink)',
        stroke: 'var(--paper)',
        strokeWidth: 4,
        fontStyle: 'italic',
      },
    ),
    ...names(levels, size, span, y, [HEAD + 4, height - 8]),
  ]);
}

/** The word of today leans inward near the ends of the season. */
const anchorAt = (day: number, { from, to }: Span): 'start' | 'middle' | 'end' => {
  const share = (day - from) / (to - from);
  return share < 0.15 ? 'start' : share > 0.85 ? 'end' : 'middle';
};

function names(
  levels: readonly Level[],
  size: Size,
  span: Span,
  y: (value: number) => number,
  range: readonly [number, number],
) {
  const isWide = size.kind === 'wide';
  const places = spreadApart(
    levels.map(({ value }) => y(value)),
    size.font + 4,
    range,
  );
  const all = levels.map(({ letter, label, value }, i) => ({
    at: places[i] ?? 0,
    level: y(value),
    text: isWide ? (lined(`${letter}  ${label}`, size.font, size.left - 26, 1)[0] ?? '') : letter,
  }));
  return [
    Plot.text(all, {
      frameAnchor: isWide ? 'left' : 'right',
      textAnchor: 'end',
      dx: isWide ? -24 : size.right - 1,
      y: 'at',
      text: 'text',
      fill: 'var(--navy)',
    }),
    // From the name to its line, where it had to give way.
    Plot.link(all, {
      x1: () => dayAt(isWide ? size.left - 20 : size.width - size.right + 9, size, span),
      x2: () => dayAt(isWide ? size.left - 3 : size.width - size.right + 1, size, span),
      y1: 'at',
      y2: 'level',
      stroke: 'var(--navy)',
      strokeWidth: 0.8,
    }),
  ];
}
