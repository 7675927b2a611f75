import { inWords } from '../../amounts/amount.ts';
import { netArea } from '../../amounts/area.ts';
import { inMeasure } from '../../amounts/in-measure.ts';
import { spreaderOf } from '../../amounts/spreader/spreader.ts';
import { type Problem, problem } from '../../base/problem.ts';
import type { Amount } from '../../model/fields.ts';
import type { JournalEntry } from '../../model/journal.ts';
import { limitInWords } from '../../model/limit.ts';
import type { Nutrient } from '../../model/nutrient.ts';
import { isPesticide, type Product } from '../../model/product.ts';
import { byTestOf } from '../../model/program.ts';
import type { Season } from '../../model/season.ts';
import { type DidInput, displayFor } from './input.ts';
import type { Meaning } from './meaning.ts';
import { stepsByIdOf } from './step-of.ts';

/** So much more than planned is no noise: a spreader within 5 % is taken to be right. Common practice. */
const MUCH = 1.25;
/** So much more of a liquid is the mix: a tank holds ten parts of water and more to one of product. */
const MIX = 3;
const HAIR = 1e-6;

/** What is remarkable about an entry, since it is most likely a slip: its setting, its measure, its amount. */
export function implausible(input: DidInput, entry: JournalEntry, means: Meaning, season: Season): Problem[] {
  const product = input.linked.products.get(means.product ?? '');
  return [
    ...settingProblems(input, entry),
    ...(product && entry.used ? amountProblems(input, entry, entry.used, product, means, season) : []),
  ];
}

/** A setting off the dial, or between its marks. */
function settingProblems({ linked }: DidInput, entry: JournalEntry): Problem[] {
  const dial = spreaderOf(linked.lawn.equipment, entry.spreader)?.spreader?.dial;
  const { setting } = entry;
  if (!dial || setting === undefined) return [];
  const marks = dial.step > 0 ? (setting - dial.from) / dial.step : 0;
  const outside = setting < dial.from || setting > dial.to;
  if (!outside && Math.abs(marks - Math.round(marks)) < HAIR) return [];
  return [problem('did-setting', { setting, ...dial, fault: outside ? 'outside' : 'between' }, null)];
}

function amountProblems(
  input: DidInput,
  entry: JournalEntry,
  used: Amount,
  product: Product,
  means: Meaning,
  season: Season,
): Problem[] {
  const most = mostOf(input, entry, product, means, season);
  const by = most?.by ?? (['granular', 'soluble', 'seed'].includes(product.form) ? 'mass' : used.by);
  const found = inMeasure(used, by, product);
  const display = displayFor(input.linked);
  const name = product.name ?? product.id;
  const args = {
    product: name,
    areas: means.areas,
    used: inWords(used, display),
    most: most ? inWords(most, display) : '',
  };
  if (entry.sprayer && used.by === 'volume' && most && (found === null || found > MIX * most.value))
    return [problem('did-mix', args, null)];
  // A pesticide is held against its label, which says both.
  if (isPesticide(product)) return [];
  if (found === null) return [problem('did-measure', { product: name, found: used.by }, null)];
  return [
    ...(most && found > MUCH * most.value ? [problem('did-much', args, null)] : []),
    ...limitProblems(input, product, means),
  ];
}

/** The most of one application on the areas of an entry: as planned, or where a soil test asks the rate of the step; null where none is known. */
function mostOf(
  { linked }: DidInput,
  { step }: JournalEntry,
  { id }: Product,
  means: Meaning,
  season: Season,
): Amount | null {
  const one = stepsByIdOf(linked).get(step ?? '')?.step;
  const tested = one && byTestOf(one);
  if (tested) {
    // What a test asks for shrinks with what is done, but a step that names a rate never goes above it at a time.
    if (!('rate' in tested)) return null;
    const m2 = means.areas.reduce(
      (sum, area) => sum + (linked.lawn.areas[area] ? netArea(linked.lawn.areas[area]) : 0),
      0,
    );
    return { by: tested.rate.by, value: tested.rate.value * m2 };
  }
  const planned = season.applications.find((application) => application.id === step)?.areas ?? [];
  if (!planned.some(({ product }) => product === id)) return null;
  const kg = means.against.reduce((sum, { plannedKg }) => sum + (plannedKg ?? 0), 0);
  if (kg > 0) return { by: 'mass', value: kg };
  const l = means.against.reduce((sum, { plannedL }) => sum + (plannedL ?? 0), 0);
  return l > 0 ? { by: 'volume', value: l / 1000 } : null;
}

/** Limits of program and place that an area is over now, of a nutrient that the product brings. Labels are told apart. */
function limitProblems({ linked }: DidInput, { analysis }: Product, { areas, limits }: Meaning): Problem[] {
  const brings = (nutrient: string | null) => (analysis?.[nutrient as Nutrient] ?? 0) > 0;
  return limits
    .filter(({ area, by, of, doneGPerM2, limitGPerM2 }) => {
      const over = (doneGPerM2 ?? 0) > (limitGPerM2 ?? Number.POSITIVE_INFINITY) * (1 + 1e-3);
      return over && by !== 'label' && areas.includes(area) && brings(of.nutrient);
    })
    .map((limit) => {
      const { done, limit: most } = limitInWords(limit, displayFor(linked));
      return problem('did-over-limit', { area: limit.area, done, limit: most, name: limit.name }, null);
    });
}
