import { nutrientsOf, quickNitrogen } from '../amounts/product.ts';
import type { Display } from '../base/display.ts';
import { type Problem, problem } from '../base/problem.ts';
import type { JournalEntry } from '../model/journal.ts';
import type { Limit } from '../model/season.ts';
import type { Ground, PlacedStep } from './place.ts';

const HAIR = 1e-9;

/** Yearly nitrogen for each area: planned, done and allowed, by the program and by the rules of the place. */
export function limitsOf(placed: readonly PlacedStep[], ground: Ground, areas: ReadonlyMap<string, number>): Limit[] {
  const { program, lawn } = ground;
  const yearly = program.nitrogen?.yearly;
  const caps = [
    ...(yearly?.to === undefined ? [] : [{ name: 'nitrogen-yearly', limit: yearly.to, source: yearly.source ?? null }]),
    ...(lawn.localRules ?? []).flatMap((rule) =>
      'limit' in rule && rule.yearly !== undefined && rule.limit === 'N'
        ? [{ name: 'nitrogen-yearly-local', limit: rule.yearly, source: rule.because ?? null }]
        : [],
    ),
  ];
  return caps.flatMap(({ name, limit, source }) =>
    [...areas].map(([area]) => {
      const plannedGPerM2 = sum(placed.map((one) => plannedNitrogen(one, area)));
      const doneGPerM2 = sum([doneNitrogen(placed, area, ground, areas)]);
      const limitGPerM2 = 1000 * limit;
      return {
        name,
        area,
        plannedGPerM2,
        doneGPerM2,
        limitGPerM2,
        source,
        ok: plannedGPerM2 + doneGPerM2 <= limitGPerM2 + HAIR,
      };
    }),
  );
}

const sum = (values: readonly number[]): number => Number(values.reduce((total, value) => total + value, 0).toFixed(6));

/** Nitrogen still to come on an area [g/m²]. */
function plannedNitrogen({ dose, choice, progress }: PlacedStep, area: string): number {
  return dose && choice && !progress.areasDone.includes(area) ? nutrientsOf(dose).N : 0;
}

/**
 * Nitrogen that the journal has put on an area in the season [g/m²], work outside the program too: by what was used, or as
 * planned where the entry does not say.
 */
function doneNitrogen(
  placed: readonly PlacedStep[],
  area: string,
  ground: Ground,
  areas: ReadonlyMap<string, number>,
): number {
  const season = placed[0]?.season;
  const inSeason = ({ date }: JournalEntry) => season !== undefined && date >= season.start && date <= season.end;
  const on = (entry: JournalEntry): number => {
    const covered = entry.areas ?? [...areas.keys()];
    if (!covered.includes(area)) return 0;
    const dose = placed.find(({ step }) => step.id === entry.step)?.dose;
    const product = entry.product === undefined ? dose?.product : ground.products.get(entry.product);
    const total = covered.reduce((square, id) => square + (areas.get(id) ?? 0), 0);
    if (entry.used && product)
      return nutrientsOf({ product, rate: { by: entry.used.by, value: entry.used.value / total } }).N;
    return dose ? nutrientsOf(dose).N : 0;
  };
  return ground.journal.filter(inSeason).reduce((sum, entry) => sum + on(entry), 0);
}

/** What goes over a limit: nitrogen in one application, quick nitrogen, nitrogen in the year. */
export function limitProblems(
  placed: readonly PlacedStep[],
  limits: readonly Limit[],
  ground: Ground,
  display: Display,
): Problem[] {
  const single = ground.program.nitrogen?.single;
  const perM2 = (grams: number) => display.massRate(grams / 1000);
  const over = placed.flatMap(({ step, dose, choice }) => {
    if (!dose || !choice) return [];
    const [total, quick] = [nutrientsOf(dose).N, quickNitrogen(dose)];
    const check = (planned: number, limit: number | undefined) =>
      limit !== undefined && planned > 1000 * limit + HAIR
        ? [
            problem(
              'over-single-nitrogen',
              { step: step.id, planned: perM2(planned), limit: display.massRate(limit) },
              null,
            ),
          ]
        : [];
    return [...check(total, single?.total), ...check(quick, single?.quick)];
  });
  const yearly = limits
    .filter(({ ok }) => !ok)
    .map(({ area, plannedGPerM2, doneGPerM2, limitGPerM2 }) =>
      problem(
        'over-yearly',
        { area, planned: perM2(plannedGPerM2 + doneGPerM2), limit: perM2(limitGPerM2), what: 'nitrogen' },
        null,
      ),
    );
  const labels = placed.flatMap(({ step, dose, choice }) => {
    const label = dose?.product?.label;
    if (!dose?.product || !dose.rate || !label || !choice) return [];
    const product = dose.product.id;
    const most = label.perApplication;
    const grass = ground.lawn.grass;
    return [
      ...(most && most.by === dose.rate.by && dose.rate.value > most.value + HAIR
        ? [problem('label-rate', { step: step.id, product }, null)]
        : []),
      ...(label.grasses && !label.grasses.includes(grass)
        ? [problem('label-grass', { step: step.id, product, grass, grasses: label.grasses }, null)]
        : []),
    ];
  });
  const least = ground.program.nitrogen?.yearly?.from;
  const under = limits
    .filter(
      ({ name, plannedGPerM2, doneGPerM2 }) =>
        name === 'nitrogen-yearly' && least !== undefined && plannedGPerM2 + doneGPerM2 < 1000 * least - HAIR,
    )
    .map(({ area, plannedGPerM2, doneGPerM2 }) =>
      problem(
        'under-yearly',
        { area, planned: perM2(plannedGPerM2 + doneGPerM2), least: display.massRate(least ?? 0) },
        null,
      ),
    );
  return [...over, ...yearly, ...under, ...labels];
}
