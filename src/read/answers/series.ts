/** Shapes of many numbers that are typed one after the other, so that whoever walks with a tape sees the area grow. */

/** A shape that waits for its numbers. */
export interface Series {
  /** What is asked for next. @param number Counted from 1. */
  readonly prompt: (number: number) => string;
  readonly example: string;
  /** So many make an area. */
  readonly least: number;
  /** The unit of the numbers; null where they have none. */
  readonly unit: string | null;
  /** An entry as it is kept: its numbers without their unit; null where it is none, or in another unit. */
  readonly entry: (text: string) => string | null;
  /** The whole answer, as if it had been typed on one line. */
  readonly text: (entries: readonly string[]) => string;
}

const NUMBER = String.raw`[+-]?\d*\.?\d+`;
const ONE = NUMBER;
const TWO = String.raw`${NUMBER}(?:\s*,\s*|\s+)${NUMBER}`;

const joined = (entries: readonly string[]): string => entries.map((one) => one.replace(/\s*,\s*/, ' ')).join(', ');

/**
 * The series that an answer begins without a number of it.
 *
 * @param usual The unit where the answer names none.
 * @example seriesIn('side: offsets every 10 ft', 'm')?.prompt(1) //=> 'Width 1 (ft)'
 * @returns Null for an answer that is whole, or no such shape.
 */
export function seriesIn(text: string, usual: 'ft' | 'm'): Series | null {
  const asked =
    /^(?<name>.*?)\b(?<kind>offsets\s+every\s+[\d.]+|radii|polygon|points)(?:\s+in)?\s*(?<typed>[a-z]*)\s*$/is.exec(
      text,
    );
  const { name = '', kind = '', typed = '' } = asked?.groups ?? {};
  if (kind === '') return null;
  const unit = typed !== '' || /^points/i.test(kind) ? typed : usual;
  const behind = unit === '' ? '' : ` (${unit})`;
  const of = (
    what: string,
    words: string,
    { form, ...rest }: Pick<Series, 'example' | 'least'> & { readonly form: string },
  ): Series => ({
    prompt: (number) => `${what} ${number}${behind}`,
    ...rest,
    unit: unit === '' ? null : unit,
    entry: (one) => new RegExp(`^(${form})${unit === '' ? '' : `\\s*(?:${unit})?`}$`, 'i').exec(one)?.[1] ?? null,
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
