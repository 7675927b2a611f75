import { type Day, formatDay, yearOf } from '../base/day.ts';
import { correctionsOf, nameOf } from '../model/corrections.ts';
import { entryData } from '../model/entry-data.ts';
import type { Amount } from '../model/fields.ts';
import type { Journal, JournalEntry } from '../model/journal.ts';
import type { Lawn } from '../model/lawn.ts';
import { isPesticide, type Product } from '../model/product.ts';
import type { Work } from '../model/program.ts';
import type { ApplicatorRecord, Particular, RecordEntry, Standing } from '../model/record.ts';
import type { Season } from '../model/season.ts';
import { netArea } from './area.ts';

/** A step of the lawn's programs as the record knows it. */
export interface RecordStep {
  readonly name: string;
  readonly work: Work;
  /** Whether a pesticide is put down with it. */
  readonly pesticide: boolean;
  /** The areas whose program has it. */
  readonly areas: readonly string[];
}

/** What a record is made from. */
export interface RecordInput {
  readonly lawn: Lawn;
  readonly products: ReadonlyMap<string, Product>;
  readonly steps: ReadonlyMap<string, RecordStep>;
  /** The plan, for entries of its own season; null where there is none. */
  readonly plan: Pick<Season, 'season' | 'applications'> | null;
  readonly journal: Journal;
  readonly year: number;
  readonly asOf: Day;
  readonly unreadLines: readonly number[];
}

/**
 * The applicator's record of a year: every entry of its days, corrected ones too, with what the lawn and the products say.
 *
 * What an entry does not say is null and never guessed, with one exception that is marked: of an entry without a product,
 * that of its step in the plan of the same season. An amount that is not written is not taken from a plan.
 *
 * @example recordOf({ lawn, products, steps, plan, journal, year: 2027, asOf, unreadLines: [] }).entries[0]?.rateGPerM2
 */
export function recordOf(input: RecordInput): ApplicatorRecord {
  const { lawn, journal, year, asOf, unreadLines } = input;
  const corrections = correctionsOf(journal);
  const entries = journal
    .map((entry, at) => ({ entry, at }))
    .filter(({ entry: { date } }) => yearOf(date) === year)
    .sort((a, b) => a.entry.date - b.entry.date || (a.entry.start ?? 0) - (b.entry.start ?? 0) || a.at - b.at)
    .map(({ entry, at }) => recordEntry(entry, at, corrections, input));
  return {
    kind: 'record',
    version: 1,
    lawn: lawn.id,
    lawnName: lawn.name ?? lawn.id,
    customer: lawn.record?.customer ?? null,
    address: lawn.record?.address ?? null,
    latitude: lawn.location.latitude,
    longitude: lawn.location.longitude,
    units: lawn.display?.units ?? 'us',
    year,
    asOf: formatDay(asOf),
    entries,
    unreadLines,
  };
}

type Corrections = ReturnType<typeof correctionsOf>;

function recordEntry(entry: JournalEntry, at: number, corrections: Corrections, input: RecordInput): RecordEntry {
  const { lawn, products, journal, steps } = input;
  const step = entry.step === undefined ? undefined : steps.get(entry.step);
  const planned = plannedFor(entry, input.plan);
  const productId = entry.product ?? planned?.product ?? null;
  const product = productId === null ? undefined : products.get(productId);
  const areas = entry.areas ?? (entry.undo ? [] : (planned?.areas ?? step?.areas ?? Object.keys(lawn.areas)));
  const areaM2 = sizeOf(areas, lawn);
  const replacing = corrections.replacedBy[at] ?? null;
  const replacedBy = replacing === null ? undefined : journal[replacing];
  const known = {
    ...entryData(entry),
    name: nameOf(entry),
    standing: standingOf(entry, replacedBy),
    replacedBy: replacedBy ? { name: nameOf(replacedBy), date: formatDay(replacedBy.date) } : null,
    stepName: step?.name ?? null,
    work: entry.work ?? step?.work ?? null,
    application: isApplication(at, corrections, input),
    areas,
    areaM2,
    grasses: [...new Set(areas.flatMap((id) => (lawn.areas[id] ? [lawn.areas[id].grass ?? lawn.grass] : [])))],
    product: productId,
    productFrom: productId === null ? null : entry.product === undefined ? ('plan' as const) : ('entry' as const),
    productName: product ? (product.name ?? product.id) : null,
    registration: entry.registration ?? product?.registration ?? null,
    actives: Object.entries(product?.actives ?? {}).map(([name, { by, value }]) => ({
      name,
      share: by === 'mass' ? value : null,
      gPerL: by === 'volume' ? value : null,
    })),
    pesticide: product ? isPesticide(product) : (step?.pesticide ?? null),
    ...weighed(entry, areaM2),
    sprayer: entry.sprayer ?? false,
    outputMlPerM2: entry.output === undefined ? null : entry.output * 1e6,
    reEntry: entry.reEntry ?? product?.label?.reEntry ?? null,
  };
  return { ...known, missing: missingFrom(known) };
}

