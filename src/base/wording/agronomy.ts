import { note, type Step, warning } from './forms.ts';

/** Places where something was tried; null is the lawn's own weather. */
type At = readonly (string | null)[];

const where = (at: At): string => {
  const named = at.filter((one) => one !== null);
  return named.length === 0 ? 'here' : `at ${named.join(', ')}`;
};

/** What is wrong with a program or a lawn by agronomy. */
export const agronomy = {
  'nitrogen-at-once': warning(
    (a: Step & { asked: string; limit: string; by: string }) =>
      `Step "${a.step}" gives ${a.asked} of nitrogen at once; ${a.by} allow at most ${a.limit}. Split it into two feeds.`,
  ),
  'nitrogen-a-year': warning(
    (a: { grass: string; planned: string; limit: string; by: string }) =>
      `${a.planned} of nitrogen a year for ${a.grass}; the most is ${a.limit} (${a.by}). Leave a feed out or make it lighter.`,
  ),
  'nitrogen-little': note(
    (a: { grass: string; planned: string; least: string; by: string }) =>
      `${a.planned} of nitrogen a year for ${a.grass}; the least that is published is ${a.least} (${a.by}).`,
  ),
  'nitrogen-close': warning(
    (a: Step & { after: string; wait: number; least: number }) =>
      `Step "${a.step}" feeds ${a.wait} days after "${a.after}"; feeds lie ${a.least} days apart or more. Let it wait longer.`,
  ),
  'nitrogen-dormant': warning(
    (a: Step & { at: At }) =>
      `Step "${a.step}" feeds while the grass is usually dormant (${where(a.at)}): below 50 °F at 4 in for warm-season grass, 40 °F for cool-season. Open it by soil temperature.`,
  ),
  'nitrogen-late': warning(
    (a: Step & { days: number; at: At }) =>
      `Step "${a.step}" still feeds warm-season grass ${a.days} days before the usual first frost (${where(a.at)}). Close it four weeks before: { frost: { first: 32 F, chance: 50%, before: 4 weeks } }.`,
  ),
  'nitrogen-hot': warning(
    (a: Step & { at: At }) =>
      `Step "${a.step}" feeds cool-season grass while the highs are usually in the 90s F (${where(a.at)}). Take slow-release nitrogen, or wait until they have left the 90s.`,
  ),
  'seed-on-barrier': warning(
    (a: Step & { barrier: string; days: number; at: At }) =>
      `Step "${a.step}" sows ${a.days} days after the pre-emergent of "${a.barrier}" (${where(a.at)}), on lawns that want both. Shut them out by a fact: only-if on one, unless on the other.`,
  ),
  'trigger-on-from': note(
    (a: Step & { kind: string; share: number; at: At }) =>
      `Step "${a.step}": the ${a.kind} trigger is met on its "from" in ${a.share} % of the years (${where(a.at)}); it says no more than that date there.`,
  ),
  'step-rare': warning(
    (a: Step & { share: number; at: At }) =>
      `Step "${a.step}" has a window in only ${a.share} % of the years (${where(a.at)}). Mend the threshold, give it "not-after", or claim another climate.`,
  ),
  'step-not-there': note((a: Step & { at: At }) => `Step "${a.step}" has no window ${where(a.at)}.`),
  'step-never': warning(
    (a: Step & { at: At }) =>
      `Step "${a.step}" never has a window (${where(a.at)}): it does not open, or closes before it opens. Mend its triggers.`,
  ),
  'best-outside': warning(
    (a: Step & { share: number; at: At }) =>
      `Step "${a.step}": "best" lies outside the window in ${a.share} % of the years (${where(a.at)}) and is clipped to its edge. Mend it or leave it out.`,
  ),
  'window-empty': note(
    (a: Step & { share: number }) =>
      `Step "${a.step}" has no window in ${a.share} % of the past years: it does not open, or closes before it opens.`,
  ),
  'window-idle': warning(
    (a: Step & { share: number }) =>
      `Step "${a.step}" has no working day in its window in ${a.share} % of the past years. Add a day to "working", or widen the window.`,
  ),
  'no-source': note(
    (a: Step & { key: string }) =>
      `Step "${a.step}": nobody answers for "${a.key}". Name a source, or say common-practice.`,
  ),
  'phosphorus-untested': warning(
    (a: Step) =>
      `Step "${a.step}" gives phosphorus without a soil test, which many places forbid. Add only-if: { soil-test: { phosphorus: [low] } }.`,
  ),
  'phosphorus-no-test': note(
    (_: { found: string }) =>
      'The rules of the place allow phosphorus only by a low soil test, and none stands in the file. Have one made, or nothing with phosphorus is planned.',
  ),
  'label-none': note(
    (a: { product: string }) =>
      `The lawn has no product of the kind "${a.product}" with a label entry: the plan will say "from your label".`,
  ),
  'label-old': warning(
    (a: { product: string; checked: string | null; year: number }) =>
      `The label entry of "${a.product}" was ${a.checked === null ? 'never compared' : `last compared on ${a.checked}`}, not in ${a.year}. Compare it with the label in hand and set "checked".`,
  ),
} as const;
