import { problem } from '../../base/problem.ts';
import type { Draft, WrittenShape } from '../../model/draft.ts';
import { type AnswerPlace, examplesOf, type Question } from './question.ts';
import { idOf } from './words.ts';

const EXAMPLE = 'front: rectangle 50 x 40 ft';
const SHAPES = `rectangle 50 x 40 ft, circle radius 30 ft (or diameter), ellipse 60 x 40 ft, triangle 40 x 30 ft (base, height), triangle sides 30, 40, 50 ft, trapezoid 50 x 70 x 30 ft (two parallel sides, height), or an area you know: 4200 sqft`;
const SERIES = `Of many lengths, on one line or, where the shape stands alone (back: polygon ft), number by number: offsets every 10 widths 12, 14, 13 ft (across a line), radii 7.1, 8.9, 9.7, 10.9 ft (from one point, evenly turned), polygon 0 0, 62 0, 62 48, 0 40 ft (corners), points 38.4 -72.6, 38.4 -72.5, 38.5 -72.5 (latitude, longitude)`;

/** Units by the marks that stand behind a number, and numbers by thousands. */
const tidied = (text: string): string =>
  text
    .replace(/(\d)\s*[′']/g, '$1 ft')
    .replace(/(\d)\s*[″"]/g, '$1 in')
    .trim();

/** Lengths, of which the last may name the unit of all: `50 x 40 ft`. */
function lengths(text: string): string[] {
  const parts = tidied(text)
    .split(/\s*(?:[x×*,]|\bby\b)\s*/i)
    .filter((part) => part !== '');
  const unit = parts.at(-1)?.replace(/^[\d.\s]+/, '') ?? '';
  return parts.map((part) => (/^[\d.]+$/.test(part) ? `${part} ${unit}`.trim() : part));
}

/** Shapes whose numbers need a unit behind the last of them. */
const NEEDS_UNIT = /^\s*(offsets|radii|polygon)\b/i;

/** Numbers between commas, several between two of them where they belong together, and the unit behind the last. */
function series(text: string): { readonly numbers: readonly (readonly number[])[]; readonly in?: string } {
  const [, listed = '', unit = ''] = /^(.*?)\s*([a-z]*)$/is.exec(tidied(text)) ?? [];
  const between = listed.replace(/\(([^()]*)\)/g, (_, pair: string) => pair.replaceAll(',', ' '));
  const numbers = between
    .split(/[,;]/)
    .map((group) => group.split(/\s+/).filter((one) => one !== ''))
    .filter((group) => group.length > 0);
  return { numbers: numbers.map((group) => group.map(Number)), ...(unit !== '' && { in: unit }) };
}

/** A shape in words as a lawn file writes it; what is no shape comes back as such, for the schema to refuse. */
function shapeOf(text: string): WrittenShape {
  const [, first = '', rest = ''] = /^(\S*)\s*(.*)$/s.exec(text.trim()) ?? [];
  switch (first.toLowerCase()) {
    case 'rectangle':
      return { rectangle: lengths(rest) };
    case 'square': {
      const [side = ''] = lengths(rest);
      return { rectangle: [side, side] };
    }
    case 'circle': {
      const [, by = 'radius', length = ''] = /^(radius|diameter)?\s*(.*)$/is.exec(rest) ?? [];
      return { circle: { [by.toLowerCase()]: tidied(length) } };
    }
    case 'triangle': {
      const sides = /^sides\b(.*)$/is.exec(rest)?.[1];
      if (sides !== undefined) return { triangle: { sides: lengths(sides) } };
      const [base = '', height = ''] = lengths(rest);
      return { triangle: { base, height } };
    }
    case 'ellipse':
    case 'oval':
      return { ellipse: lengths(rest) };
    case 'trapezoid': {
      const [one = '', other = '', ...height] = lengths(rest);
      return { trapezoid: { sides: [one, other], height: height.join(' x ') } };
    }
    case 'offsets': {
      const [, every = '', widths = ''] = /^every\s+([\d.]+)\s*\S*?\s+widths\b(.*)$/is.exec(rest) ?? [];
      const { numbers, ...unit } = series(widths);
      return { offsets: { every: Number(every), widths: numbers.flat() }, ...unit };
    }
    case 'radii': {
      const { numbers, ...unit } = series(rest);
      return { radii: numbers.flat(), ...unit };
    }
    case 'polygon': {
      const { numbers, ...unit } = series(rest);
      return { polygon: numbers, ...unit };
    }
    case 'points':
      return { points: series(rest).numbers };
    case 'measured':
      return { measured: thousands(rest) };
    default:
      return /^[\d.+-]/.test(first) ? { measured: thousands(text.trim()) } : { [first || 'nothing']: rest };
  }
}

/** What a shape of many numbers lacks, in words; null where it is none, or lacks nothing that the schema tells as well. */
function unfitSeries(shape: string): string | null {
  if (!NEEDS_UNIT.test(shape)) return null;
  const { in: unit, ...written } = shapeOf(shape);
  const numbers = Object.values(written).flatMap((one) =>
    Array.isArray(one) ? one.flat() : Object.values(one as object).flat(),
  );
  if (numbers.length === 0 || numbers.some((one) => !Number.isFinite(one)))
    return 'plain numbers behind the shape, and their unit behind the last, such as polygon 0 0, 62 0, 62 48 ft';
  return unit === undefined ? 'a unit behind the last number: ft, yd or m' : null;
}

/** A number without the commas between its thousands. */
const thousands = (text: string): string => text.replace(/(\d),(?=\d{3}(?!\d))/g, '$1');

/** A part taken off, with its place where that is said: `circle radius 6 ft at 20, 15 ft`. */
function partOf(text: string): WrittenShape {
  const [shape = '', at] = text.split(/\s+at\s+/i);
  return { ...shapeOf(shape), ...(at !== undefined && { at: lengths(at) }) };
}

/** The parts of `front: rectangle 50 x 40 ft less circle radius 6 ft`; the name may be missing. */
function partsOf(text: string): { readonly name: string; readonly shape: string; readonly less: readonly string[] } {
  const named =
    /^(?<name>.*):(?<shape>[^:]*)$/s.exec(text) ??
    /^(?<name>.*?)\s*\b(?<shape>(?:rectangle|square|circle|ellipse|oval|triangle|trapezoid|offsets|radii|polygon|points|measured)\b.*)$/is.exec(
      text,
    ) ??
    /^(?<name>\D*?)\s*(?<shape>\d.*)$/s.exec(text);
  const { name = '', shape = text } = named?.groups ?? {};
  const [whole = '', ...less] = shape.split(/\s+(?:less|minus)\s+/i);
  return { name: name.trim(), shape: whole, less };
}

/** Puts a shape under its id, with what is taken off it. */
const withArea = (draft: Draft, id: string, area: WrittenShape): Draft => ({
  areas: { ...draft.areas, [id]: area },
});

export const area: Question = {
  id: 'area',
  flags: ['--area <name: shape>'],
  prompt: 'Area',
  help: `A part of the lawn by its name and shape: ${SHAPES}. What is not grass in it can be taken off: ${EXAMPLE} less circle radius 6 ft. ${SERIES}.`,
  examples: [EXAMPLE],
  many: true,
  default: () => null,
  parse(text, draft, _, place) {
    const { name, shape, less } = partsOf(text);
    const id = name === '' ? `area-${Object.keys(draft.areas ?? {}).length + 1}` : idOf(name);
    if (id === '')
      return [problem('new-not-answer', { found: name, expected: 'a name with a letter a to z or a digit' }, place)];
    if (Object.hasOwn(draft.areas ?? {}, id)) return [problem('new-area-twice', { id }, place)];
    const unfit = unfitSeries(shape);
    if (unfit !== null) return [problem('new-not-answer', { found: shape.trim(), expected: unfit }, place)];
    return withArea(draft, id, { ...shapeOf(shape), ...(less.length > 0 && { less: less.map(partOf) }) });
  },
};

/** What is taken off the area that was measured last. It has no flag of its own: `less` in `--area` says the same. */
export const less: Question = {
  id: 'less',
  flags: area.flags,
  prompt: 'Take off',
  help: `A part that is not grass, by its shape: ${SHAPES}. Where it lies may follow: at 20, 15 ft (its first corner or its middle, from the first corner of the area). Enter alone: nothing more.`,
  examples: ['circle radius 6 ft'],
  many: true,
  default: () => null,
  parse(text, draft, _, place: AnswerPlace) {
    const last = Object.entries(draft.areas ?? {}).at(-1);
    if (!last) return [problem('new-missing', { asked: area.prompt, example: examplesOf(area) }, place)];
    const [id, before] = last;
    const taken = (before.less as readonly WrittenShape[] | undefined) ?? [];
    return withArea(draft, id, { ...before, less: [...taken, partOf(text.replace(/^(less|minus)\s+/i, ''))] });
  },
};
