import { type Day, formatDay } from '../base/day.ts';
import type { Journal } from './journal.ts';

/** What of an entry counts for references. */
export interface Referable {
  readonly id?: string;
  readonly date: Day;
  readonly step?: string;
  readonly work?: string;
  readonly corrects?: string;
  readonly undo?: true;
}

/** What is wrong with a reference; `others` are the entries that it could mean, or that are in its way. */
export interface ReferenceFault {
  readonly at: number;
  readonly fault: 'unknown' | 'ambiguous' | 'circle' | 'twice';
  readonly others: readonly number[];
}

/** A reader's name for an entry: its id, else its day with its step or kind of work. */
export const nameOf = (entry: Referable): string => entry.id ?? dayAndStep(entry);

const dayAndStep = ({ date, step, work }: Referable): string => `${formatDay(date)} ${step ?? work ?? ''}`.trim();

/**
 * The entries that a name may mean: those with that id; or those of that day and step that correct nothing themselves.
 * A correction is named by its id alone, so that a third entry of the same day leaves the first two unmistakable.
 */
export function entriesNamed(name: string, entries: readonly Referable[]): number[] {
  const having = (test: (entry: Referable) => boolean) => entries.flatMap((entry, i) => (test(entry) ? [i] : []));
  const byId = having(({ id }) => id === name);
  return byId.length > 0 ? byId : having((entry) => entry.corrects === undefined && dayAndStep(entry) === name);
}

/** Which entry each one corrects (null: none), which are in force, and every reference that leads nowhere. */
export interface Corrections {
  readonly targets: readonly (number | null)[];
  /** The entry that took each one back, or else stands in its place; null where none does. */
  readonly replacedBy: readonly (number | null)[];
  readonly inForce: readonly boolean[];
  readonly faults: readonly ReferenceFault[];
}

/**
 * Follows the corrections of a journal, wherever in the file they stand.
 *
 * An undo is as if what it names had never been written: what that had corrected is in force again. A correction of a
 * correction stands in its place. A reference that leads nowhere takes nothing away.
 */
export function correctionsOf(entries: readonly Referable[]): Corrections {
  const faults: ReferenceFault[] = [];
  const named = entries.map((entry, at) => {
    if (entry.corrects === undefined) return null;
    const others = entriesNamed(entry.corrects, entries).filter((i) => i !== at);
    if (others.length === 1) return others[0] as number;
    faults.push({ at, fault: others.length === 0 ? 'unknown' : 'ambiguous', others });
    return null;
  });
  const targets = named.map((target, at) => {
    if (target === null || !returns(at, named)) return target;
    faults.push({ at, fault: 'circle', others: [target] });
    return null;
  });
  const correctors: number[][] = entries.map(() => []);
  for (const [at, target] of targets.entries()) if (target !== null) correctors[target]?.push(at);
  const isUndo = (at: number) => entries[at]?.undo === true;
  const undone = memo(entries.length, (at, again) =>
    (correctors[at] ?? []).some((other) => isUndo(other) && !again(other)),
  );
  const actingOn = (at: number) => (correctors[at] ?? []).filter((other) => !undone(other));
  const replacedBy = entries.map((_, at) => actingOn(at).find(isUndo) ?? actingOn(at).at(-1) ?? null);
  const inForce = entries.map((_, at) => {
    const acting = actingOn(at);
    const [, ...late] = acting.every(isUndo) ? [] : acting;
    for (const other of late) faults.push({ at: other, fault: 'twice', others: acting.filter((one) => one !== other) });
    return acting.length === 0 && !isUndo(at);
  });
  return { targets, replacedBy, inForce, faults: faults.sort((a, b) => a.at - b.at) };
}

/** Whether following the references from an entry leads back to it. */
function returns(from: number, named: readonly (number | null)[]): boolean {
  let at = named[from] ?? null;
  for (let steps = 0; at !== null && steps <= named.length; steps++) {
    if (at === from) return true;
    at = named[at] ?? null;
  }
  return false;
}

/** A recursive answer for each index, each worked out once. */
function memo(length: number, answer: (at: number, again: (at: number) => boolean) => boolean) {
  const known: (boolean | undefined)[] = new Array(length);
  const again = (at: number): boolean => {
    known[at] ??= answer(at, again);
    return known[at] as boolean;
  };
  return again;
}

/**
 * The entries that count: no undo, and nothing that another entry in effect corrects.
 *
 * @example entriesInForce([{ id: 'a', date, step: 'feed' }, { date, corrects: 'a', undo: true }]) //=> []
 */
export function entriesInForce(journal: Journal): Journal {
  const { inForce } = correctionsOf(journal);
  return journal.filter((_, at) => inForce[at]);
}
