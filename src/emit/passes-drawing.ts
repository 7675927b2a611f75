import type { AreaWalk, HalfWalk } from '../model/walk.ts';
import { closed, type Frame, frameOf, pathOf, round } from './drawing-frame.ts';
import { escaped } from './html.ts';

/** An area and the two ways over it, with what is written beside them. */
export interface DrawnArea {
  readonly title: string;
  readonly walk: AreaWalk;
  /** A line below each of the two ways. */
  readonly notes: readonly [string, string];
}

const MARGIN = 24;
const LINE = 18;
const COLOURS = {
  grass: '#e9efe2',
  edge: '#5b6650',
  hole: '#ffffff',
  band: '#7d8fb3',
  way: '#26345c',
  text: '#222222',
};

/** One way over an area: the grass, the band that it covers, the way itself with arrows, where it begins. */
function panel(walk: AreaWalk, half: HalfWalk, frame: Frame, clip: string, marker: string): string[] {
  const area = closed([walk.outer, ...walk.holes], frame);
  const rings = half.round.map((ring) => closed([ring], frame));
  const lines = half.pieces.map((piece) => pathOf(piece, frame));
  const band = [...rings, ...lines].join(' ');
  const [x, y] = frame.at(half.start).map(round);
  const turns = half.pieces
    .slice(1)
    .map(([next], i) => pathOf([(half.pieces[i] as HalfWalk['pieces'][number])[1], next], frame));
  const arrows = lines.map((line) => `<path d="${line}" marker-end="url(#${marker})"/>`);
  return [
    `<clipPath id="${clip}"><path d="${area}" clip-rule="evenodd"/></clipPath>`,
    `<path d="${area}" fill="${COLOURS.grass}" fill-rule="evenodd"/>`,
    `<path d="${band}" clip-path="url(#${clip})" fill="none" stroke="${COLOURS.band}" stroke-opacity="0.3" stroke-width="${round(walk.swath * frame.scale)}" stroke-linecap="round" stroke-linejoin="round"/>`,
    `<path d="${area}" fill="none" stroke="${COLOURS.edge}" stroke-width="1.5"/>`,
    `<g fill="none" stroke="${COLOURS.way}" stroke-width="1.5">`,
    ...rings.map((ring) => `<path d="${ring}" stroke-dasharray="6 3"/>`),
    ...arrows,
    ...turns.map((turn) => `<path d="${turn}" stroke-width="1" stroke-dasharray="1 3"/>`),
    '</g>',
    ...(half.pieces.length > MOST_NUMBERS ? [] : half.pieces.map((piece, i) => numberOf(piece, i + 1, frame))),
    `<circle cx="${x}" cy="${y}" r="5" fill="${COLOURS.way}"/>`,
  ];
}

/** More lines than these would cover each other's numbers. */
const MOST_NUMBERS = 40;

/** How far along its line a number stands, clear of the arrows of its neighbours at both ends. */
const ALONG = 0.3;

/** The number of a line, in the order in which they are walked. */
function numberOf([[ax, ay], [bx, by]]: HalfWalk['pieces'][number], number: number, { at }: Frame): string {
  const [x, y] = at([ax + ALONG * (bx - ax), ay + ALONG * (by - ay)]);
  return `<circle cx="${round(x)}" cy="${round(y)}" r="8" fill="#ffffff" stroke="${COLOURS.way}"/><text x="${round(x)}" y="${round(y + 4)}" font-size="11" text-anchor="middle">${number}</text>`;
}

/** A line that is a round length on the ground. */
function scaleBar({ scale }: Frame, bar: DrawnScale, y: number): string[] {
  const length = round(bar.metres * scale);
  return [
    `<path d="M0,${round(y)} h${length} M0,${round(y - 4)} v8 M${length},${round(y - 4)} v8" fill="none" stroke="${COLOURS.text}"/>`,
    `<text x="0" y="${round(y + LINE)}">${escaped(bar.label)}</text>`,
  ];
}

/** The length of the bar that tells the scale, and its name. */
export interface DrawnScale {
  readonly metres: number;
  readonly label: string;
}

/** How the two ways of an area stand: side by side or below each other, each so wide; and what makes names of parts its own. */
export interface WaysLayout {
  readonly columns: 1 | 2;
  readonly panel: number;
  readonly id: string;
  /** Whether a white sheet lies below it all, for a file that is looked at by itself. */
  readonly isSheet: boolean;
}

const ALONE: WaysLayout = { columns: 2, panel: 360, id: 'area', isSheet: true };

/**
 * The ways over the areas as one SVG: an area a row, its two ways side by side.
 *
 * @param title What stands above it; nothing where it is empty.
 * @param foot Lines below it all.
 * @param bar The length that tells the scale of an area, by the length of its longer side [m].
 */
export function passesDrawing(
  title: string,
  areas: readonly DrawnArea[],
  foot: readonly string[],
  bar: (side: number) => DrawnScale,
  layout: WaysLayout = ALONE,
): string {
  const { columns, panel: side, id, isSheet } = layout;
  const margin = isSheet ? MARGIN : MARGIN / 2;
  const width = columns * side + (columns + 1) * margin;
  const text: string[] = [];
  let y = title === '' ? 0 : MARGIN + LINE;
  for (const [row, { title: name, walk, notes }] of areas.entries()) {
    const frame = frameOf(walk.outer, side);
    text.push(`<text x="${margin}" y="${round(y + LINE)}" font-weight="bold">${escaped(name)}</text>`);
    y += LINE + MARGIN / 2;
    for (const [i, half] of walk.halves.entries()) {
      text.push(
        `<g transform="translate(${margin + (i % columns) * (side + margin)},${round(y)})">`,
        ...panel(walk, half, frame, `${id}-${row}-${i}`, `${id}-on`),
        `<text x="0" y="${round(frame.height + LINE + 6)}">${escaped(notes[i] ?? '')}</text>`,
        ...(i === 0 ? scaleBar(frame, bar(side / frame.scale), frame.height + 2 * LINE + 6) : []),
        '</g>',
      );
      if (columns === 1 || i === 1) y += frame.height + 3 * LINE + MARGIN;
    }
  }
  const height = round(y + foot.length * LINE);
  return `${[
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" ${title === '' ? 'aria-hidden="true"' : 'role="img"'} font-family="sans-serif" font-size="13" fill="${COLOURS.text}">`,
    ...(title === '' ? [] : [`<title>${escaped(title)}</title>`]),
    `<defs><marker id="${id}-on" viewBox="0 0 8 8" refX="7" refY="4" markerWidth="8" markerHeight="8" orient="auto"><path d="M0,0 L8,4 L0,8 Z" fill="${COLOURS.way}"/></marker></defs>`,
    ...(isSheet ? [`<rect width="${width}" height="${height}" fill="#ffffff"/>`] : []),
    ...(title === ''
      ? []
      : [`<text x="${MARGIN}" y="${MARGIN}" font-size="15" font-weight="bold">${escaped(title)}</text>`]),
    ...text,
    ...foot.map((line, i) => `<text x="${margin}" y="${round(y + i * LINE)}">${escaped(line)}</text>`),
    '</svg>',
  ].join('\n')}\n`;
}
