import type { Command } from 'commander';
import { type Problem, problem } from '../../base/problem.ts';
import type { Draft } from '../../model/draft.ts';
import { type Answered, answer, flagName, type Question, type World } from '../../read/answers/question.ts';
import { QUESTIONS } from '../../read/answers/questions.ts';

/** Values of flags by commander's name for them. */
export type FlagValues = Readonly<Record<string, unknown>>;

/** Puts every question on a command as a flag, or several. */
export function addFlags(command: Command): void {
  for (const { flags, prompt, examples, many } of QUESTIONS) {
    const such = examples.map((one) => `"${one}"`).join(' or ');
    for (const [i, flag] of flags.entries()) {
      const about = i > 0 ? `the same as ${flagName(flags[0])}` : `${prompt}; such as ${such}`;
      if (many)
        command.option(flag, `${about}; may be repeated`, (value, before?: string[]) => [...(before ?? []), value]);
      else command.option(flag, about);
    }
  }
}

/** Commander's name for the value of a flag. */
const keyOf = (flag: string): string =>
  flagName(flag)
    .slice(2)
    .replace(/-(.)/g, (_, letter: string) => letter.toUpperCase());

/** The answers to a question that stand on the command line, each with its flag. */
const given = ({ flags }: Question, values: FlagValues): { readonly flag: string; readonly text: string }[] =>
  flags.flatMap((flag) => {
    const value = values[keyOf(flag)];
    return value === undefined ? [] : [value].flat().map((text) => ({ flag, text: String(text) }));
  });

export const isGiven = (question: Question, values: FlagValues): boolean => given(question, values).length > 0;

/** A draft as far as it came, and what was wrong on the way. */
interface Taken {
  readonly draft: Draft;
  readonly problems: readonly Problem[];
}

/** Takes a question's flags into the draft. */
export function fromFlags(question: Question, values: FlagValues, before: Draft, world: World): Taken {
  const answers = given(question, values);
  const [first, second] = answers;
  if (!question.many && first && second) {
    const twice = problem('new-flag-twice', { other: flagName(first.flag) }, { file: flagName(second.flag) });
    return { draft: before, problems: [twice] };
  }
  const problems: Problem[] = [];
  let draft = before;
  for (const { flag, text } of answers) {
    const answered: Answered = answer(question, text, draft, world, flag);
    if ('draft' in answered) draft = answered.draft;
    else problems.push(...(second ? answered.problems.map((one) => ofOne(one, text)) : answered.problems));
  }
  return { draft, problems };
}

/** So much of an answer tells which one it is. */
const TELLING = 30;

/** A problem of one of several answers to a question, with the answer behind the flag. */
const ofOne = (one: Problem, text: string): Problem => ({
  ...one,
  file: `${one.file} "${text.length > TELLING ? `${text.slice(0, TELLING)}...` : text}"`,
});

/** The problems of the flags by themselves, to be told before anything is asked. */
export function flagProblems(values: FlagValues, world: World): readonly Problem[] {
  const problems: Problem[] = [];
  let draft: Draft = {};
  for (const question of QUESTIONS) {
    if (!(question.applies?.(draft, world) ?? true)) continue;
    const taken = fromFlags(question, values, draft, world);
    draft = taken.draft;
    problems.push(...taken.problems);
  }
  return problems;
}

/** A draft from flags, and defaults for the rest; with every problem, those of answers that are missing among them. */
export function withoutAsking(values: FlagValues, world: World): Taken {
  const problems: Problem[] = [];
  let draft: Draft = {};
  for (const question of QUESTIONS) {
    const applies = question.applies?.(draft, world) ?? true;
    // After a wrong answer nothing is known of those that go with it.
    if (!applies && problems.length === 0) problems.push(...given(question, values).map(({ flag }) => idle(flag)));
    if (!applies) continue;
    if (isGiven(question, values)) {
      const taken = fromFlags(question, values, draft, world);
      draft = taken.draft;
      problems.push(...taken.problems);
    } else {
      const usual = answer(question, '', draft, world);
      if ('draft' in usual) draft = usual.draft;
      else problems.push(...usual.problems);
    }
  }
  return { draft, problems };
}

const idle = (flag: string): Problem => problem('new-flag-idle', { flag: flagName(flag) }, { file: flagName(flag) });
