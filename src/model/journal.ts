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

/** Differences up to this share of what was loaded are what scales and rounding make. */
const SCALES = 0.02;

interface Weighed {
  readonly loaded?: Amount;
  readonly used?: Amount;
  readonly left?: Amount;
}

/** Whether what was loaded, used and left can all be true. */
function agrees({ loaded, used, left }: Weighed): boolean {
  const known = [loaded, used, left].flatMap((one) => (one && one.value > 0 ? [one] : []));
  if (known.some(({ by }) => by !== known[0]?.by)) return false;
  if (!loaded) return true;
  const hair = SCALES * loaded.value;
  if (used && left) return Math.abs(loaded.value - left.value - used.value) <= hair;
  return (used ?? left ?? loaded).value <= loaded.value + hair;
}

/** What was used: as written, else what was loaded less what was left. */
export function usedOf({ loaded, used, left }: Weighed): Amount | undefined {
  if (used || !loaded || !left) return used;
  return { by: loaded.by, value: Math.max(0, loaded.value - left.value) };
}

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
    'wrong-type:a spreader ("spreader", "setting") or a sprayer ("sprayer", "output"), not both',
    atMostOneOf('spreader', 'sprayer'),
    atMostOneOf('spreader', 'output'),
    atMostOneOf('setting', 'sprayer'),
    atMostOneOf('setting', 'output'),
  ),
  v.check(
    ({ start, end }) => start === undefined || end === undefined || start < end,
    'wrong-type:an "end" after the "start"; what runs past midnight is two entries',
  ),
  v.check((entry) => agrees(entry), 'wrong-type:"used" to be "loaded" less "left", in one measure'),
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
