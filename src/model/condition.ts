import * as v from 'valibot';
import { byId, id, map, maybe, number, positive, source, word } from './fields.ts';

/** What a laboratory calls the supply of a nutrient. */
export const LEVELS = ['low', 'medium', 'high'] as const;
export type Level = (typeof LEVELS)[number];

const bounds = map({ below: maybe(number(0, 14)), above: maybe(number(0, 14)) });
const levels = v.pipe(v.array(word(LEVELS)), v.minLength(1, 'wrong-type:a list of at least one of low, medium, high'));

/** A condition on the lawn, judged for each of its areas; all its keys have to hold. */
export const ConditionSchema = map({
  lawn: maybe(byId(v.boolean())),
  'soil-test': maybe(map({ pH: maybe(bounds), phosphorus: maybe(levels), potassium: maybe(levels) })),
  area: maybe(map({ over: maybe(positive('area')), under: maybe(positive('area')) })),
  shelf: maybe(v.array(id)),
  source: maybe(source),
});
export type Condition = v.InferOutput<typeof ConditionSchema>;
