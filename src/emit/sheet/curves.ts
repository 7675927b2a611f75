import { parseDay } from '../../base/day.ts';
import type { Application } from '../../model/season.ts';
import type { HeatSignal, SignalThreshold } from '../../model/signals.ts';
import type { Curve, Level, Panel } from './chart/panel.ts';
import { waits } from './next-work.ts';
import { dayNumber, shortDay, type Told } from './told.ts';

/** A value that steps wait for, in words, with its letter. */
export interface Awaited extends Level {
  /** The value, what it is of, and what opens or closes by it. */
  readonly line: string;
}

interface Rule {
  readonly step: string;
  readonly edge: 'opens' | 'closes';
}

const CHARS = [...'ABCDEFGHIJKLMNOPQRSTUVWXYZ'];
/** A letter for each value; two after the first twenty-six. */
const letterOf = (i: number): string =>
  i < CHARS.length
    ? (CHARS[i] ?? '')
    : `${CHARS[Math.floor(i / CHARS.length) - 1] ?? ''}${CHARS[i % CHARS.length] ?? ''}`;

/** Days around the 8 in 10 of an edge in which its line is drawn strong. */
const AROUND = 6;

const edgesOf = (application: Application, { edge }: Rule): (readonly [number, number])[] => {
  const { p10, p50, p90 } = application.window[edge];
  const [first, last] = [parseDay(p10 ?? p50 ?? ''), parseDay(p90 ?? p50 ?? p10 ?? '')];
  return first === null || last === null ? [] : [[first - AROUND, last + AROUND]];
};

/** A value, by itself and with what it is of. */
interface Said {
  readonly value: number;
  readonly short: string;
  readonly text: string;
}

/** Rules on one value as a level: named by the steps that wait for it. */
function levelOf({ value, short, text }: Said, rules: readonly Rule[], letter: string, told: Told): Awaited {
  const { season, words } = told;
  const found = rules.flatMap((rule) =>
    season.applications
      .filter((application) => application.id === rule.step && waits(application))
      .map((application) => ({ application, rule })),
  );
  const edges = new Set(found.map(({ application, rule }) => words.sheet.edges[rule.edge](application.name)));
  return {
    letter,
    value,
    line: `${text}: ${[...edges].join('; ')}`,
    label: short,
    awaited: found.flatMap(({ application, rule }) => edgesOf(application, rule)),
  };
}

/** The temperatures that steps wait for, warmest first. */
export function temperatureLevels(told: Told): readonly Awaited[] {
  const { words, display, season } = told;
  const what = ({ of, depthM, stat }: SignalThreshold) =>
    of === 'soil' ? words.readings.soilAt(display.soilDepth(depthM ?? 0), 1) : words.sheet.air[stat];
  const all = [...season.signals.thresholds].sort((a, b) => b.valueC - a.valueC);
  const sayingOf = (one: SignalThreshold) => `${what(one)}, ${display.temperature(one.valueC)}`;
  return [...new Set(all.map(sayingOf))].map((text, i) => {
    const alike = all.filter((one) => sayingOf(one) === text);
    const value = alike[0]?.valueC ?? 0;
    return levelOf({ value, short: display.temperature(value), text }, alike, letterOf(i), told);
  });
}

/** The soil and the air of the season, with what steps wait for. Null where nothing is known of them. */
export function temperaturePanel(told: Told, levels: readonly Awaited[], height: number): Panel | null {
  const { signals } = told.season;
  const start = dayNumber(signals.start);
  const ahead = start + signals.soil5C.length;
  const { usual, forecast } = signals;
  const join = (seen: readonly (number | null)[], then: readonly (number | null)[]) =>
    then.length === 0 ? [] : [seen.at(-1) ?? null, ...then];
  const all = [
    signals.soil5C,
    signals.airMeanC,
    usual.soil5C,
    usual.airMeanC,
    usual.soil5CP10,
    usual.soil5CP90,
    forecast.airMeanC,
  ]
    .flat()
    .filter((value) => value !== null);
  if (all.length === 0) return null;
  const values = [
    Math.min(...all, ...levels.map(({ value }) => value)) - 1,
    Math.max(...all, ...levels.map(({ value }) => value)) + 5,
  ] as const;
  const curve = (
    from: number,
    of: readonly (number | null)[],
    stroke: string,
    width: number,
    dash?: string,
  ): Curve => ({
    start: from,
    values: of,
    stroke: `var(--${stroke})`,
    width,
    ...(dash && { dash }),
  });
  return {
    height,
    values,
    ticks: ticksOf(values, told),
    band: { start, low: usual.soil5CP10, high: usual.soil5CP90 },
    curves: [
      curve(start, usual.airMeanC, 'air', 0.8, '1 2'),
      curve(start, usual.soil5C, 'soil', 1.1),
      curve(start, signals.airMeanC, 'air', 1),
      curve(ahead - 1, join(signals.airMeanC, forecast.airMeanC), 'air', 1.2, '3 3'),
      curve(start, signals.soil5C, 'soil', 2.8),
      curve(ahead - 1, join(signals.soil5C, forecast.soil5C), 'soil', 2.8, '5 3'),
    ],
    levels,
    beside: besideUsual(told),
    today: todayWord(told),
  };
}

