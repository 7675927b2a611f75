import { type Problem, problem } from '../base/problem.ts';
import { nearestWord } from '../base/quantity.ts';
import { UNPUBLISHED } from '../model/fields.ts';
import { type Program, ProgramSchema } from '../model/program.ts';
import { isPlain, withExtended } from './extends.ts';
import type { Lookup } from './lookup.ts';
import { judge, openYaml, type Parsed } from './validate.ts';
import type { Path } from './yaml.ts';

/** A program that stands alone: what it extends is nowhere. */
const NOWHERE: Lookup = () => null;

/**
 * Reads a program file and what it extends.
 *
 * @param text The file's text. @param name Its name, for problems. @param lookup Finds the file that it extends.
 * @returns The program where nothing is wrong, and every problem with its place.
 * @example readProgram('kind: program\n…', 'tall-fescue.yaml').problems
 */
export function readProgram(text: string, name: string, lookup: Lookup = NOWHERE): Parsed<Program> {
  const opened = openYaml(text, name, 'program');
  const whole = opened.problems.length > 0 ? opened : withExtended(opened, lookup);
  if (whole.problems.length > 0) return { ...whole, data: undefined } as Parsed<Program>;
  const parsed = judge(ProgramSchema, whole);
  const problems = [...parsed.problems, ...stepProblems(parsed), ...sourceProblems(parsed)];
  const { value, ...rest } = parsed;
  return { ...rest, problems, ...(value && problems.every(({ severity }) => severity !== 'error') && { value }) };
}

/** Visits every map and list entry below a value, with its path. */
function walk(value: unknown, path: Path, visit: (value: unknown, path: Path) => void): void {
  visit(value, path);
  if (value === null || typeof value !== 'object') return;
  for (const [key, inner] of Object.entries(value))
    walk(inner, [...path, Array.isArray(value) ? Number(key) : key], visit);
}

/** Kinds of triggers that look for a crossing. */
const SIGNALS: ReadonlySet<string> = new Set(['soil', 'air', 'growth', 'day-length']);

/** References between steps: ids used twice, unknown or circular; and triggers that say nothing where they stand. */
function stepProblems({ data, place }: Parsed<Program>): Problem[] {
  const steps = isPlain(data) && Array.isArray(data.steps) ? (data.steps as unknown[]) : [];
  const ids = steps.map((step) => (isPlain(step) && typeof step.id === 'string' ? step.id : ''));
  const problems: Problem[] = [];
  const references = new Map<string, { to: string; path: Path }[]>();
  for (const [i, step] of steps.entries()) {
    const id = ids[i] as string;
    if (id !== '' && ids.indexOf(id) !== i) problems.push(problem('duplicate-id', { id }, place(['steps', i, 'id'])));
    const visit = (value: unknown, path: Path): void => {
      if (!isPlain(value)) return;
      const kind = path.at(-1);
      const inOpens = path[3] === 'opens';
      if (inOpens && SIGNALS.has(String(kind)) && 'falls-to' in value && !('from' in value)) {
        problems.push(problem('trigger-from', { found: String(kind) }, place(path, 'key')));
      }
      if (
        kind === 'degree-days' &&
        typeof value['derived-with'] === 'string' &&
        value['derived-with'] !== (value.method ?? 'average')
      ) {
        const args = { method: String(value.method ?? 'average'), derived: value['derived-with'] };
        problems.push(problem('method-mismatch', args, place([...path, 'derived-with'])));
      }
      if (kind !== 'after') return;
      if (inOpens && value.opening === true)
        problems.push(problem('trigger-opening', { found: 'opening' }, place([...path, 'opening'], 'key')));
      if (typeof value.step !== 'string') return;
      const to = value.step;
      if (!ids.includes(to)) {
        const allowed = ids.filter((other) => other !== '');
        problems.push(
          problem('unknown-step', { found: to, allowed, nearest: nearestWord(to, allowed) }, place([...path, 'step'])),
        );
      }
      if (path[2] === 'window') references.set(id, [...(references.get(id) ?? []), { to, path: [...path, 'step'] }]);
    };
    for (const part of ['window', 'if-missed']) if (isPlain(step)) walk(step[part], ['steps', i, part], visit);
  }
  const circle = findCircle(references);
  if (circle) problems.push(problem('circular-after', { path: circle.path }, place(circle.at)));
  return problems;
}

/** The first circle of references, as the ids along it, the first one again at the end. */
function findCircle(
  references: ReadonlyMap<string, readonly { to: string; path: Path }[]>,
): { path: string[]; at: Path } | null {
  const finished = new Set<string>();
  const visit = (id: string, trail: readonly string[]): { path: string[]; at: Path } | null => {
    if (finished.has(id)) return null;
    for (const { to, path } of references.get(id) ?? []) {
      const begun = [...trail, id].indexOf(to);
      if (begun >= 0) return { path: [...[...trail, id].slice(begun), to], at: path };
      const found = visit(to, [...trail, id]);
      if (found) return found;
    }
    finished.add(id);
    return null;
  };
  for (const id of references.keys()) {
    const found = visit(id, []);
    if (found) return found;
  }
  return null;
}

/** Every `source` has to be in the program's table or be one of the two words for a rule without one. */
function sourceProblems({ data, place }: Parsed<Program>): Problem[] {
  if (!isPlain(data)) return [];
  const known = isPlain(data.sources) ? Object.keys(data.sources) : [];
  const problems: Problem[] = [];
  walk({ ...data, sources: null }, [], (value, path) => {
    if (path.at(-1) !== 'source' || typeof value !== 'string') return;
    if (known.includes(value) || (UNPUBLISHED as readonly string[]).includes(value)) return;
    problems.push(
      problem(
        'unknown-source',
        { found: value, allowed: known, nearest: nearestWord(value, [...known, ...UNPUBLISHED]) },
        place(path),
      ),
    );
  });
  return problems;
}
