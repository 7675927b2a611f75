import { bringsNitrogen } from '../amounts/product.ts';
import type { Ground } from './ground.ts';
import type { PlacedStep } from './placed.ts';
import type { Placed } from './rules/rule.ts';
import { feeds, seeds } from './rules/substances.ts';

/** The work that other steps have to keep clear of: what is planned, what the journal holds, seed of the lawn file. */
export function busyDays(ground: Ground, others: readonly PlacedStep[]): Placed[] {
  const { lawn, journal, products } = ground;
  const every = Object.keys(lawn.areas);
  const planned = others.flatMap(({ step, areas, choice, dose }) =>
    choice
      ? [
          {
            name: step.name,
            day: choice.day,
            areas,
            job: true,
            nitrogen: feeds(step, dose),
            seeds: seeds(step, dose),
            product: dose?.product ?? null,
          },
        ]
      : [],
  );
  const done = journal.map((entry) => {
    const other = others.find(({ id, season }) => id === entry.step && season.start <= entry.date);
    const dose = other?.dose ?? null;
    const product = (entry.product === undefined ? dose?.product : products.get(entry.product)) ?? null;
    return {
      name: other?.step.name ?? product?.name ?? entry.work ?? entry.step ?? '',
      day: entry.date,
      areas: entry.areas ?? other?.areas ?? every,
      job: false,
      nitrogen: product ? bringsNitrogen({ product }) : dose !== null && bringsNitrogen(dose),
      seeds: entry.work === 'seed' || product?.form === 'seed' || (other ? seeds(other.step, dose) : false),
      product,
    };
  });
  const sown = every.flatMap((area) => {
    const day = (lawn.areas[area]?.turf ?? lawn.turf)?.seeded;
    const base = { name: 'seeding', areas: [area], job: false, nitrogen: false, seeds: true, product: null };
    return day === undefined ? [] : [{ ...base, day }];
  });
  return [...planned, ...done, ...sown];
}
