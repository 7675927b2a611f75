import { UNIT_AREA } from '../amounts/unit-area.ts';
import type { Display } from '../base/display.ts';
import type { Rate } from '../model/fields.ts';
import type { Nutrient } from '../model/nutrient.ts';
import { byTestOf, type Step } from '../model/program.ts';
import { percent } from './in-words/triggers.ts';
import type { Writing } from './reasons.ts';

const NUTRIENTS: readonly Nutrient[] = ['N', 'P2O5', 'K2O'];

/** The id of a product as it is said. */
const plainly = (id: string): string => id.replaceAll('-', ' ');

/** What a step asks for where no product is at hand that could tell it otherwise: the program's own rate, or the label's. */
export function askedRate(
  step: Step,
  { display, words: { work: words } }: Pick<Writing, 'display' | 'words'>,
): string[] {
  const { apply } = step;
  if (!apply || apply.kind === 'mow' || apply.kind === 'water') return [];
  if (apply.kind === 'pesticide') return [words.askedOfLabel];
  if (apply.kind === 'bag-rate') return [words.askedOfBag(plainly(apply.product))];
  const byTest = byTestOf(step) !== null;
  const line = (what: string, rate: Rate): string => {
    const [amount, per] = onUnit(rate, display);
    return words.asked(amount, what, per, byTest);
  };
  if (apply.kind !== 'nutrient') return [line(plainly(apply.product), apply.rate)];
  const slow = apply.prefer?.slowShare;
  return [
    ...NUTRIENTS.flatMap((nutrient) => {
      const value = apply.rates[nutrient];
      return value === undefined ? [] : [line(words.nutrients[nutrient], { by: 'mass', value })];
    }),
    ...(slow === undefined ? [] : [words.askedSlow(percent(slow))]),
  ];
}

/** A rate as its amount and the area that it is for, which the word for the product parts. */
function onUnit({ by, value }: Rate, display: Display): readonly [amount: string, per: string] {
  const [amount = '', per = ''] = (by === 'mass' ? display.massRate(value) : display.volumeRate(value)).split('/');
  return [amount, display.system === 'us' ? display.area(UNIT_AREA.us) : per];
}
