import { type Day, formatDay } from '../base/day.ts';
import { displayOf } from '../base/display.ts';
import { inOrder, type Problem } from '../base/problem.ts';
import { zoneAt } from '../base/zone.ts';
import type { Product } from '../model/product.ts';
import { feedKeyOf, type Telling } from '../model/reader.ts';
import type { Season } from '../model/season.ts';
import { wordsOf } from '../words/words.ts';
import { applicationOf } from './application.ts';
import { dialOf } from './dial.ts';
import { limitProblems, limitsOf } from './limits.ts';
import { movedAgainstUsual, whatNow } from './now.ts';
import { walksOf } from './passes.ts';
import type { PlacedStep } from './placed.ts';
import type { PlacedSeason, PlanInput } from './placed-season.ts';
import type { Writing } from './reasons.ts';
import { shelfOf, workOf } from './shelf.ts';
import { shoppingFor } from './shopping.ts';
import { signalsOf, todayOf } from './signals.ts';
import { sprayerOf } from './sprayer.ts';
import { stepProblems } from './step-problems.ts';

/**
 * A placed season in words, for one reader: the same days and amounts whatever the units and the language.
 *
 * @param input What it was placed from.
 * @example tellSeason(placed, input, { units: 'metric' }).now[0]
 */
export function tellSeason(value: PlacedSeason, input: PlanInput, telling: Telling = {}): Season {
  const { season, placed, ground, sizes: areas, to, problems: weatherProblems } = value;
  const { program, lawn, asOf, products, journal, climate } = ground;
  const { observed, history, forecast } = input;
  const southern = lawn.location.latitude < 0;
  const units = telling.units ?? lawn.display?.units ?? 'us';
  const language = telling.language ?? lawn.display?.language ?? 'en-US';
  const currency = telling.currency ?? lawn.display?.currency ?? 'USD';
  const display = displayOf(units, language);
  const words = wordsOf(language);
  // Problems are for whoever mends the files, and have one language.
  const plain = words === wordsOf('en') ? display : displayOf(units, 'en');
  const zone = lawn.timezone ?? zoneAt(lawn.location.latitude, lawn.location.longitude);
  const writing: Writing = {
    ground,
    areas,
    display,
    words,
    walks: walksOf(lawn),
    dial: dialOf(ground, placed, areas),
    zone,
    takenOn: new Map(),
  };
  const inTime = [...placed].sort((a, b) => dayOf(a) - dayOf(b));
  const applications = inTime.map((one) => applicationOf(one, writing));

  const today = todayOf(climate, season, asOf, southern, display, words);
  const shopping = shoppingFor(applications, { products, lawn, journal, asOf, display, words });
  const first = placed.filter((one) => one.season.start <= asOf);
  const limits = limitsOf(first, ground, areas);
  const problems = unique([
    ...weatherProblems,
    ...stepProblems(placed, plain),
    ...limitProblems(first, limits, ground, areas, plain),
  ]);
  return {
    kind: 'season',
    version: 1,
    lawn: lawn.id,
    lawnName: lawn.name ?? lawn.id,
    program: program.id,
    programName: program.name,
    asOf: formatDay(asOf),
    timezone: zone,
    feedKey: feedKeyOf(lawn),
    remindersMin: (lawn.working?.remind ?? []).map((days) => Math.round(days * 24 * 60)),
    display: { units, language, currency },
    season: { year: season.year, start: formatDay(season.start), end: formatDay(season.end) },
    weather: {
      observedThrough: climate.observedThrough === null ? null : formatDay(climate.observedThrough),
      forecastThrough: climate.forecastThrough === null ? null : formatDay(climate.forecastThrough),
      traces: climate.traces.length,
      generated: climate.provenance(to) === 'generated',
      sources: [observed, ...history, forecast].flatMap((series) => (series ? [series.source] : [])),
    },
    now: whatNow({
      applications,
      names: productNames(products),
      begun: ({ id, season: year, window }) =>
        input.previous.some((one) => one.step === id && one.season === year) ||
        journal.some(({ date }) => formatDay(date) <= (window.closes.p50 ?? '')),
      shopping,
      asOf,
      display,
      words,
      currency,
    }),
    moved: movedAgainstUsual(applications, today, display, words),
    today,
    sprayer: sprayerOf(lawn, display, words),
    applications,
    shopping,
    shelf: shelfOf(lawn, products, workOf(journal, applications, products)),
    limits,
    signals: signalsOf(climate, season, placed),
    problems: inOrder(problems),
  };
}

/** Problems without repetition: two seasons may have the same one. */
function unique(problems: readonly Problem[]): Problem[] {
  const seen = new Set<string>();
  return problems.filter(({ code, message, line }) => {
    const key = `${code} ${message} ${line}`;
    return !seen.has(key) && seen.add(key);
  });
}

const productNames =
  (products: ReadonlyMap<string, Product>) =>
  (id: string): string =>
    products.get(id)?.name ?? id;

/** The day that an application stands at in a list: done or chosen, else its middle opening. */
function dayOf({ progress, choice, windows, season }: PlacedStep): Day {
  const opening = windows.ofTraces.find((window) => window !== null)?.opens;
  return progress.doneOn ?? choice?.day ?? opening ?? season.end;
}
