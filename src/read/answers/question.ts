import { displayOf } from '../../base/display.ts';
import type { Place, Problem } from '../../base/problem.ts';
import { hasErrors, problem } from '../../base/problem.ts';
import type { Area } from '../../model/area.ts';
import type { Draft } from '../../model/draft.ts';
import { map } from '../../model/fields.ts';
import { LawnSchema } from '../../model/lawn.ts';
import type { ZipLookup } from '../lawn.ts';
import { judge } from '../validate.ts';

/** A program that is at hand, and the path by which the new lawn file will name it. */
export interface ProgramAtHand {
  readonly id: string;
  readonly name: string;
  readonly grass: readonly string[];
  /** Kinds of climate that it is written for; none named is any. */
  readonly climate: readonly string[];
  readonly ref: string;
}

/** What an answer may be checked against: the world outside the text, as functions. */
export interface World {
  readonly zips: ZipLookup;
  /** The programs that come along. */
  readonly programs: readonly ProgramAtHand[];
  /** The kinds of climate at a place; none where no climate near it is known. */
  climatesAt(location: NonNullable<Draft['location']>): readonly string[];
  /** A program of one's own, by a path from the folder of the command. */
  programAt(path: string): ProgramAtHand | readonly Problem[];
  /** A weather file by a path from the folder of the command: the path that the lawn file names it by. */
  weatherAt(path: string): string | readonly Problem[];
  /** Whether a weather file, by the path in the lawn file, leaves open which units it is in. */
  leavesUnitsOpen(ref: string): boolean;
  /** Area [m²]. */
  netArea(area: Area): number;
}

/** One of the words that a question takes, and what it stands for. */
export interface Choice {
  readonly word: string;
  readonly about: string;
}

/** Where an answer comes from, for problems: the flag it was or could have been given by. */
export type AnswerPlace = { readonly file: string };

/**
 * A question about a lawn, as data: asked in a terminal, or answered by a flag.
 *
 * @property flags Its flags with their argument, the first one named in messages.
 * @property default What an empty answer stands for; null where there is no default.
 * @property parse The keys of the lawn file that an answer gives; the schema of the file looks at them afterwards.
 * @property many Whether it is asked until the answer is empty, and its flag may be repeated.
 */
export interface Question {
  readonly id: string;
  readonly flags: readonly [string, ...string[]];
  readonly prompt: string;
  readonly help: string;
  readonly examples: readonly [string, ...string[]];
  readonly many?: true;
  choices?(draft: Draft, world: World): readonly Choice[];
  applies?(draft: Draft, world: World): boolean;
  default(draft: Draft, world: World): string | null;
  /** Why there is neither an answer nor a default, where there is more to say than that. */
  missing?(draft: Draft, world: World, place: AnswerPlace): Problem | null;
  parse(text: string, draft: Draft, world: World, place: AnswerPlace): Draft | readonly Problem[];
}

/** The name of a flag without its argument. @example flagName('--zip <code>') //=> '--zip' */
export const flagName = (flag: string): string => flag.split(' ')[0] ?? flag;

/** Examples of an answer in words. */
export const examplesOf = ({ examples }: Question): string => examples.join(' or ');

export type Answered = { readonly draft: Draft } | { readonly problems: readonly Problem[] };

/**
 * Takes an answer: its keys, judged by the schema of the lawn file, become part of the draft.
 *
 * @param text As typed; an empty one stands for the default.
 * @param flag The flag that the problems name.
 * @returns The draft with the answer, or every problem of it, each with the flag as its place.
 * @example answer(grassQuestion, 'tall fescue', {}, world) //=> { draft: { grass: 'tall-fescue' } }
 */
export function answer(
  question: Question,
  text: string,
  draft: Draft,
  world: World,
  flag: string = question.flags[0],
): Answered {
  const place: AnswerPlace = { file: flagName(flag) };
  const typed = text.replace(/\p{Surrogate}/gu, '\ufffd').trim();
  const meant = typed === '' ? question.default(draft, world) : typed;
  if (meant === null) return { problems: [missing(question, draft, world, place)] };
  const fragment = question.parse(meant, draft, world, place);
  // A file that cannot be read has no place of its own.
  if (isProblems(fragment))
    return { problems: fragment.map((one) => (one.file === null ? { ...one, ...place } : one)) };
  const problems = judged(fragment, draft, world, place);
  return problems.length > 0 ? { problems } : { draft: { ...draft, ...fragment } };
}

const missing = (question: Question, draft: Draft, world: World, place: AnswerPlace): Problem =>
  question.missing?.(draft, world, place) ??
  problem('new-missing', { asked: question.prompt, example: examplesOf(question) }, place);

export const isProblems = (value: object): value is readonly Problem[] => Array.isArray(value);

/** The problems that a lawn file with these keys would have at them. */
function judged(fragment: Draft, draft: Draft, world: World, place: AnswerPlace): readonly Problem[] {
  const given = Object.entries(fragment).filter(([, value]) => value !== undefined);
  const { entries } = LawnSchema.pipe[1];
  const schema = map(Object.fromEntries(given.map(([key]) => [key, entries[key as keyof typeof entries]])));
  const nowhere = (): Place => ({ ...place, line: 1, column: 1, length: 1 });
  const { problems, value } = judge(schema, {
    data: Object.fromEntries(given),
    file: place.file,
    place: nowhere,
    problems: [],
  });
  if (hasErrors(problems)) return problems.map((one) => ({ ...one, line: null, column: null, length: null }));
  const { areas } = value as { areas?: Readonly<Record<string, Area>> };
  const { area } = displayOf(draft.display?.units === 'us' ? 'us' : 'metric', 'en');
  return Object.values(areas ?? {})
    .map(world.netArea)
    .filter((left) => left <= 0)
    .map((left) => problem('area-empty', { over: left < 0 ? area(-left) : null }, place));
}