/** What the plan of its season has for the step of an entry: its product on the entry's areas, if it is one; null for what takes another back. */
export function plannedFor({ step, date, undo, areas }: JournalEntry, plan: RecordInput['plan']) {
  const day = formatDay(date);
  if (!plan || step === undefined || undo || day < plan.season.start || day > plan.season.end) return null;
  const application = plan.applications.find(({ id, season }) => id === step && season === plan.season.year);
  if (!application) return null;
  const covered = application.areas.filter(({ id }) => areas?.includes(id) ?? true);
  const products = [...new Set(covered.flatMap(({ product }) => product ?? []))];
  return { product: products.length === 1 ? products[0] : null, areas: application.areas.map(({ id }) => id) };
}

function standingOf(entry: JournalEntry, replacedBy: JournalEntry | undefined): Standing {
  if (replacedBy) return replacedBy.undo ? 'taken-back' : 'corrected';
  return entry.undo ? 'undo' : 'in-force';
}

/** Whether an entry put something down; of one that takes another back, whether that one did. */
function isApplication(from: number, { targets }: Corrections, { journal, steps }: RecordInput): boolean {
  let at = from;
  // A circle of references is cut where it closes, so this ends; the length is for what cannot happen.
  for (let i = 0; journal[at]?.undo && i <= journal.length; i++) {
    const target = targets[at] ?? null;
    if (target === null) return true;
    at = target;
  }
  const { step, work, product } = journal[at] as JournalEntry;
  const kind = work ?? (step === undefined ? undefined : steps.get(step)?.work);
  return product !== undefined || kind === undefined || ['spread', 'spray', 'seed'].includes(kind);
}

/** All of the areas together [m²]; null where one is not the lawn's. */
function sizeOf(areas: readonly string[], { areas: known }: Lawn): number | null {
  if (areas.length === 0 || areas.some((id) => !known[id])) return null;
  return [...new Set(areas)].reduce((sum, id) => sum + (known[id] ? netArea(known[id]) : 0), 0);
}

const kg = (amount: Amount | undefined): number | null => (amount?.by === 'mass' ? amount.value : null);
const litres = (amount: Amount | undefined): number | null => (amount?.by === 'volume' ? amount.value * 1000 : null);

function weighed({ loaded, used, left }: JournalEntry, areaM2: number | null) {
  const [usedKg, usedL] = [kg(used), litres(used)];
  const rate = (value: number | null) => (value === null || areaM2 === null ? null : (1000 * value) / areaM2);
  return {
    loadedKg: kg(loaded),
    loadedL: litres(loaded),
    usedKg,
    usedL,
    leftKg: kg(left),
    leftL: litres(left),
    rateGPerM2: rate(usedKg),
    rateMlPerM2: rate(usedL),
  };
}

/** What a record of a pesticide should say and an entry in force does not. */
function missingFrom(entry: Omit<RecordEntry, 'missing'>): Particular[] {
  if (entry.standing !== 'in-force' || !entry.application) return [];
  const product = entry.productName === null ? (['product'] as const) : [];
  if (!entry.pesticide) return [...product];
  const isCalm = entry.windMPerS === 0;
  const stands: readonly (readonly [Particular, boolean])[] = [
    ['product', entry.productName !== null],
    ['registration', entry.registration !== null],
    ['areas', entry.areaM2 !== null],
    ['used', entry.usedKg !== null || entry.usedL !== null],
    ['by', entry.by !== null],
    ['licence', entry.licence !== null],
    ['start', entry.start !== null],
    ['end', entry.end !== null],
    ['wind', entry.windMPerS !== null],
    ['wind-from', entry.windFrom !== null || isCalm],
    ['air', entry.airC !== null],
    ['target', entry.target !== null],
    ['equipment', entry.sprayer || [entry.spreader, entry.setting, entry.outputMlPerM2].some((one) => one !== null)],
    ['re-entry', entry.reEntry !== null],
    ['notices', entry.notices !== null],
  ];
  return stands.flatMap(([particular, stand]) => (stand ? [] : [particular]));
}
