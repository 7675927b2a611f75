import type { Display } from '../base/display.ts';
import type { AreaError, AreaSketch } from '../model/area-sketch.ts';

const BASES: Readonly<Record<AreaError['basis'], string>> = {
  stated: 'by the error that the file states',
  points: 'by chance errors of its points',
  'common-practice': 'usual for this way of measuring',
};

/** How an area was measured, by the key of its shape. */
const KINDS: Readonly<Record<string, string>> = {
  sides: 'triangle by its sides',
  offsets: 'offsets along a line',
  radii: 'radii round a point',
  geographic: 'coordinates',
  measured: 'known by its size',
};

export const areaWords = {
  kind: ({ kind }: AreaSketch): string => KINDS[kind] ?? kind,
  error: ({ error, size }: AreaSketch, display: Display): string =>
    error === null || size <= 0
      ? 'not known'
      : `${display.area(error.value)} (${((100 * error.value) / size).toFixed(1)} %), ${BASES[error.basis]}`,
  /** Lines below a drawing: what it shows, and what it cannot. */
  notes: (sketch: AreaSketch, display: Display): string[] => [
    `${display.area(sketch.size)}; ${areaWords.kind(sketch)}`,
    ...(sketch.error === null ? [] : [`May be off by ${areaWords.error(sketch, display)}.`]),
    ...(sketch.setback === null
      ? []
      : [
          `Hatched: a strip of ${display.distance(sketch.setback.width)} stays untreated, ${display.area(sketch.setback.size)}.`,
        ]),
    ...sketch.parts.map(({ number, kind, lengths, at }) => {
      const measures = lengths.map(display.distance).join(' x ');
      const radius = kind === 'circle' ? ' radius' : '';
      return `Hole ${number}: ${KINDS[kind] ?? kind}${measures === '' ? '' : `${radius} ${measures}`}, at ${at.map(display.distance).join(', ')}.`;
    }),
    ...(sketch.unplaced.count === 0
      ? []
      : [`Not drawn, since nobody measured where: ${display.area(sketch.unplaced.size)} that is taken off.`]),
    ...(sketch.measured.length === 0 ? ['Its form is not known; the square shows its size alone.'] : []),
    ...(sketch.guessed
      ? ['How far to the left or right the far side lies was not measured; it is drawn in the middle.']
      : []),
    ...(sketch.north ? ['North is up.'] : []),
    ...(sketch.sides.length > 0 ? ['Numbers in circles: edges. In squares: holes.'] : []),
  ],
  columns: ['Area', 'Measured as', 'Size', 'May be off by'] as const,
  inAll: (size: string): string => `In all ${size}.`,
  written: (files: readonly string[]): string => `Drawn: ${files.join(', ')}`,
  notWritten: 'Nothing was written. With --out FOLDER a drawing of each area goes there.',
};
