/**
 * The figures of a program, typed a second time from the publications, and what is wrong where the two do not agree.
 * A file in `cited/` holds those of the program of the same name.
 */
import { parse } from 'yaml';
import { type Measure, parseQuantity } from '../../src/base/quantity.ts';
import { withExtended } from '../../src/read/extends.ts';
import { openYaml } from '../../src/read/validate.ts';
import { COMMON_PRACTICE, type CommonPractice } from './common-practice.ts';
import { fromPrograms } from './plan-program.ts';

/** A figure as the publication has it; of a range the program's value is one end. */
type Is = string | number | readonly [string, string] | readonly [number, number];
/** A step's id, several that share the figure, or `nitrogen`. */
type Steps = string | readonly string[];

export interface Cited {
  /** Step, path inside it (list entries by number), the published value, the key of the source, what it says there. */
  readonly figures: readonly (readonly [step: Steps, path: string, is: Is, source: string, says: string])[];
  /**
   * Figures that lie inside a published range: step, path, the range, the source that prints it (one that the program tells
   * of), what it says there. The range is the publication's and never made round the figure. Of a month, "early" is 1 to 10,
   * "mid" 11 to 20, "late" 21 to the end; a depth in whole centimetres lies within a tenth of an inch of the printed inches.
   * A wait between two printed times is the least and the most that they leave.
   */
  readonly within?: readonly (readonly [
    step: Steps,
    path: string | readonly string[],
    range: readonly [string, string] | readonly [number, number],
    source: string,
    says: string,
  ])[];
  /** Figures without a publication, each with why this value; held against `common-practice.ts` where that has a line. */
  readonly unpublished: readonly (readonly [step: Steps, path: string | readonly string[], why: string])[];
}

/** A figure of a program, with the key of the source that answers for it. */
export interface Figure {
  /** `step.path`. */
  readonly at: string;
  readonly value: string | number;
  readonly source: string | null;
}

const WORDS = ['id', 'name', 'note', 'work', 'lean', 'source', 'step', 'cautions', 'method', 'derived-with'];

/** Whether a value is one that somebody has to answer for: a quantity, a month-day, a number. */
const isFigure = (value: unknown): value is string | number =>
  typeof value === 'number' ||
  (typeof value === 'string' && /^(\d\d-\d\d|[+-]?(\d+\.?\d*|\.\d+)\s*(%|[A-Za-z].*))$/.test(value));

/** Every figure of a program's nitrogen and steps; `data` is the file as plain data. */
export function figuresOf(data: unknown): Figure[] {
  const { nitrogen, steps = [] } = data as { nitrogen?: unknown; steps?: readonly { id: string }[] };
  const found: Figure[] = [];
  const visit = (value: unknown, at: string, source: string | null): void => {
    if (isFigure(value)) found.push({ at, value, source });
    if (value === null || typeof value !== 'object') return;
    const own = (value as { source?: unknown }).source;
    const here = typeof own === 'string' ? own : source;
    for (const [key, inner] of Object.entries(value)) if (!WORDS.includes(key)) visit(inner, `${at}.${key}`, here);
  };
  visit(nitrogen, 'nitrogen', null);
  for (const step of steps) visit(step, step.id, null);
  return found;
}

/**
 * What is wrong between a program and the second typing of its figures: values that differ, another source than the
 * program's, figures listed nowhere or twice, lines that point at nothing, reasons that are missing. What the program
 * takes over from one that it extends need not be listed again.
 */