/** Room that words beside the usual have from its curves [px]. */
const BESIDE = 14;

/** Which usual is which, at the height of the year: the soil above, the air below. */
function besideUsual({ season, words }: Told): Panel['beside'] {
  const { start, usual } = season.signals;
  const known = usual.soil5C.map((value, i) => ({ i, value: value ?? Number.NEGATIVE_INFINITY }));
  const inside = known.slice(45, -45);
  const top = inside.reduce((best, one) => (one.value > best.value ? one : best), inside[0] ?? { i: 0, value: 0 });
  const near = (values: readonly (number | null)[]) =>
    values.slice(Math.max(0, top.i - 40), top.i + 40).filter((value) => value !== null);
  const day = dayNumber(start) + top.i;
  return inside.length === 0
    ? []
    : [
        { day, value: Math.max(...near(usual.soil5CP90)), away: -BESIDE / 2, text: words.sheet.usualSoil },
        { day, value: Math.min(...near(usual.airMeanC)), away: BESIDE, text: words.sheet.usualAir },
      ];
}

const todayWord = (told: Told): string => told.words.sheet.todayOn(shortDay(told.season.asOf, told) ?? '');

/** Round values of the reader's own scale. */
function ticksOf([least, most]: readonly [number, number], { display }: Told): Panel['ticks'] {
  const isUs = display.system === 'us';
  const [toOwn, toC] = isUs ? [(c: number) => c * 1.8 + 32, (f: number) => (f - 32) / 1.8] : [Number, Number];
  const step = isUs ? 20 : 10;
  const first = Math.ceil(toOwn(least) / step);
  const count = Math.floor(toOwn(most) / step) - first + 1;
  return Array.from({ length: Math.max(0, count) }, (_, i) => ({
    value: toC((first + i) * step),
    label: `${display.number((first + i) * step)}°`,
  }));
}

/** The sums that steps wait for. @param letters How many are taken. */
export function heatLevels({ reaches }: HeatSignal, letters: number, told: Told): readonly Awaited[] {
  const sums = [...new Set(reaches.map(({ sumC }) => sumC))].sort((a, b) => b - a);
  return sums.map((sum, i) => {
    const text = told.display.heat(sum);
    const alike = reaches.filter(({ sumC }) => sumC === sum);
    return levelOf({ value: sum, short: text, text }, alike, letterOf(letters + i), told);
  });
}

/** What a way of counting heat is called. */
export const heatTitle = ({ baseC, method, from }: HeatSignal, { words, display, season }: Told): string => {
  const day = parseDay(from);
  return words.readings.heatSince(
    display.temperature(baseC),
    display.shortDay(day ?? dayNumber(season.season.start)),
    method,
  );
};

/** Heat through the season, as far up as steps wait for it. */
export function heatPanel(signal: HeatSignal, levels: readonly Awaited[], height: number, told: Told): Panel {
  const { sums, forecast, usual, of } = signal;
  const start = dayNumber(told.season.signals.start);
  const colour = of === 'soil' ? 'var(--soil)' : 'var(--air)';
  const most = 1.35 * Math.max(...levels.map(({ value }) => value));
  const ahead = forecast.length === 0 ? [] : [sums.at(-1) ?? null, ...forecast];
  return {
    height,
    values: [0, most],
    ticks: [],
    curves: [
      { start, values: usual, stroke: colour, width: 1.1, dash: '1 2' },
      { start, values: sums, stroke: colour, width: 2.8 },
      { start: start + sums.length - 1, values: ahead, stroke: colour, width: 2.8, dash: '5 3' },
    ],
    levels,
    beside: [],
    today: todayWord(told),
  };
}
