import * as Plot from '@observablehq/plot';
import { parseDay } from '../../../base/day.ts';
import type { Application } from '../../../model/season.ts';
import type { Html } from '../../html.ts';
import { nameOf, shortDay, type Told } from '../told.ts';
import { monthLines, monthNames } from './months.ts';
import { drawn, type Size, type Span, widthOf, xOf } from './plot.ts';
import { lined } from './text-lines.ts';

/** Heights of a row and of its parts [px]. */
const NARROW = { row: 38, name: 10, band: 26 };
const WIDE = { row: 21, second: 13, line: 15.5 };
/** Lines of the months stop short of letters. */
const HALO = { stroke: 'var(--paper)', strokeWidth: 5 };
const BAND = 12;
const HEAD = 26;

interface Row {
  readonly application: Application;
  /** Top of the row. */
  readonly top: number;
  readonly height: number;
  /** Middle of the band. */
  readonly y: number;
  /** The name of the step. */
  readonly lines: readonly { readonly text: string; readonly y: number }[];
  /** The chosen day, or how the step stands. */
  readonly mark: string;
  readonly days: { readonly [key in 'in' | 'opens' | 'closes' | 'out' | 'chosen' | 'usual']: number | null };
}

const gone = ({ status }: Application): boolean => status === 'dropped' || status === 'skipped' || status === 'missed';

function rowsOf(told: Told, size: Size): Row[] {
  const { season, words } = told;
  let top = HEAD;
  return season.applications.map((application) => {
    const { status, date, window } = application;
    const label = date !== null && !gone(application) ? (shortDay(date, told) ?? '') : words.sheet.status[status];
    const row = {
      application,
      top,
      ...named(nameOf(application, told), top, size),
      mark: status === 'done' ? `${words.sheet.status.done}, ${label}` : label,
      days: {
        in: parseDay(window.opens.p10 ?? ''),
        opens: parseDay(window.opens.p50 ?? ''),
        closes: parseDay(window.closes.p50 ?? window.closes.p90 ?? ''),
        out: parseDay(window.closes.p90 ?? window.closes.p50 ?? ''),
        chosen: gone(application) ? null : parseDay(date ?? ''),
        usual: parseDay(window.opens.usual ?? ''),
      },
    };
    top += row.height;
    return row;
  });
}

/** A name on a line of its own above its band on a phone; else left of it, in two lines where it is long. */
function named(name: string, top: number, size: Size): Pick<Row, 'height' | 'y' | 'lines'> {
  if (size.kind === 'narrow') {
    const [text = ''] = lined(name, size.font, size.width - 4, 1);
    return { height: NARROW.row, y: top + NARROW.band, lines: [{ text, y: top + NARROW.name }] };
  }
  const texts = lined(name, size.font, size.left - 10, 2);
  const height = WIDE.row + (texts.length - 1) * WIDE.second;
  const y = top + height / 2;
  return { height, y, lines: texts.map((text, i) => ({ text, y: y + (i - (texts.length - 1) / 2) * WIDE.line })) };
}

/** Pieces of the bands: where a window opens, is open in most runs, and closes. Of work that is over none is drawn solid. */
function pieces(rows: readonly Row[], span: Span) {
  return rows.flatMap(({ application, y, days }) => {
    const { in: first, opens, closes, out } = days;
    if (opens === null || application.status === 'dropped' || application.status === 'skipped') return [];
    const kind = application.status === 'done' ? 'done' : 'plan';
    // A window without a last day fades out to the end.
    const [a, d] = [first ?? opens, out ?? closes ?? span.to];
    const last = Math.max(opens, closes ?? opens);
    return [
      { from: a, to: opens, fill: `url(#${kind}-in)` },
      { from: opens, to: last, fill: `var(--${kind === 'done' ? 'moss-band' : 'navy-band'})` },
      { from: last, to: d, fill: `url(#${kind}-out)` },
    ]
      .map((one) => ({ ...one, from: Math.max(one.from, span.from), to: Math.min(one.to, span.to), y }))
      .filter(({ from, to }) => to > from);
  });
}

