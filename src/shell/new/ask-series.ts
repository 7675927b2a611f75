import type { Draft } from '../../model/draft.ts';
import { area } from '../../read/answers/area.ts';
import { answer } from '../../read/answers/question.ts';
import type { Series } from '../../read/answers/series.ts';
import { type Asking, BACK, type Outcome, say } from './ask-one.ts';

/** Edges may cross as long as the way round is not closed. */
const MAY_PASS = ['area-crossing', 'area-crossing-at', 'area-corners'];

/**
 * Asks for the numbers of a shape one after the other, until one answer is empty.
 *
 * @param grown What to say of the draft so far.
 */
export async function askSeries(
  series: Series,
  before: Draft,
  asking: Asking,
  grown: (draft: Draft) => string,
): Promise<Outcome> {
  const entries: string[] = [];
  const drafts: (Draft | null)[] = [];
  const such = `such as ${series.example}${series.unit === null ? '' : `, in ${series.unit}`}`;
  say(asking, `One after the other, ${such}; < takes the last one back. At least ${series.least}, then Enter alone.`);
  for (;;) {
    const whole = drafts.at(-1) ?? null;
    const line = await asking.terminal.ask(`${series.prompt(entries.length + 1)}${whole ? ' [no more]' : ''}: `);
    if (line === null) return null;
    const text = line.trim();
    if (text === '<') {
      if (entries.pop() === undefined) return BACK;
      drafts.pop();
      const left = drafts.at(-1);
      if (left) say(asking, grown(left));
      continue;
    }
    if (text === '' && whole) return whole;
    const entry = series.entry(text);
    if (entry === null) {
      const needed = series.least - entries.length;
      say(asking, `${text === '' && needed > 0 ? `${needed} more at least, ` : 'Expected numbers, '}${such}.`);
      continue;
    }
    const next = [...entries, entry];
    const answered = next.length < series.least ? null : answer(area, series.text(next), before, asking.world);
    if (answered && 'problems' in answered) {
      const [fault] = answered.problems;
      say(asking, fault?.message ?? '');
      if (!MAY_PASS.includes(fault?.code ?? '')) continue;
    }
    const draft = answered && 'draft' in answered ? answered.draft : null;
    entries.push(entry);
    drafts.push(draft);
    if (draft) say(asking, grown(draft));
  }
}
