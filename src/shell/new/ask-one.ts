import { cleaned } from '../../base/text.ts';
import { wrapped } from '../../emit/table.ts';
import type { Draft } from '../../model/draft.ts';
import { answer, type Choice, examplesOf, type Question, type World } from '../../read/answers/question.ts';
import type { Io } from '../io.ts';
import type { Terminal } from '../terminal.ts';

/** Whom to ask, and where what is said goes. */
export interface Asking {
  readonly terminal: Terminal;
  readonly io: Io;
  readonly world: World;
}

/** The answer was: back to the question before. */
export const BACK = 'back';
/** A question's outcome: the draft with its answer, the way back, or null where nobody answers any more. */
export type Outcome = Draft | typeof BACK | null;

/** Says something in the terminal, behind a small indent, on lines that fit. */
export function say({ io }: Pick<Asking, 'io'>, text: string): void {
  const width = Math.min(io.columns, 80) - 2;
  for (const line of cleaned(text)
    .split('\n')
    .flatMap((one) => wrapped(one, width)))
    io.stderr(`  ${line}\n`);
}

/** How a question is put: its words, and what an empty answer means where that is no answer to it. */
export interface Put {
  readonly prompt: string;
  readonly empty?: string;
}

/**
 * Asks one question until its answer is right.
 *
 * @param put Other words than the question's own; with `empty`, an empty answer leaves the draft as it is.
 */
export async function askOne(
  question: Question,
  draft: Draft,
  asking: Asking,
  put: Put = { prompt: question.prompt },
): Promise<Outcome> {
  const usual = put.empty ?? question.default(draft, asking.world);
  const choices = question.choices?.(draft, asking.world) ?? [];
  showChoices(choices, asking);
  for (;;) {
    const line = await asking.terminal.ask(`${put.prompt}${usual === null ? '' : ` [${usual}]`}: `);
    if (line === null) return null;
    const text = line.trim();
    if (text === '<') return BACK;
    if (text === '' && put.empty !== undefined) return draft;
    if (text === '?') {
      say(asking, `${question.help}\nFor example: ${examplesOf(question)}`);
      continue;
    }
    const answered = answer(question, text, draft, asking.world);
    if ('draft' in answered) return answered.draft;
    // The first will do: the others often say the same of the next number.
    say(asking, `${answered.problems[0]?.message}\nFor example: ${examplesOf(question)}`);
  }
}

function showChoices(choices: readonly Choice[], asking: Asking): void {
  if (choices.length > 0) asking.io.stderr('\n');
  const longest = Math.max(...choices.map(({ word }) => word.length));
  for (const [i, { word, about }] of choices.entries())
    asking.io.stderr(`  ${String(i + 1).padStart(2)}  ${word.padEnd(longest)}  ${shortened(about, 72 - longest)}\n`);
}

const shortened = (text: string, width: number): string =>
  text.length <= width ? text : `${text.slice(0, width - 3)}...`;
