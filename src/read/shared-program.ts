import { type Problem, problem } from '../base/problem.ts';
import type { Program } from '../model/program.ts';
import type { Parsed } from './validate.ts';
import type { Path } from './yaml.ts';

/** Addresses as calendars make links of them. */
const LINK = /\b(?:[a-z][a-z0-9+.-]*:\/\/|www\.)\S+/i;

/**
 * What to know of a program that somebody else shares, beyond what is wrong with it: nobody stands behind it, nobody may pass
 * it on, a text of it would bring an address into calendars.
 */
export function sharedProblems({ value, place }: Pick<Parsed<Program>, 'value' | 'place'>): readonly Problem[] {
  if (!value) return [];
  return [
    ...(value.author === undefined ? [problem('shared-author', { found: value.id }, place(['id']))] : []),
    ...(value.license === undefined ? [problem('shared-license', { found: value.id }, place(['id']))] : []),
    ...told(value).flatMap(([text, path]) => {
      const [found] = LINK.exec(text) ?? [];
      return found === undefined ? [] : [problem('shared-link', { found }, place(path))];
    }),
  ];
}

/** Every text of a program that a calendar may say. */
function told({ name, steps }: Program): readonly (readonly [text: string, path: Path])[] {
  const texts: (readonly [string | undefined, Path])[] = [
    [name, ['name']],
    ...steps.flatMap(({ name, note, ifMissed, cautions = [] }, i): (readonly [string | undefined, Path])[] => [
      [name, ['steps', i, 'name']],
      [note, ['steps', i, 'note']],
      [typeof ifMissed === 'object' ? ifMissed.note : undefined, ['steps', i, 'if-missed', 'note']],
      ...cautions.map((text, j) => [text, ['steps', i, 'cautions', j]] as const),
    ]),
  ];
  return texts.flatMap(([text, path]) => (text === undefined ? [] : [[text, path] as const]));
}
