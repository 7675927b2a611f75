import type { Display } from '../../base/display.ts';
import { polygonArea } from '../../base/geometry.ts';
import { factorOf, type KilogramsPerSquareMetre, type MetresPerSecond, type SquareMetres } from '../../base/units.ts';
import type { Area } from '../../model/area.ts';
import type { AreaAmount, SecondPass } from '../../model/season.ts';
import type { Spreader } from '../../model/spreader.ts';
import type { AreaReport, PassReport, SettingAdvice } from '../../model/spreader-report.ts';
import type { AreaWalk, HalfWalk } from '../../model/walk.ts';
import { adviseSetting, type DialOptions, type DialRecord } from '../dial/advise.ts';
import { firstSetting } from '../dial/dial.ts';
import { adviceInWords } from '../dial/in-words.ts';
import { courseLength, TOLERANCE } from './calibration.ts';
import { speedOf, swathOf } from './spreader.ts';

/** What an area gets, as a plan has it; an area alone has no amount. */
export interface Load extends Pick<AreaAmount, 'id' | 'areaM2' | 'amountKg' | 'amount' | 'passes'> {
  /** Where the first of two passes is done: the most that the label leaves for the second; null for both. */
  readonly secondPass: Pick<SecondPass, 'mostGPerM2'> | null;
}

/** An area as the command tells it: what each pass puts down and how far it goes. */
export function areaReport(
  load: Load,
  { less }: Area,
  walk: AreaWalk | null,
  spreader: Spreader | undefined,
): AreaReport {
  const { id, areaM2, amountKg, amount, secondPass } = load;
  const halves = walk ? walk.halves.slice(secondPass ? 1 : 0) : [];
  const speed = speedOf(spreader);
  return {
    id,
    areaM2,
    square: walk?.square ?? false,
    partsWithoutPlace: less.length > (walk?.holes.length ?? 0),
    amountKg,
    amount,
    left: secondPass ? 'second-pass' : 'both-passes',
    missedM2: walk?.missed ?? null,
    passes: walk ? halves.map((half, i) => passReport(half, walk, load.passes[i], speed)) : [],
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

/** What the journal knows of the dial, and the most that one of two passes may deliver by the label; null where it has no limit. */
export interface Learned {
  readonly records: readonly DialRecord[];
  readonly most: DialOptions['most'];
  readonly display: Display;
}

/** The settings to begin with, one for each rate that a pass is to put down, with the areas that it is for. */
export function settingsFor(
  areas: readonly Load[],
  spreader: Spreader | undefined,
  pesticide: boolean,
  units: 'us' | 'metric',
  learned: Learned,
): SettingAdvice[] {
  const found: (PassRate & { areas: string[] })[] = [];
  for (const { id, areaM2, amountKg, secondPass } of areas) {
    const rate = amountKg === null ? null : amountKg / (secondPass ? 1 : 2) / areaM2;
    const mostLeft = secondPass?.mostGPerM2 ?? null;
    const most = secondPass ? (mostLeft === null ? null : mostLeft / 1000) : learned.most;
    const pass: PassRate = { rate, most, left: secondPass ? 'second-pass' : 'both-passes' };
    const same = found.find((one) => isSame(one, pass));
    if (same) same.areas.push(id);
    else found.push({ ...pass, areas: [id] });
  }
  const area = COURSES[units][spreader?.kind === 'drop' ? 'narrow' : 'wide'];
  return found.map(({ rate, most, left, areas: ids }) => ({
    areas: ids,
    left,
    passGPerM2: rate === null ? null : 1000 * rate,
    ...settingOf(spreader, rate, pesticide, { ...learned, most }),
    course: courseFor(area, rate, spreader, pesticide),
  }));
}

/** What one pass is to deliver. */
interface PassRate {
  readonly rate: KilogramsPerSquareMetre | null;
  readonly most: KilogramsPerSquareMetre | null;
  readonly left: SettingAdvice['left'];
}

const alike = (a: number | null, b: number | null): boolean =>
  a === null || b === null ? a === b : Math.abs(a - b) <= SAME * b;

const isSame = (a: PassRate, b: PassRate): boolean =>
  a.left === b.left && alike(a.rate, b.rate) && alike(a.most, b.most);

/** The one place where a setting is chosen. */
function settingOf(
  spreader: Spreader | undefined,
  rate: KilogramsPerSquareMetre | null,
  pesticide: boolean,
  { records, most, display }: Learned,
): Pick<SettingAdvice, 'setting' | 'basis' | 'learned'> {
  const dial = spreader?.dial;
  if (!dial) return { setting: null, basis: 'first', learned: [] };
  if (rate === null) return { setting: firstSetting(dial), basis: 'first', learned: [] };
  const advice = adviseSetting(records, dial, rate, { rounding: pesticide ? 'down' : 'nearest', most });
  // A first setting has words of its own; what goes with it has not.
  const learned = adviceInWords(advice, 'journal', display).slice(advice.basis === 'first' ? 1 : 0);
  return { setting: advice.setting, basis: advice.basis, learned };
}

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
