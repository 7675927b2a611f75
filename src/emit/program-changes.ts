import { cleaned } from '../base/text.ts';

/** A program file as plain data. */
type Plain = Readonly<Record<string, unknown>>;

/** What an update of a program changes: of the whole or of one step. */
export interface ProgramChange {
  /** The step; null for what concerns the whole program. */
  readonly step: string | null;
  /** What is other, in words. */
  readonly text: string;
}

/**
 * What is other in a program than it was, step by step, in the words of its file.
 *
 * @param before The file as plain data, as `now`.
 * @example programChanges({ steps: [{ id: 'a', lean: 'early' }] }, { steps: [{ id: 'a' }] })[0].text //=> 'lean was early, is left out'
 */
export function programChanges(before: unknown, now: unknown): readonly ProgramChange[] {
  const { steps: stepsBefore, ...restBefore } = asMap(before);
  const { steps: stepsNow, ...restNow } = asMap(now);
  const [old, fresh] = [byId(stepsBefore), byId(stepsNow)];
  const whole = differences(restBefore, restNow, []).map((text) => ({ step: null, text }));
  const gone = [...old.keys()].filter((id) => !fresh.has(id)).map((step) => ({ step, text: 'is left out' }));
  const changed = [...fresh].flatMap(([step, value]): ProgramChange[] => {
    const was = old.get(step);
    if (was === undefined) return [{ step, text: `is new: ${named(value.name)}` }];
    return differences(was, value, []).map((text) => ({ step, text }));
  });
  const kept = (ids: Iterable<string>, others: ReadonlyMap<string, Plain>) => [...ids].filter((id) => others.has(id));
  const moved = kept(old.keys(), fresh).join() !== kept(fresh.keys(), old).join();
  return [...whole, ...(moved ? [{ step: null, text: 'the steps stand in another order' }] : []), ...gone, ...changed];
}

/** Changes as lines: a step's name once, what is other below it. */
export function programChangeLines(changes: readonly ProgramChange[]): readonly string[] {
  const steps = [...new Set(changes.map(({ step }) => step))];
  return steps.flatMap((step) => [
    `  ${step ?? 'the whole program'}`,
    ...changes.filter((one) => one.step === step).map(({ text }) => `    ${text}`),
  ]);
}

const isMap = (value: unknown): value is Plain => value !== null && typeof value === 'object' && !Array.isArray(value);
const asMap = (value: unknown): Plain => (isMap(value) ? value : {});
const byId = (steps: unknown): ReadonlyMap<string, Plain> =>
  new Map((Array.isArray(steps) ? steps : []).filter(isMap).map((step) => [String(step.id), step]));

/** Differences of two values, each by the keys that lead to it. Lists differ as wholes, but for lists of maps of one length. */
function differences(before: unknown, now: unknown, at: readonly string[]): string[] {
  if (JSON.stringify(before) === JSON.stringify(now)) return [];
  if (isMap(before) && isMap(now)) {
    const keys = [...new Set([...Object.keys(before), ...Object.keys(now)])];
    return keys.flatMap((key) => differences(before[key], now[key], [...at, key]));
  }
  if (Array.isArray(before) && Array.isArray(now) && before.length === now.length && before.every(isMap))
    return before.flatMap((one, i) => differences(one, now[i], [...at, String(i + 1)]));
  const where = cleaned(at.join(', '));
  if (before === undefined) return [`${where} is new: ${named(now)}`];
  return [`${where} was ${named(before)}, is ${now === undefined ? 'left out' : named(now)}`];
}

/** A value on one line, as YAML would have it in braces. */
function named(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(named).join(', ')}]`;
  if (isMap(value))
    return `{ ${Object.entries(value)
      .map(([key, inner]) => `${cleaned(key)}: ${named(inner)}`)
      .join(', ')} }`;
  return cleaned(String(value)).replace(/\s+/g, ' ').trim();
}