export function citedFaults(text: string, cited: Cited, name = 'program.yaml'): string[] {
  const { data } = withExtended(openYaml(text, name, 'program'), fromPrograms);
  const whole = figuresOf(data);
  const sources = new Set(Object.keys((data as { sources?: Readonly<Record<string, string>> }).sources ?? {}));
  const byPlace = new Map(whole.map((figure) => [figure.at, figure]));
  const faults: string[] = [];
  const listed = new Map<string, number>();
  const lookUp = (step: string, path: string): Figure | undefined => {
    const at = `${step}.${path}`;
    listed.set(at, (listed.get(at) ?? 0) + 1);
    if (!byPlace.has(at)) faults.push(`${at}: no such figure`);
    return byPlace.get(at);
  };
  for (const [steps, path, is, source, says] of cited.figures)
    for (const step of list(steps)) {
      const figure = lookUp(step, path);
      if (!figure) continue;
      if (!ends(is).some((end) => same(figure.value, end))) faults.push(`${figure.at}: ${figure.value}, not ${is}`);
      if (figure.source !== source) faults.push(`${figure.at}: source ${figure.source}, not ${source}`);
      if (says.trim() === '') faults.push(`${figure.at}: nothing said`);
    }
  for (const [steps, paths, [from, to], source, says] of cited.within ?? [])
    for (const step of list(steps))
      for (const path of list(paths)) {
        const figure = lookUp(step, path);
        if (figure && !lies(figure.value, from, to)) faults.push(`${figure.at}: ${figure.value}, not ${from} to ${to}`);
        if (figure && says.trim() === '') faults.push(`${figure.at}: nothing said`);
        if (figure && !sources.has(source)) faults.push(`${figure.at}: the program does not tell of ${source}`);
      }
  for (const [steps, paths, why] of cited.unpublished)
    for (const step of list(steps))
      for (const path of list(paths)) {
        const figure = lookUp(step, path);
        if (figure && why.trim() === '') faults.push(`${figure.at}: no why`);
        const practice = figure && COMMON_PRACTICE.find(({ at }) => at.test(figure.at));
        if (figure && practice && !practice.usual.some((usual) => isUsual(figure.value, usual)))
          faults.push(`${figure.at}: ${figure.value}, ${UNUSUAL} ${practice.usual.join(' or ')}`);
      }
  for (const { at } of figuresOf(parse(text))) if (!listed.has(at)) faults.push(`${at}: listed nowhere`);
  for (const [at, times] of listed) if (times > 1) faults.push(`${at}: listed ${times} times`);
  return faults;
}

const UNUSUAL = 'not the usual';
/** Whether a fault is that a figure is unlike what is usual, and no worse. */
export const isUnusual = (fault: string): boolean => fault.includes(UNUSUAL);

/** Why nobody published a figure, as the file says; null for one that is published, or that it says nothing of. */
export const whyUnpublished = ({ unpublished }: Cited, at: string): string | null =>
  unpublished.find(([steps, paths]) => isAmong(at, steps, paths))?.[2] ?? null;

/** The published range in which a figure lies, in words; null for one that has none. */
export function rangeOf({ within = [] }: Cited, at: string): string | null {
  const found = within.find(([steps, paths]) => isAmong(at, steps, paths));
  return found ? `${found[2].join(' to ')} (${found[3]}: ${found[4]})` : null;
}

const isAmong = (at: string, steps: Steps, paths: Steps): boolean =>
  list(steps).some((step) => list(paths).some((inner) => `${step}.${inner}` === at));

const list = (one: string | readonly string[]): readonly string[] => (typeof one === 'string' ? [one] : one);
const ends = (is: Is): readonly (string | number)[] => (typeof is === 'object' ? is : [is]);

const MEASURES: readonly Measure[] = [
  'length',
  'area',
  'temperature',
  'speed',
  'duration',
  'share',
  'mass per area',
  'volume per area',
];

/** Whether a figure is a usual value, or lies in a usual range. */
export const isUsual = (value: string | number, usual: CommonPractice['usual'][number]): boolean =>
  typeof usual === 'object' ? lies(value, usual[0], usual[1]) : same(value, usual);

/** Whether a figure lies in a range, its ends included; a range of month-days may go across New Year. */
function lies(value: string | number, from: string | number, to: string | number): boolean {
  if (typeof value === 'number') return value >= Number(from) && value <= Number(to);
  if (/^\d\d-\d\d$/.test(value)) {
    const [first, last] = [String(from), String(to)];
    return first <= last ? value >= first && value <= last : value >= first || value <= last;
  }
  return MEASURES.some((measure) => {
    const [x, a, b] = [value, String(from), String(to)].map((text) => parseQuantity(text, measure));
    if (!x || !a || !b || !('value' in x && 'value' in a && 'value' in b)) return false;
    const hair = 1e-9 * Math.max(1e-3, Math.abs(x.value));
    return x.value >= a.value - hair && x.value <= b.value + hair;
  });
}

/** Whether two figures are the same, whatever unit they are written in. */
function same(one: string | number, other: string | number): boolean {
  if (one === other) return true;
  if (typeof one === 'number' || typeof other === 'number') return false;
  return MEASURES.some((measure) => {
    const [a, b] = [parseQuantity(one, measure), parseQuantity(other, measure)];
    return 'value' in a && 'value' in b && Math.abs(a.value - b.value) <= 1e-9 * Math.max(1e-3, Math.abs(a.value));
  });
}
