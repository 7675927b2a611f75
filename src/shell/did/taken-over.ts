import type { EntryDraft } from '../../emit/journal-entry.ts';

/** Keys that go with the name of an entry, not with what it says. */
const OWN = ['id', 'corrects', 'undo'];
/** Keys that cannot stay as they were beside a new one of these. */
const GIVES_WAY: readonly (readonly [given: readonly string[], gone: readonly string[]])[] = [
  [['step'], ['work']],
  [['work'], ['step']],
  [['used'], ['loaded', 'left']],
  [
    ['spreader', 'setting'],
    ['sprayer', 'output'],
  ],
  [
    ['sprayer', 'output'],
    ['spreader', 'setting'],
  ],
];

/**
 * What a correction takes over of the entry that it stands in place of: all that it does not name itself. What was used
 * gives way where it follows from new weights, the spreader to a sprayer, and with another step or product what belonged
 * to the former one.
 *
 * @example takenOver({ date: '2027-04-01', step: 'feed', by: 'A' }, { used: '2 lb' }) //=> { date: …, step: 'feed', by: 'A' }
 */
export function takenOver(before: EntryDraft, given: EntryDraft): EntryDraft {
  const other = (key: string) => key in given && given[key] !== before[key];
  const weighed = ['loaded', 'left'].every((key) => key in given || key in before);
  const gone = new Set([
    ...OWN,
    ...Object.keys(given),
    ...GIVES_WAY.flatMap(([keys, others]) => (keys.some((key) => key in given) ? others : [])),
    ...(('loaded' in given || 'left' in given) && weighed ? ['used'] : []),
    ...(other('step') ? ['product'] : []),
    ...(other('step') || other('product') ? ['registration', 're-entry'] : []),
  ]);
  return Object.fromEntries(Object.entries(before).filter(([key]) => !gone.has(key)));
}
