import { polygonArea } from '../../base/geometry.ts';
import { factorOf, type KilogramsPerSquareMetre, type MetresPerSecond, type SquareMetres } from '../../base/units.ts';
import type { Area } from '../../model/area.ts';
import type { AreaAmount } from '../../model/season.ts';
import type { Dial, Spreader } from '../../model/spreader.ts';
import type { AreaReport, PassReport, SettingAdvice } from '../../model/spreader-report.ts';
import type { AreaWalk, HalfWalk } from '../../model/walk.ts';
import { courseLength, TOLERANCE } from './calibration.ts';
import { firstSetting } from './first-setting.ts';
import { speedOf, swathOf } from './spreader.ts';

/** What an area gets, as a plan has it; an area alone has no amount. */
export type Load = Pick<AreaAmount, 'id' | 'areaM2' | 'amountKg' | 'amount' | 'passes'>;

/** An area as the command tells it: what each pass puts down and how far it goes. */
export function areaReport(
  load: Load,
  { less }: Area,
  walk: AreaWalk | null,
  spreader: Spreader | undefined,
): AreaReport {
  const { id, areaM2, amountKg, amount } = load;
  const speed = speedOf(spreader);
  return {
    id,
    areaM2,
    square: walk?.square ?? false,
    partsWithoutPlace: less.length > (walk?.holes.length ?? 0),
    amountKg,
    amount,
    missedM2: walk?.missed ?? null,
    passes: walk ? walk.halves.map((half, i) => passReport(half, walk, load.passes[i], speed)) : [],
  };
}

function passReport(
  half: HalfWalk,
  { outer, holes, swath }: AreaWalk,
  load: Load['passes'][number] | undefined,
  speed: MetresPerSecond,
): PassReport {
  const outlined = holes.reduce((sum, hole) => sum - polygonArea(hole), polygonArea(outer));
  return {
    direction: half.direction,
    amountKg: load?.amountKg ?? null,
    amount: load?.amount ?? null,
    distanceM: half.distance,
    openM: half.open,
    overlap: (half.open * swath) / outlined - 1,
    lines: half.lines,
    apartM: half.apart,
    turns: half.turns,
    walkingMin: half.distance / speed / 60,
  };
}

/** Courses on which a setting is tried: as extension services give them, and a round figure in metres. */
const COURSES = {
  us: { wide: 1000 * factorOf('sqft'), narrow: 100 * factorOf('sqft') },
  metric: { wide: 100, narrow: 10 },
} as const;

/** Two rates that differ by less than this share are one. */
const SAME = 1e-6;

/** The settings to begin with, one for each rate that a pass is to put down, with the areas that it is for. */
export function settingsFor(
  areas: readonly AreaReport[],
  spreader: Spreader | undefined,
  pesticide: boolean,
  units: 'us' | 'metric',
): SettingAdvice[] {
  const found: { rate: KilogramsPerSquareMetre | null; areas: string[] }[] = [];
  for (const { id, areaM2, amountKg } of areas) {
    const rate = amountKg === null ? null : amountKg / 2 / areaM2;
    const same = found.find((one) => (rate === null ? one.rate === null : Math.abs((one.rate ?? 0) / rate - 1) < SAME));
    if (same) same.areas.push(id);
    else found.push({ rate, areas: [id] });
  }
  const area = COURSES[units][spreader?.kind === 'drop' ? 'narrow' : 'wide'];
  return found.map(({ rate, areas: ids }) => ({
    areas: ids,
    passGPerM2: rate === null ? null : 1000 * rate,
    ...settingOf(spreader?.dial),
    course: courseFor(area, rate, spreader, pesticide),
  }));
}

/** The one place where a setting is chosen. */
const settingOf = (dial: Dial | undefined) => ({ setting: dial ? firstSetting(dial) : null, basis: 'first' as const });

function courseFor(
  area: SquareMetres,
  rate: KilogramsPerSquareMetre | null,
  spreader: Spreader | undefined,
  pesticide: boolean,
) {
  const share = (factor: number) => (rate === null ? null : factor * rate * area);
  return {
    areaM2: area,
    lengthM: courseLength(area, swathOf(spreader).swath),
    deliversKg: share(1),
    leastKg: share(1 - TOLERANCE),
    mostKg: share(pesticide ? 1 : 1 + TOLERANCE),
  };
}
