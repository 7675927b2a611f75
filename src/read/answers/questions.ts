import { area } from './area.ts';
import { placeQuestions } from './place-questions.ts';
import type { Question } from './question.ts';
import { workQuestions } from './work-questions.ts';

/** Every question about a new lawn, in the order in which they are asked: the one list behind prompts, flags and help. */
export const QUESTIONS: readonly Question[] = [...placeQuestions, area, ...workQuestions];
