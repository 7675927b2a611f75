import * as v from 'valibot';
import {
  type Amount,
  above0,
  amount,
  amountOrNone,
  choosing,
  clock,
  day,
  id,
  map,
  maybe,
  number,
  positive,
  quantity,
  stepId,
  text,
  whole,
  word,
} from './fields.ts';
import { WORKS } from './program.ts';
import { atMostOneOf, needs, someOf, standing } from './standing.ts';
import { usedOf, weighedFault } from './weighed.ts';

/** Where a wind comes from: one of sixteen points, or `variable`. */
const windFrom = word('n nne ne ene e ese se sse s ssw sw wsw w wnw nw nnw variable'.split(' '));

/** What an entry is named by in another: its id, or its day and its step or kind of work. */
const reference = v.pipe(
  v.string('wrong-type:the id of an entry, or its day and step such as "2027-04-03 autumn-feed-1"'),
  v.regex(
    /^([a-z0-9]+(-[a-z0-9]+)*|\d{4}-\d\d-\d\d [a-z0-9.-]+)$/,
    'wrong-type:the id of an entry, or its day and step such as "2027-04-03 autumn-feed-1"',
  ),
);

const nothing = v.pipe(
  v.literal(0, 'wrong-type:a weight such as 2 oz, or 0'),
  v.transform((): Amount => ({ by: 'mass', value: 0 })),
);
/** What was left: an amount, or 0 for nothing. */
const left = choosing(
  (input): typeof nothing | typeof amountOrNone => (typeof input === 'number' ? nothing : amountOrNone),
  () => [nothing, amountOrNone],
);

/** An application goes down in so many passes. */
export const PASSES_OF_ONE = 2;

/** The share of its step's plan that an entry stands for which does not say how much was used: of a pass, half. */
export const plannedShare = ({ pass }: { readonly pass?: number | undefined }): number =>
  pass === undefined ? 1 : 1 / PASSES_OF_ONE;

/** One entry: work of a step or outside the program, with what was used; or one that corrects another. */
export const EntrySchema = v.pipe(
  map({
    id: maybe(id),
    date: day,
    start: maybe(clock),
    end: maybe(clock),
    step: maybe(stepId),
    work: maybe(word(WORKS)),
    areas: maybe(v.array(id)),
    product: maybe(id),
    /** Where it is not the product's own. */
    registration: maybe(text),
    target: maybe(text),
    loaded: maybe(amount),
    used: maybe(amount),
    left: maybe(left),
    /** One of the lawn's spreaders; left out where it has but one. */
    spreader: maybe(id),
    setting: maybe(number(0, 1000)),
    sprayer: maybe(v.literal(true, 'wrong-type:sprayer: true')),
    /** What the sprayer put out, water and all, on each square metre. */
    output: maybe(above0('volume per area')),
    pass: maybe(whole(1, 20)),
    by: maybe(text),
    licence: maybe(text),
    wind: maybe(positive('speed')),
    'wind-from': maybe(windFrom),
    air: maybe(quantity('temperature')),
    /** Where it is not what the product's label entry says. */
    're-entry': maybe(text),
    notices: maybe(text),
    note: maybe(text),
    /** The entry that this one stands in place of. */
    corrects: maybe(reference),
    /** With `corrects`: takes that entry away and puts nothing in its place. */
    undo: maybe(v.literal(true, 'wrong-type:undo: true')),
  }),
  standing(
    'wrong-type:an entry that says what was done: "step", "work" or "product"',
    someOf('step', 'work', 'product', 'undo'),
  ),
  standing('wrong-type:"corrects" beside "undo": the entry to take away', needs('undo', 'corrects')),
  standing(
    'journal-equipment',
    atMostOneOf('spreader', 'sprayer'),
    atMostOneOf('spreader', 'output'),
    atMostOneOf('setting', 'sprayer'),
    atMostOneOf('setting', 'output'),
  ),
  v.rawCheck(({ dataset, addIssue }) => {
    if (!dataset.typed) return;
    const { value } = dataset;
    const at = (key: string) => [{ type: 'object', origin: 'value', input: value, key, value: undefined }] as const;
    const fault = weighedFault(value);
    if (fault) addIssue({ message: `journal-weights:${fault.at}:${fault.fault}`, path: [...at(fault.at)] });
    if (value.start !== undefined && value.end !== undefined && value.start >= value.end)
      addIssue({ message: 'journal-times', path: [...at('end')] });
  }),
  v.transform((entry) => {
    const used = usedOf(entry);
    // Nothing is nothing in either measure: it goes by that of the others.
    const by = (entry.loaded ?? used)?.by;
    const none = entry.left?.value === 0 && by ? { left: { by, value: 0 } } : {};
    return { ...entry, ...none, ...(used && { used }) };
  }),
);
export type JournalEntry = v.InferOutput<typeof EntrySchema>;

/** What was really done, in the order of the file, corrected entries among it. Areas left out means all of them. */
export type Journal = readonly JournalEntry[];
