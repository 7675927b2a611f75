import type { Display } from '../base/display.ts';
import type { Point } from '../base/geometry.ts';
import { between, isInside } from '../base/rings.ts';
import type { AreaSketch, MeasuredLine, Numbered } from '../model/area-sketch.ts';
import { areaWords } from './area-words-en.ts';
import { closed, type Frame, frameOf, pathOf, round } from './drawing-frame.ts';
import { escaped } from './html.ts';
import { wrapped } from './table.ts';

const PANEL = 480;
const MARGIN = 72;
const LINE = 18;
/** Characters of a line of notes. */
const NOTE = 76;
const COLOURS = { grass: '#e9efe2', edge: '#5b6650', strip: '#7d8fb3', measure: '#8a4b2a', text: '#222222' };

/** More lines or edges than these would cover each other's lengths and numbers. */
const MOST_LABELS = 40;

/** How far beside a line its length stands: farther to the side than above, since it is wider than high. */
const AWAY = { high: 18, wide: 22 };

/** Where the length of a line stands: outside of the area where the line is its edge, else near the line's end. */
function labelAt({ from, to, length }: MeasuredLine, [ring = []]: AreaSketch['measured'], { at, scale }: Frame): Point {
  const [across, up] = [(to[1] - from[1]) / length, (from[0] - to[0]) / length];
  const away = (AWAY.high + AWAY.wide * Math.abs(across)) / scale;
  const middle = between([from, to], 0.5);
  const shifted = ([x, y]: Point, by: number): Point => [x + by * across, y + by * up];
  const [right, left] = [away, -away].map((by) => isInside(shifted(middle, by), [ring]));
  if (right === left) return at(shifted(between([from, to], 0.75), away));
  return at(shifted(middle, right ? -away : away));
}

function lengths({ lines, measured }: AreaSketch, frame: Frame, display: Display): string[] {
  const label = (line: MeasuredLine): string => {
    const [x, y] = labelAt(line, measured, frame);
    return `<text x="${round(x)}" y="${round(y + 4)}">${escaped(display.distance(line.length))}</text>`;
  };
  return [
    `<g fill="none" stroke="${COLOURS.measure}">`,
    ...lines.map(({ from, to }) => `<path d="${pathOf([from, to], frame)}"/>`),
    '</g>',
    `<g fill="${COLOURS.measure}" font-size="12" text-anchor="middle">`,
    ...(lines.length > MOST_LABELS ? [] : lines.map(label)),
    '</g>',
  ];
}

/** Numbers by which the file can name edges (in circles) and holes (in squares). */
function numbers({ sides, holes }: AreaSketch, { at }: Frame): string[] {
  const drawn = (list: readonly Numbered[], mark: (x: string, y: string) => string) =>
    list.flatMap(({ number, at: place }) => {
      const [x, y] = at(place);
      return [mark(round(x), round(y)), `<text x="${round(x)}" y="${round(y + 4)}" stroke="none">${number}</text>`];
    });
  return [
    `<g fill="#ffffff" stroke="${COLOURS.edge}" font-size="11" text-anchor="middle">`,
    ...drawn(sides.length > MOST_LABELS ? [] : sides, (x, y) => `<circle cx="${x}" cy="${y}" r="9"/>`),
    ...drawn(holes, (x, y) => `<rect x="${Number(x) - 9}" y="${Number(y) - 9}" width="18" height="18"/>`),
    '</g>',
  ].map((text) => text.replace('stroke="none"', `stroke="none" fill="${COLOURS.text}"`));
}

/** A square of the area's size, for one of which the form is not known. */
function squareOf(size: number): Point[] {
  const side = Math.sqrt(Math.max(size, 0));
  return [
    [0, 0],
    [side, 0],
    [side, side],
    [0, side],
  ];
}

/**
 * An area as SVG: its edge, holes, setback, the lengths that were measured, and the numbers of its edges.
 *
 * @param title What stands above it.
 * @example areaDrawing('front', sketchOf('front', area), displayOf('us', 'en-US')) //=> '<svg …'
 */
export function areaDrawing(title: string, sketch: AreaSketch, display: Display): string {
  const known = sketch.measured.length > 0;
  const rings = known ? sketch.measured : [squareOf(sketch.size)];
  const frame = frameOf(rings.flat(), PANEL, [MARGIN, 2 * MARGIN]);
  const notes = areaWords.notes(sketch, display).flatMap((note) => wrapped(note, NOTE));
  const width = PANEL + 2 * MARGIN;
  const below = 3 * MARGIN + frame.height;
  const height = round(below + (notes.length + 1) * LINE);
  const edge = closed(rings, frame);
  const ground = known ? closed(sketch.ground, frame) : edge;
  const dashed = known ? '' : ' stroke-dasharray="6 4"';
  return `${[
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" role="img" font-family="sans-serif" font-size="13" fill="${COLOURS.text}">`,
    `<title>${escaped(title)}</title>`,
    `<defs><pattern id="kept" width="8" height="8" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><path d="M0,0 V8" stroke="${COLOURS.strip}" stroke-width="2"/></pattern></defs>`,
    `<rect width="${width}" height="${height}" fill="#ffffff"/>`,
    `<text x="${MARGIN}" y="${MARGIN / 2}" font-size="15" font-weight="bold">${escaped(title)}</text>`,
    ...(sketch.setback ? [`<path d="${edge}" fill="url(#kept)" fill-rule="evenodd"/>`] : []),
    `<path d="${ground}" fill="${COLOURS.grass}" fill-rule="evenodd" stroke="${COLOURS.edge}"${dashed}/>`,
    `<path d="${edge}" fill="none" stroke="${COLOURS.edge}" stroke-width="1.5"${dashed}/>`,
    ...lengths(sketch, frame, display),
    ...numbers(sketch, frame),
    ...notes.map((note, i) => `<text x="${MARGIN}" y="${round(below + i * LINE)}">${escaped(note)}</text>`),
    '</svg>',
  ].join('\n')}\n`;
}
