import * as Plot from '@observablehq/plot';
import { parseHTML } from 'linkedom';
import { Html } from '../../html.ts';

const { document } = parseHTML('<!doctype html><html><body></body></html>');

/** A size in which a chart is drawn: one for a phone, one for anything wider. */
export interface Size {
  readonly kind: 'narrow' | 'wide';
  readonly width: number;
  /** Room left and right of the days [px]. */
  readonly left: number;
  readonly right: number;
  /** Height of letters [px]: a drawing is as wide as the narrowest phone, or as a page of A4, and only ever grows. */
  readonly font: number;
}

export const SIZES: readonly Size[] = [
  { kind: 'narrow', width: 288, left: 32, right: 20, font: 11.5 },
  { kind: 'wide', width: 720, left: 204, right: 56, font: 12.5 },
];

/** The days of all charts of a sheet, which lie below each other on one axis. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

type Options = Parameters<typeof Plot.plot>[0] & object;

/** What is needed of an element: there is no browser here whose types would tell. */
interface Drawn {
  readonly outerHTML: string;
  querySelector(of: string): { remove(): void } | null;
  querySelectorAll(of: string): Iterable<{ removeAttribute(name: string): void }>;
}

/** A drawing of marks on the axis of days; `y` is in pixels from the top unless `options` say other. */
export function drawn(
  size: Size,
  { from, to }: Span,
  height: number,
  marks: NonNullable<Options['marks']>,
  options: Options = {},
): Html {
  const svg = Plot.plot({
    document,
    className: 'chart',
    width: size.width,
    height,
    marginLeft: size.left,
    marginRight: size.right,
    marginTop: 0,
    marginBottom: 0,
    x: { type: 'linear', domain: [from, to], axis: null },
    y: { type: 'identity', axis: null },
    style: { fontSize: `${size.font}px` },
    marks,
    ...options,
  }) as unknown as Drawn;
  svg.querySelector('style')?.remove();
  // A name belongs to what has a role: the whole drawing is named where it is shown.
  for (const part of svg.querySelectorAll('[aria-label]')) part.removeAttribute('aria-label');
  return new Html(svg.outerHTML.replace(/ d="[^"]*"/g, (path) => path.replace(/(\.\d)\d+/g, '$1')));
}

/** Where a day lies [px]. */
export const xOf = (day: number, { width, left, right }: Size, { from, to }: Span): number =>
  left + ((day - from) / (to - from)) * (width - left - right);

/** The day that lies at a place, also outside of the span. @param x From the left edge of the drawing [px]. */
export const dayAt = (x: number, { width, left, right }: Size, { from, to }: Span): number =>
  from + ((x - left) / (width - left - right)) * (to - from);

/** About how wide a text is [px]; rather more than less, since letters differ from font to font. */
export const widthOf = (text: string, font: number): number => 0.56 * font * [...text].length;
