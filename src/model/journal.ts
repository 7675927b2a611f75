import * as v from 'valibot';
import { amount, day, id, map, maybe, number, positive, quantity, stepId, text, whole, word } from './fields.ts';
import { WORKS } from './program.ts';

const EntrySchema = map({
  date: day,
  step: maybe(stepId),
  work: maybe(word(WORKS)),
  areas: maybe(v.array(id)),
  product: maybe(id),
  loaded: maybe(amount),
  used: maybe(amount),
  left: maybe(amount),
  setting: maybe(number(0, 1000)),
  pass: maybe(whole(1, 20)),
  by: maybe(text),
  licence: maybe(text),
  wind: maybe(positive('speed')),
  air: maybe(quantity('temperature')),
  note: maybe(text),
});

/** What was really done: entries in the order of the file. Work of a step names it; areas left out means all of them. */
export const JournalSchema = v.array(
  EntrySchema,
  'wrong-type:a list of entries such as { date: 2027-04-03, step: autumn-feed-1 }',
);
export type Journal = v.InferOutput<typeof JournalSchema>;
export type JournalEntry = Journal[number];
