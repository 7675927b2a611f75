import type { Draft } from '../../model/draft.ts';
import type { Question } from '../../read/answers/question.ts';
import { QUESTIONS } from '../../read/answers/questions.ts';
import { askAreas } from './ask-areas.ts';
import { type Asking, askOne, BACK, type Outcome, say } from './ask-one.ts';
import { type FlagValues, fromFlags, isGiven } from './flags.ts';

/** Asks all that the flags leave open, one after the other; null where the asking was broken off. */
export async function askAll(values: FlagValues, asking: Asking): Promise<Draft | null> {
  const earlier: { readonly at: number; readonly draft: Draft }[] = [];
  let draft: Draft = {};
  for (let at = 0; at < QUESTIONS.length; at++) {
    const question = QUESTIONS[at] as Question;
    if (!(question.applies?.(draft, asking.world) ?? true)) continue;
    const known = isGiven(question, values) ? flagged(question, values, draft, asking) : null;
    const outcome = known ?? (await ask(question, draft, asking));
    if (outcome === null) return null;
    if (outcome === BACK) {
      const before = earlier.pop();
      if (!before) say(asking, 'This is the first question.');
      draft = before?.draft ?? draft;
      at = (before?.at ?? at) - 1;
    } else {
      if (known === null) earlier.push({ at, draft });
      draft = outcome;
    }
  }
  return draft;
}

const ask = (question: Question, draft: Draft, asking: Asking): Promise<Outcome> =>
  question.many ? askAreas(question, draft, asking) : askOne(question, draft, asking);

/** The draft with a question's flags; null, with the reason said, where they do not go with what was answered since. */
function flagged(question: Question, values: FlagValues, before: Draft, asking: Asking): Draft | null {
  const { draft, problems } = fromFlags(question, values, before, asking.world);
  for (const { message } of problems) say(asking, message);
  return problems.length === 0 ? draft : null;
}