/** What is said of a row: beside its band on its right, or on its left where there is no room. */
function sideOf({ days, mark }: Row, size: Size, span: Span): { readonly x: number; readonly anchor: 'start' | 'end' } {
  const ends = [days.out, days.closes, days.chosen].filter((day) => day !== null);
  const begins = [days.in, days.opens, days.chosen].filter((day) => day !== null);
  if (ends.length === 0) return { x: span.from, anchor: 'start' };
  const end = Math.max(Math.min(Math.max(...ends), span.to), span.from);
  const right = xOf(end, size, span) + 10 + widthOf(mark, size.font);
  return right < size.width ? { x: end, anchor: 'start' } : { x: Math.min(...begins), anchor: 'end' };
}

/** A row a step: its window as a band that fades where runs of weather differ, the chosen day, done work. */
export function rowsChart(told: Told, size: Size, span: Span): Html {
  const { season, display } = told;
  const rows = rowsOf(told, size);
  const height = HEAD + rows.reduce((sum, row) => sum + row.height, 0) + 6;
  const today = parseDay(season.asOf) ?? span.from;
  const isSeen = (day: number | null) => day !== null && day >= span.from && day <= span.to;
  const chosen = rows.filter(({ days }) => isSeen(days.chosen));
  const isDone = ({ application }: Row) => application.status === 'done';
  const names = rows.flatMap(({ lines }) => lines);
  const sides = rows.map((row) => ({ ...row, ...sideOf(row, size, span) }));
  const side = (anchor: 'start' | 'end') =>
    Plot.text(
      sides.filter((one) => one.anchor === anchor),
      {
        x: 'x',
        y: 'y',
        text: 'mark',
        textAnchor: anchor,
        dx: anchor === 'start' ? 9 : -9,
        fill: 'var(--ink)',
        ...HALO,
      },
    );
  return drawn(size, span, height, [
    monthLines(span, size, display, height),
    Plot.ruleY(rows, { y: 'top', stroke: 'var(--line)', strokeWidth: 0.5 }),
    monthNames(span, size, display, 12),
    Plot.rect(pieces(rows, span), {
      x1: 'from',
      x2: 'to',
      y1: ({ y }) => y - BAND / 2,
      y2: ({ y }) => y + BAND / 2,
      fill: 'fill',
    }),
    Plot.ruleX(
      rows.filter(({ days, application }) => isSeen(days.usual) && !gone(application)),
      {
        x: ({ days }) => days.usual,
        y1: ({ y }) => y + BAND / 2 - 1,
        y2: ({ y }) => y + BAND / 2 + 5,
        stroke: 'var(--ink)',
      },
    ),
    Plot.ruleX([today], {
      x: (day) => day,
      y1: HEAD - 4,
      y2: height,
      stroke: 'var(--ink)',
      strokeWidth: 1,
      strokeDasharray: '2 3',
    }),
    Plot.dot(
      chosen.filter((row) => !isDone(row)),
      {
        x: ({ days }) => days.chosen,
        y: 'y',
        r: 6,
        symbol: 'diamond2',
        fill: 'var(--navy)',
        stroke: 'var(--paper)',
      },
    ),
    Plot.dot(chosen.filter(isDone), {
      x: ({ days }) => days.chosen,
      y: 'y',
      r: 5,
      symbol: 'square',
      fill: 'var(--moss)',
      stroke: 'var(--paper)',
    }),
    Plot.text(names, {
      frameAnchor: 'left',
      dx: -size.left,
      y: 'y',
      text: 'text',
      textAnchor: 'start',
      ...HALO,
      fill: 'var(--ink)',
    }),
    side('start'),
    side('end'),
  ]);
}
