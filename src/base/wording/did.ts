import { list, note, warning } from './forms.ts';

/** What is remarkable about work that is written down. It is written all the same: it may have been so. */
export const did = {
  'did-setting': warning(
    (a: { setting: number; from: number; to: number; step: number; fault: 'outside' | 'between' }) =>
      a.fault === 'outside'
        ? `The setting ${a.setting} is not on the dial (${a.from} to ${a.to} in the lawn file). --corrects mends a slip.`
        : `The setting ${a.setting} lies between the marks of the dial (${a.from} to ${a.to} by ${a.step} in the lawn file). --corrects mends a slip.`,
  ),
  'did-measure': warning(
    (a: { product: string; found: 'mass' | 'volume' }) =>
      `"${a.product}" is counted by ${a.found === 'mass' ? 'volume' : 'weight'}, and its entry has no "density": what is given by ${a.found === 'mass' ? 'weight' : 'volume'} counts as nothing. Give it by ${a.found === 'mass' ? 'volume' : 'weight'}, with --corrects.`,
  ),
  'did-much': warning(
    (a: { product: string; areas: readonly string[]; used: string; most: string }) =>
      `${a.used} of "${a.product}" on ${list(a.areas)}, where one application is ${a.most}. If that is a slip of the amount or of the areas, --corrects mends it.`,
  ),
  'did-mix': warning(
    (a: { product: string; used: string; most: string }) =>
      `${a.used} of "${a.product}" for ${a.most} planned looks like the mix in the tank. Amounts are of the product, without the water: give that, with --corrects.`,
  ),
  'did-over-limit': warning(
    (a: { area: string; done: string; limit: string; name: string }) =>
      `${a.area} has had ${a.done}; the limit is ${a.limit} (${a.name}). If the amount is a slip, --corrects mends it.`,
  ),
  'did-interval': warning(
    (a: { product: string; areas: readonly string[]; days: number; other: string; interval: number }) =>
      `"${a.product}" on ${list(a.areas)} ${a.days} ${a.days === 1 ? 'day' : 'days'} from that of ${a.other}; its label entry asks for ${a.interval} days between two. Look at the label in hand for what to do.`,
  ),
  'did-weather': warning(
    (a: { what: 'wind' | 'cold' | 'warm'; found: string; limit: string }) =>
      ({
        wind: `Wind of ${a.found}; the step is for less than ${a.limit}. What drifted lies elsewhere: look there, and at the label in hand.`,
        cold: `Air of ${a.found}; the step is for ${a.limit} and warmer. It may not have worked; the label in hand goes first.`,
        warm: `Air of ${a.found}; the step is for up to ${a.limit}. Look for harm in the next days; the label in hand goes first.`,
      })[a.what],
  ),
  'did-no-advice': note(
    (a: { why: 'dial' | 'used' | 'step' | 'product' | 'weight'; planned: string | null }) =>
      `No advice on the setting: ${
        {
          dial: 'the lawn file does not tell of the "dial" of this spreader.',
          used: 'the entry does not say how much was put down (--loaded and --left, or --used).',
          step: 'the entry is of no step that puts something down on these areas, so no rate is known to aim at.',
          product: `the plan has "${a.planned}" for this step, so it knows no rate of this product to aim at.`,
          weight: 'what was put down and what is planned are not both by weight.',
        }[a.why]
      }`,
  ),
} as const;
