/** Shapes of many numbers that are typed one after the other, so that whoever walks with a tape sees the area grow. */

/** A shape that waits for its numbers. */
export interface Series {
  /** What is asked for next. @param number Counted from 1. */
  readonly prompt: (number: number) => string;
  readonly example: string;
  /** So many make an area. */
  readonly least: number;
  /** How one entry looks. */
  readonly form: RegExp;
  /** The whole answer, as if it had been typed on one line. */
  readonly text: (entries: readonly string[]) => string;
}

const NUMBER = String.raw`[+-]?\d*\.?\d+`;
const ONE = new RegExp(`^${NUMBER}$`);
const TWO = new RegExp(String.raw`^${NUMBER}(?:\s*,\s*|\s+)${NUMBER}$`);

const joined = (entries: readonly string[]): string => entries.map((one) => one.replace(/\s*,\s*/, ' ')).join(', ');

/**
 * The series that an answer begins without a number of it.
 *
 * @example seriesIn('side: offsets every 10 ft')?.prompt(1) //=> 'Width 1 (ft)'
 * @returns Null for an answer that is whole, or no such shape.
 */
export function seriesIn(text: string): Series | null {
  const asked =
    /^(?<name>.*?)\b(?<kind>offsets\s+every\s+[\d.]+|radii|polygon|points)(?:\s+in)?\s*(?<unit>[a-z]*)\s*$/is.exec(
      text,
    );
  const { name = '', kind = '', unit = '' } = asked?.groups ?? {};
  if (kind === '') return null;
  const behind = unit === '' ? '' : ` (${unit})`;
  const of = (what: string, words: string, rest: Pick<Series, 'example' | 'least' | 'form'>): Series => ({
    prompt: (number) => `${what} ${number}${behind}`,
    ...rest,
    text: (entries) => `${name}${words} ${joined(entries)}${unit === '' ? '' : ` ${unit}`}`,
  });
  switch (kind.toLowerCase().split(/\s/)[0]) {
    case 'offsets':
      return of('Width', `${kind} widths`, { example: '12', least: 1, form: ONE });
    case 'radii':
      return of('Radius', kind, { example: '7.1', least: 4, form: ONE });
    case 'polygon':
      return of('Corner', kind, { example: '62, 48', least: 3, form: TWO });
    default:
      return of('Point', kind, { example: '38.4, -72.6', least: 3, form: TWO });
  }
}
