import { netArea } from '../../amounts/area.ts';
import type { DialRecord } from '../../amounts/dial/advise.ts';
import { dialRecordsOf, plannedBy, withPlanned } from '../../amounts/dial/records.ts';
import { labelMostOf } from '../../amounts/dial/second-pass.ts';
import { inWords } from '../../amounts/measured/in-words.ts';
import { areaReport, type Load, settingsFor } from '../../amounts/spreader/report.ts';
import { type NamedSpreader, speedOf, swathOf, walkOver } from '../../amounts/spreader/spreader.ts';
import { type Day, parseDay } from '../../base/day.ts';
import { displayOf } from '../../base/display.ts';
import { type Problem, problem } from '../../base/problem.ts';
import type { Journal } from '../../model/journal.ts';
import type { Lawn } from '../../model/lawn.ts';
import { isPesticide, type Product } from '../../model/product.ts';
import type { Application, Season } from '../../model/season.ts';
import type { SpreaderReport } from '../../model/spreader-report.ts';
import type { AreaWalk } from '../../model/walk.ts';
import { unknownStep } from '../which-lawn.ts';

const waits = ({ status }: Application): boolean => status === 'expected' || status === 'open' || status === 'due';

/** Whether a spreader puts an application down: what is spread dry, and what has no amount yet. */
const forSpreader = ({ work, areas }: Application): boolean =>
  (work === 'spread' || work === 'seed') &&
  areas.some(({ amount, amountKg, passes }) => passes.length > 0 || (amount !== null && amountKg === null));

/** The application that is asked for, else the next one with a day that waits for a spreader; null where there is none. */
export function jobOf(
  { applications }: Season,
  step: string | undefined,
): { readonly application: Application | null } | { readonly problem: Problem } {
  const jobs = applications.filter(forSpreader);
  if (step === undefined) {
    const next = jobs.filter(
      (one) => waits(one) && one.date !== null && one.areas.some(({ passes }) => passes.length > 0),
    );
    return { application: next.find(({ status }) => status === 'due') ?? next[0] ?? null };
  }
  const found = applications.filter(({ id }) => id === step);
  const [first] = found;
  if (!first) return { problem: unknownStep(step, [...new Set(applications.map(({ id }) => id))]) };
  const allowed = [...new Set(jobs.map(({ id }) => id))];
  if (!allowed.includes(step))
    return { problem: problem('spreader-step', { found: step, work: first.work, allowed }, null) };
  const application = found.find(waits);
  const open = [...new Set(jobs.filter(waits).map(({ id }) => id))];
  return application
    ? { application }
    : { problem: problem('step-over', { step, status: first.status, allowed: open }, null) };
}

interface JobInput {
  readonly season: Season;
  readonly lawn: Lawn;
  readonly journal: Journal;
  readonly products: ReadonlyMap<string, Product>;
  readonly chosen: NamedSpreader;
  readonly application: Application | null;
  readonly problems: readonly Problem[];
}

/** An application as the spreader puts it down, and the ways over its areas. */
export function reportOf({ season, lawn, journal, products, chosen, application, problems }: JobInput): {
  readonly report: SpreaderReport;
  readonly walks: ReadonlyMap<string, AreaWalk>;
} {
  const { id, spreader } = chosen;
  const { swath, basis, skew } = swathOf(spreader);
  const display = displayOf(season.display.units, season.display.language);
  const walks = new Map<string, AreaWalk>();
  const large: Problem[] = [];
  const loads = loadsOf(application, lawn);
  const areas = loads.flatMap((load) => {
    const area = lawn.areas[load.id];
    if (!area) return [];
    const walk = walkOver(area, spreader);
    if (walk) walks.set(load.id, walk);
    else large.push(problem('walk-lines', { area: load.id, swath: display.distance(swath) }, null));
    return [areaReport(load, area, walk, spreader)];
  });
  const product = products.get(application?.areas[0]?.product ?? '');
  const labelMost = product ? labelMostOf(product, 'mass') : null;
  const known = areas.length > 0 && areas.every(({ amountKg }) => amountKg !== null);
  const amountKg = known ? areas.reduce((sum, area) => sum + (area.amountKg ?? 0), 0) : null;
  const report: SpreaderReport = {
    kind: 'spreader',
    version: 1,
    lawn: season.lawn,
    lawnName: season.lawnName,
    asOf: season.asOf,
    step: application && {
      id: application.id,
      name: application.name,
      season: application.season,
      status: application.status,
      date: application.date,
    },
    product: product ? { id: product.id, name: product.name ?? product.id, pesticide: isPesticide(product) } : null,
    amountKg,
    amount:
      amountKg !== null && product ? inWords({ by: 'mass', value: amountKg }, display, roundingIn(application)) : null,
    spreader: {
      id,
      kind: spreader?.kind ?? 'rotary',
      swathM: swath,
      swathFrom: basis,
      skew,
      passes: spreader?.passes ?? 'crossing',
      speedMps: speedOf(spreader),
      dial: spreader?.dial ?? null,
    },
    settings: settingsFor(loads, spreader, product !== undefined && isPesticide(product), season.display.units, {
      records: product ? recordsOf(product, id, lawn, journal, season) : [],
      most: labelMost === null ? null : labelMost / 2,
      display,
    }),
    areas,
    walkingMin: areas.flatMap(({ passes }) => passes).reduce((sum, { walkingMin }) => sum + walkingMin, 0),
    cautions: application?.cautions ?? [],
    drawing: null,
    problems: [...problems, ...large],
  };
  return { report, walks };
}

/** How the sum of the areas is rounded: downward where that of one of them is. */
const roundingIn = (application: Application | null) =>
  application?.areas.some(({ measured }) => measured?.rounding === 'down') ? 'down' : 'nearest';

/** What the journal has of a product and a spreader up to the as-of day. */
function recordsOf(
  product: Product,
  spreader: string | null,
  { areas: known, equipment }: Lawn,
  journal: Journal,
  { applications, asOf }: Season,
): DialRecord[] {
  const planned = { asOf: parseDay(asOf) as Day, equipment, plannedFor: plannedBy(applications) };
  const areas = new Map(Object.entries(known).map(([id, area]) => [id, netArea(area)]));
  return dialRecordsOf(withPlanned(journal, planned), { product: product.id, spreader, areas });
}

/** What the areas get that are still to do, of two passes the second where the first is done; every area of the lawn, without an amount, where there is no application. */
function loadsOf(application: Application | null, { areas }: Lawn): readonly Load[] {
  if (!application)
    return Object.entries(areas).map(([id, area]) => ({
      id,
      areaM2: netArea(area),
      amountKg: null,
      amount: null,
      passes: [],
      secondPass: null,
    }));
  const { areasDone, secondPasses } = application;
  const all = application.areas.map((area): Load => ({ ...area, secondPass: null }));
  const open = all.flatMap((area): Load[] => {
    if (areasDone.includes(area.id)) return [];
    const second = secondPasses.find(({ id }) => id === area.id);
    return [second ? { ...second, secondPass: { mostGPerM2: second.mostGPerM2 } } : area];
  });
  return open.length > 0 ? open : all;
}
