/** What a subscriber of an event cares for, reckoned apart from the feed: a revision without a change in it is one for nothing. */
import type { LedgerEntry } from '../../../src/model/ledger.ts';
import type { Application, Season } from '../../../src/model/season.ts';

/** By name. */
export type Facts = Readonly<Record<string, string>>;

/** To 10 points. */
const tenths = (share: number | null): string => (share === null ? '-' : (Math.round(share * 10) * 10).toString());

function jobFacts(application: Application): Facts {
  const { date, start, end, status, areas, secondPasses, tanks, cautions, inWindow } = application;
  return {
    day: `${date}`,
    hours: JSON.stringify([start, end]),
    status,
    amounts: JSON.stringify([
      areas.map(({ id, amount }) => [id, amount]),
      secondPasses.map(({ id, amount, dial }) => [id, amount, dial]),
      tanks.map(({ count, sprayL, amount }) => [count, sprayL, amount]),
    ]),
    product: JSON.stringify(areas.map(({ product }) => product)),
    cautions: JSON.stringify(cautions),
    odds: tenths(inWindow),
  };
}

/** Facts of each kind that belongs to a step. */
const OF_STEP: Readonly<Record<string, (application: Application) => Facts>> = {
  job: jobFacts,
  window: ({ window: { opens, closes }, status, chance }) => ({
    day: `${opens.p50} ${closes.p50}`,
    status,
    odds: tenths(chance),
  }),
  water: ({ date, waterIn, status }) => ({
    day: `${date} ${waterIn?.by}`,
    status: `${status === 'expected'}`,
    amounts: JSON.stringify([waterIn?.depthMm, waterIn?.fallenMm]),
  }),
  'keep-off': ({ date, reEntry, status }) => ({
    day: `${date}`,
    status: `${status === 'expected'}`,
    cautions: `${reEntry}`,
  }),
  'soil-check': ({ window: { opens }, soilChecks }) => ({
    day: `${opens.p50}`,
    amounts: JSON.stringify(soilChecks),
  }),
};

/** Its day and the products that are bought on it are the feed's own; how much, and for when, the shopping list's. */
const buyingFacts = ({ uid, day, summary }: LedgerEntry, { shopping }: Season): Facts => ({
  day,
  product: summary,
  amounts: JSON.stringify(
    shopping
      .filter(({ neededOn }) =>
        shopping.some((one) => uid.includes(`-${one.product}-buying@`) && one.neededOn === neededOn),
      )
      .map(({ product, packages, neededOn }) => [product, packages, neededOn]),
  ),
});

/** Facts of an event in the plan of a day; null where the plan does not have it. */
export function factsOf(entry: LedgerEntry, season: Season): Facts | null {
  const { kind, step, season: year, status, removedOn } = entry;
  if (removedOn !== null) return { status: 'left' };
  if (status === 'CANCELLED') return { status: 'cancelled' };
  if (kind === 'buying') return buyingFacts(entry, season);
  const application = season.applications.find((one) => one.id === step && one.season === year);
  return application ? (OF_STEP[kind]?.(application) ?? null) : null;
}
