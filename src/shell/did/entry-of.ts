import { type Day, formatDay, parseDay } from '../../base/day.ts';
import { hasErrors, type Problem, problem } from '../../base/problem.ts';
import { nearestWord } from '../../base/quantity.ts';
import type { EntryDraft } from '../../emit/journal-entry.ts';
import type { Camel } from '../../model/fields.ts';
import { EntrySchema, type JournalEntry } from '../../model/journal.ts';
import { camel } from '../../model/standing.ts';
import type { Linked } from '../../read/link.ts';
import { judge } from '../../read/validate.ts';
import { takenOver } from './taken-over.ts';

const NUMBERS = ['setting', 'pass'] as const;
const TEXTS = [
  'start',
  'end',
  'work',
  'product',
  'registration',
  'target',
  'loaded',
  'used',
  'left',
  'spreader',
  'output',
  'by',
  'licence',
  'wind',
  'wind-from',
  'air',
  're-entry',
  'notices',
  'note',
  'corrects',
] as const;

/** The flags that become keys of an entry, as they were typed. */
export type EntryOptions = { readonly [K in Camel<(typeof NUMBERS)[number] | (typeof TEXTS)[number]>]?: string } & {
  readonly date?: string;
  readonly areas?: string;
  readonly sprayer?: true;
};

/** An entry as it is written and as it is read; or what is wrong with it, each at its flag. */
export type Recorded =
  | { readonly draft: EntryDraft; readonly entry: JournalEntry }
  | { readonly problems: readonly Problem[] };

/**
 * The entry that a command line asks for.
 *
 * @param steps Every step's id as the lawn has it.
 * @param before What the entry that it corrects is written with; null where it corrects none.
 */
export function entryOf(
  step: string | undefined,
  options: EntryOptions,
  { lawn, products }: Linked,
  steps: readonly string[],
  today: Day,
  before: EntryDraft | null,
): Recorded {
  if (!before && step === undefined && options.work === undefined && options.product === undefined)
    return { problems: [problem('did-what', { found: 'nothing' }, null)] };
  const areas = options.areas?.split(',').map((one) => one.trim());
  const given: EntryDraft = {
    ...(options.date !== undefined && { date: options.date }),
    ...(step !== undefined && { step }),
    ...(areas && { areas }),
    ...Object.fromEntries(TEXTS.flatMap((key) => typed(key, options, key === 'left' ? zeroAsNumber : String))),
    ...(options.sprayer && { sprayer: true }),
    ...Object.fromEntries(NUMBERS.flatMap((key) => typed(key, options, asNumber))),
  };
  const draft: EntryDraft = { date: formatDay(today), ...(before && takenOver(before, given)), ...given };
  const at = (key: string | number) => ({ file: key === 'step' ? 'STEP' : `--${key}` });
  const judged = judge(EntrySchema, {
    problems: [],
    file: '',
    data: draft,
    place: ([key]) => ({ ...at(key ?? equipmentIn(options)), line: 1, column: 1, length: 1 }),
  });
  const known = (
    code: 'unknown-step' | 'unknown-product' | 'unknown-area' | 'unknown-spreader',
    found: string | undefined,
    allowed: readonly string[],
    key: string,
  ) =>
    found === undefined || allowed.includes(found)
      ? []
      : [problem(code, { found, allowed, nearest: nearestWord(found, allowed) }, at(key))];
  const day = parseDay(String(draft.date));
  const problems = [
    ...judged.problems.map((one) => ({ ...one, line: null, column: null, length: null })),
    ...known('unknown-step', step, steps, 'step'),
    ...known('unknown-spreader', options.spreader, Object.keys(lawn.equipment?.spreaders ?? {}), 'spreader'),
    ...known('unknown-product', options.product, [...products.keys()], 'product'),
    ...(areas ?? []).flatMap((area) => known('unknown-area', area, Object.keys(lawn.areas), 'areas')),
    ...(day !== null && day > today
      ? [problem('did-future', { found: formatDay(day), today: formatDay(today) }, at('date'))]
      : []),
  ];
  if (hasErrors(problems) || !judged.value) return { problems };
  return { draft, entry: judged.value as JournalEntry };
}

/** What is wrong with no flag alone is that a spreader and a sprayer are named. */
const equipmentIn = ({ sprayer }: EntryOptions): string => (sprayer ? 'sprayer' : 'output');

/** A flag as a key of the entry; none where it was not given. Points of the compass are often typed in capitals. */
function typed<T>(
  key: (typeof NUMBERS)[number] | (typeof TEXTS)[number],
  options: EntryOptions,
  as: (text: string) => T,
) {
  const value = options[camel(key) as keyof EntryOptions] as string | undefined;
  if (value === undefined) return [];
  return [[key, as(key === 'wind-from' ? value.toLowerCase() : value)] as const];
}

/** Nothing needs no unit. */
const zeroAsNumber = (text: string): string | number => (/^0+(\.0+)?$/.test(text.trim()) ? 0 : text);

const asNumber = (text: string): string | number => (/^-?\d+(\.\d+)?$/.test(text.trim()) ? Number(text) : text);
