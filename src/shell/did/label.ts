import { inWords } from '../../amounts/amount.ts';
import { netArea } from '../../amounts/area.ts';
import { inMeasure } from '../../amounts/in-measure.ts';
import { type Day, latestOnOrBefore, parseDay, partsOf } from '../../base/day.ts';
import { type Problem, problem } from '../../base/problem.ts';
import { entriesInForce } from '../../model/corrections.ts';
import type { Rate } from '../../model/fields.ts';
import { type JournalEntry, PASSES_OF_ONE } from '../../model/journal.ts';
import { limitInWords } from '../../model/limit.ts';
import { activeOf, isPesticide, type Product } from '../../model/product.ts';
import type { Season } from '../../model/season.ts';
import { broughtBy, inLimitUnits, measureOf } from '../../schedule/counted.ts';
import { activeCaps, type LabelCap, labelSource } from '../../schedule/label-caps.ts';
import { workOf } from '../../schedule/shelf.ts';
import { type DidInput, displayFor } from './input.ts';

/** What scales and rounding may add to a label's rate without being more than it. */
const HAIR = 1.001;

/** What goes over the label of a pesticide: in one application, all its passes together, and in the season. It is said, never hidden. */
export function labelProblems(
  input: DidInput,
  entry: JournalEntry,
  areas: readonly string[],
  season: Season,
): Problem[] {
  const { products } = input.linked;
  const [work] = workOf([entry], season.applications, products);
  const product = work && products.get(work.product);
  if (!product || !isPesticide(product)) return [];
  const name = product.name ?? product.id;
  const further = (entry.pass ?? 0) > PASSES_OF_ONE ? [problem('did-further-pass', { product: name }, null)] : [];
  if (!product.label) return [...further, problem('did-label-unknown', { product: product.id }, null)];
  const most = mostAtOnce(product.label);
  const incomparable = work.amount !== null && inMeasure(work.amount, most.by, product) === null;
  return [
    ...further,
    ...(incomparable ? [problem('did-label-measure', { product: product.id }, null)] : []),
    ...atOnce(input, entry, areas, season, product, most),
    ...inYear(input, entry, areas, season, product),
  ];
}

/** What was put down of a product somewhere, in the measure of limits. */
interface Put {
  readonly product: Product;
  readonly areas: readonly string[];
  readonly dose: Parameters<typeof broughtBy>[0];
}

/** Areas that have had more in one application than a label allows. */
function atOnce(
  input: DidInput,
  entry: JournalEntry,
  areas: readonly string[],
  season: Season,
  product: Product,
  most: Rate,
): Problem[] {
  const { linked } = input;
  const inForce = entriesInForce([...linked.journal, entry]).filter(inSeasonOf(entry, season));
  const whole = putBy(inForce.filter(inOneWith(entry)), input, season);
  const used = [...putBy(inForce, input, season).map((put) => put.product), ...plannedIn(season, linked.products)];
  const caps = [ownCap(product, most), ...activeCaps([...new Set([product, ...used])])].filter(
    ({ counted, per }) =>
      per === 'application' && (counted.kind !== 'active' || activeOf(product, counted.active) !== undefined),
  );
  return caps.flatMap((cap) => {
    const had = (area: string) =>
      whole.reduce((sum, put) => sum + (put.areas.includes(area) ? broughtBy(put.dose, cap.counted) : 0), 0);
    const over = areas.filter((area) => had(area) > cap.limit * HAIR);
    if (over.length === 0) return [];
    const by = measureOf(cap.counted);
    const inAll = (rate: (area: string) => number, rounding: 'nearest' | 'down') => {
      const value = over.reduce((sum, area) => sum + rate(area) * sizeOf(input, [area]), 0) / inLimitUnits(1, by);
      return inWords({ by, value }, displayFor(linked), rounding);
    };
    const what = cap.counted.kind === 'active' ? cap.counted.active : (product.name ?? product.id);
    const [is, allowed] = [inAll(had, 'nearest'), inAll(() => cap.limit, 'down')];
    const args = { what, area: over.join(', '), used: is, label: allowed, source: cap.source ?? '' };
    return [problem('did-over-label', args, null)];
  });
}

/** A label that says no most of an application means its rate. */
const mostAtOnce = ({ perApplication, rate }: NonNullable<Product['label']>): Rate => perApplication ?? rate;

function ownCap(product: Product, { by, value }: Rate): Omit<LabelCap, 'name' | 'by' | 'whole'> {
  const counted = { kind: 'product', product: product.id, by } as const;
  return { counted, per: 'application', limit: inLimitUnits(value, by), source: labelSource(product) };
}

/** Whether another entry is of the same season as one: of the plan's, or one before it. */
function inSeasonOf(entry: JournalEntry, { season }: Season): (other: JournalEntry) => boolean {
  const beginning = partsOf(parseDay(season.start) as Day);
  return ({ date }) => latestOnOrBefore(beginning, date) === latestOnOrBefore(beginning, entry.date);
}

/** Whether another entry is of the same application: of the same step, or of the same day where that is all that is known. */
const inOneWith =
  (entry: JournalEntry) =>
  ({ step, date }: JournalEntry): boolean =>
    step === entry.step && (step !== undefined || date === entry.date);

function putBy(journal: readonly JournalEntry[], input: DidInput, season: Season): Put[] {
  const { products, lawn } = input.linked;
  return journal.flatMap((entry) => {
    const [work] = workOf([entry], season.applications, products);
    const product = work && products.get(work.product);
    if (!product || !work.amount) return [];
    const own = season.applications.find(({ id }) => id === entry.step)?.areas.map(({ id }) => id);
    const areas = entry.areas ?? own ?? Object.keys(lawn.areas);
    const m2 = sizeOf(input, areas);
    const rate = { by: work.amount.by, value: work.amount.value / m2 };
    return m2 > 0 ? [{ product, areas, dose: { product, rate } }] : [];
  });
}

const plannedIn = ({ applications }: Season, products: ReadonlyMap<string, Product>): Product[] =>
  applications.flatMap(({ areas }) => areas.flatMap(({ product }) => products.get(product ?? '') ?? []));

/** Areas that have had more in the season than a label allows in a year: of the product, or of an active in several. */
function inYear(
  input: DidInput,
  { date }: JournalEntry,
  areas: readonly string[],
  { limits, season }: Season,
  product: Product,
): Problem[] {
  if (date < (parseDay(season.start) as Day) || date > (parseDay(season.end) as Day)) return [];
  return limits.flatMap((limit) => {
    const { by, ok, of, area, source } = limit;
    const own = of.product === product.id || (of.active !== null && activeOf(product, of.active) !== undefined);
    if (by !== 'label' || ok || !own || !areas.includes(area)) return [];
    const { done, limit: most } = limitInWords(limit, displayFor(input.linked));
    const what = of.active ?? product.name ?? product.id;
    return [problem('did-over-label-year', { what, area, used: done, label: most, source: source ?? '' }, null)];
  });
}

const sizeOf = ({ linked }: DidInput, areas: readonly string[]): number =>
  areas.reduce((sum, id) => sum + (linked.lawn.areas[id] ? netArea(linked.lawn.areas[id]) : 0), 0);
