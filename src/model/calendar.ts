import * as v from 'valibot';
import { displayKeys } from './display.ts';
import { id, map, maybe, text, word } from './fields.ts';
import { DETAILS, feedKey } from './reader.ts';

/** No list is longer by intent: each lawn is planned anew every time. */
const MOST = 100;

/** One feed for several lawns: which ones, for whom, and how it is told. */
export const CalendarSchema = map({
  kind: v.literal('calendar', 'wrong-kind:calendar'),
  version: v.literal(1, 'wrong-type:1, the version of the format'),
  id,
  name: maybe(text),
  feed: map({ key: feedKey }),
  /** Lawn files, from the folder of this one. */
  lawns: v.pipe(
    v.array(v.string('wrong-type:the path of a lawn file')),
    v.minLength(1, 'wrong-type:a list of at least one lawn file'),
    v.maxLength(MOST, `out-of-range:at most ${MOST} lawn files`),
  ),
  as: maybe(word(['owner', 'helper'])),
  detail: maybe(word(DETAILS)),
  display: maybe(map(displayKeys)),
});

/** A calendar file as it is read. */
export type Calendar = v.InferOutput<typeof CalendarSchema>;
