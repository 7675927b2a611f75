import type { Criterion } from '../../amounts/choose-product.ts';
import type { Dose } from '../../amounts/product.ts';
import type { Day } from '../../base/day.ts';
import type { Display } from '../../base/display.ts';
import type { GrassSeason } from '../../model/grass.ts';
import type { DegreeDayMethod } from '../../model/heat.ts';
import type { Measured, Pass } from '../../model/season.ts';
import type { Direction } from '../../model/walk.ts';
import type { Choice } from '../choose.ts';
import type { Unwanted } from '../condition.ts';
import type { Forbidden } from '../rules/forbidden.ts';
import { droppedInWords, forbiddenInWords, unwantedInWords } from './rules-en.ts';
import { soilTestWords } from './soil-test-en.ts';
import { sprayerWords } from './sprayer-en.ts';
import { days, HEAT_BY, percent } from './triggers-en.ts';

/** A spread of days, or null where it falls on weather without one. */
interface SpreadDays {
  readonly p10: Day | null;
  readonly p50: Day | null;
  readonly p90: Day | null;
  readonly usual: Day | null;
}

/** A journal entry in parts. */
interface Entry {
  readonly day: string;
  readonly areas: readonly string[] | null;
  readonly name: string | null;
  readonly amount: string | null;
  readonly setting: number | null;
  readonly note: string | null;
}

/** The difference to the usual day, as "11 days later than usual (Mar 29)". */
export function againstUsual(day: Day, usual: Day, display: Display): string {
  const late = Math.round(day - usual);
  if (Math.abs(late) < 2) return `about as usual (${display.shortDay(usual)})`;
  return `${days(Math.abs(late))} ${late > 0 ? 'later' : 'earlier'} than usual (${display.shortDay(usual)})`;
}

const nameOf = (product: Dose['product']): string => product?.name ?? product?.id ?? '';

/** What decided for a product, in words that follow its name. */
const BECAUSE: Readonly<Record<Criterion, string>> = {
  'unasked-nitrogen': 'it brings less nitrogen that nobody asked for',
  'quick-limit': 'it stays inside the limit of quick nitrogen',
  'soil-test': 'its phosphate and potash are nearer to what is asked',
  'slow-share': 'it has the slow-release share that is preferred',
  shelf: 'it is on the shelf',
  'unasked-phosphate': 'it brings less phosphate that nobody asked for',
  packages: 'it takes fewer new packages',
  cost: 'it costs less',
  order: 'it stands first in your products',
};

/** Where the second half of a product goes. */
const SECOND: Readonly<Record<Direction, string>> = {
  lengthwise: 'lengthwise',
  crosswise: 'crosswise',
  between: 'between those lines',
  again: 'the same way once more',
};

/** The English texts of a plan: every sentence that a Season carries. */
export const en = {
  days,
  ...sprayerWords,
  ...soilTestWords,
  opensWhen: (rule: string) => `Opens when ${rule}.`,
  closesWhen: (rule: string) => `Closes when ${rule}.`,

  valueToday: (what: string, now: string, usual: string | null, day: string) =>
    `${what}, ${day}: ${now}${usual === null ? '' : `; usual ${usual}`}.`,
  soilAt: (depth: string, mean: number) => `Soil at ${depth}${mean > 1 ? ` (${mean}-day mean)` : ''}`,
  percent,
  growth: (grass: GrassSeason, mean: number) =>
    `Growth potential of ${grass}-season grass${mean > 1 ? ` (of the ${mean}-day mean)` : ''}`,
  air: (mean: number) => `Air${mean > 1 ? ` (${mean}-day mean)` : ''}`,
  heatSince: (base: string, since: string, method: DegreeDayMethod) =>
    `Degree days above ${base} since ${since} (${HEAT_BY[method]})`,

  opening: ({ p10, p50, p90, usual }: SpreadDays, asOf: Day, display: Display) => {
    if (p50 === null) return 'Its opening cannot be given a middle day yet.';
    const against = usual === null ? '' : `, ${againstUsual(p50, usual, display)}`;
    if (p90 !== null && p90 <= asOf) return `Open since ${display.shortDay(p50)}${against}.`;
    if (p10 === p50 && p50 === p90) return `Opens ${display.shortDay(p50)}${against}.`;
    const last = p90 === null ? 'or much later' : `to ${display.shortDay(p90)}`;
    return `Expected to open about ${display.shortDay(p50)} (8 in 10: ${p10 === null ? '?' : display.shortDay(p10)} ${last})${against}.`;
  },
  usualDate: () => 'That is the usual date: nothing seen so far tells more.',
  closing: ({ p10, p50, p90 }: SpreadDays, display: Display) => {
    if (p50 === null) return null;
    if (p10 === p90 || p10 === null) return `Last good day ${display.shortDay(p50)}.`;
    return `Last good day about ${display.shortDay(p50)} (8 in 10: ${display.shortDay(p10)} to ${p90 === null ? 'much later' : display.shortDay(p90)}).`;
  },
  chosen: ({ day, inWindow }: Choice, display: Display) =>
    `${display.day(day)} lies inside the window in ${percent(inWindow)} of the runs of weather.`,
  pinned: (day: Day, inWindow: number, display: Display) =>
    `Pinned by you to ${display.day(day)}: inside the window in ${percent(inWindow)} of the runs of weather.`,
  pinnedAgainst: (rules: readonly Forbidden[], display: Display) =>
    `It is against the rules: ${rules.map((rule) => forbiddenInWords(rule, display)).join('; ')}.`,
  passedOver: (day: Day, isBest: boolean, rule: Forbidden, display: Display) =>
    `Not ${display.day(day)}, ${isBest ? 'the middle best day' : 'the soonest'}: ${forbiddenInWords(rule, display)}.`,
  kept: (free: Day, display: Display) =>
    `The published day stands: ${display.day(free)} would be no better by more than 5 points.`,
  movedFrom: ({ from, reason }: NonNullable<Choice['moved']>, display: Display) =>
    `Moved from ${display.day(from)}: ${
      reason === 'left-window'
        ? 'that day has left the window'
        : reason === 'better'
          ? 'another day is inside the window more often'
          : forbiddenInWords(reason, display)
    }.`,
  dueSince: (day: Day, display: Display) => `Was planned for ${display.day(day)} and is not in the journal.`,
  unlikely: (chance: number) =>
    `Only ${percent(chance)} of the runs of weather have a window this season; no day is chosen.`,
  noDay: (blocked: readonly Forbidden[], display: Display) => {
    const reasons = blocked.map((rule) => forbiddenInWords(rule, display));
    if (reasons.length === 0) return 'No day is left in the window.';
    return `No day of the window is allowed: on every one of them ${reasons.join(', or ')}.`;
  },
  late: (note: string | null, until: Day, display: Display) =>
    `The window has closed and nothing is written in the journal. It may still be made good until about ${display.shortDay(until)}.${note === null ? '' : ` ${note}`}`,
  chosenProduct: (product: Dose['product'], { over, by }: NonNullable<Dose['chosen']>) =>
    by === 'only'
      ? `${nameOf(product)}: no other of your products that may be used here brings it.`
      : `${nameOf(product)} rather than ${nameOf(over)}: ${BECAUSE[by]}.`,
  held: (area: string, whole: string, held: string, cap: string, source: string | null) =>
    `${area}: ${held} instead of ${whole}, held by the limit "${cap}"${source === null ? '' : ` (${source})`}.`,
  skipped: () => 'Skipped by you in the lawn file.',
  dropped: droppedInWords,
  onlyOn: (areas: readonly string[], unwanted: readonly Unwanted[], display: Display) =>
    `On ${areas.join(', ')} alone: only where ${[...new Set(unwanted.map((one) => unwantedInWords(one, display)))].join(', ')}.`,
  done: (day: Day, display: Display) => `Done on ${display.day(day)}.`,
  partlyDone: (areas: readonly string[]) => `Done so far on: ${areas.join(', ')}.`,
  halfDone: (areas: readonly string[]) => `First of two passes done on: ${areas.join(', ')}.`,
  missed: (note: string | null, begun: boolean) =>
    `The window has closed and ${begun ? 'the rest is not' : 'nothing is'} written in the journal.${note === null ? '' : ` ${note}`}`,

  fromLabel: 'from your label',
  unknownAmount: 'choose a product first',
  nutrients: { N: 'nitrogen', P2O5: 'phosphate (P2O5)', K2O: 'potash (K2O)' },
  productById: (id: string) => id.replaceAll('-', ' '),
  /** A program's own rate, where no product is known. @param byTest Whether the soil test says how much of it. */
  asked: (amount: string, what: string, area: string, byTest: boolean) =>
    byTest
      ? `As much ${what} as the soil test asks for, at most ${amount} per ${area}.`
      : `${amount} of ${what} per ${area}.`,
  askedSlow: (share: number) => `Rather a product with ${percent(share)} of it or more slow-release.`,
  askedOfLabel: 'The rate is from your label, and so are limits and watering in.',
  askedOfBag: (id: string) => `${id.replaceAll('-', ' ')}: as much as its bag says.`,
  rateOf: (product: string, rate: string) => `${product} at ${rate}.`,
  areaLine: (id: string, area: string, amount: string) => `${id} (${area}): ${amount}`,
  measured: ({ aid, exact, rounding }: Measured) =>
    `${aid === null ? '' : `, ${aid}`}${exact === null ? '' : ` (rounded${rounding === 'down' ? ' down' : ''} from ${exact})`}`,
  passes: (first: Pass, second: Pass) =>
    `half (${first.amount}) lengthwise, half (${second.amount}) ${SECOND[second.direction]}`,
  secondPass: ({ direction }: Pass) => `the second pass, ${SECOND[direction]}`,
  secondAlone: 'the second pass',
  firstDown: (product: string) => `${product}: the first pass is down; put down what is left, and no more.`,
  mowAt: (height: string) => `Mow at ${height}.`,
  waterDepth: (depth: string) => `Water ${depth}.`,
  waterIn: (depth: string | null, within: number | null) =>
    `Water in${depth === null ? '' : ` with ${depth}`}${within === null ? '' : ` within ${days(within)}`}${depth === null ? ', as deep as the label says' : ''}.`,
  setLow: 'Set the dial low, put down half one way and half the other, and adjust by what is left.',
  noLabel: 'There is no label entry for this in your products: rate, limits and water-in come from the label in hand.',
  activeRate: (active: string, rate: string, compare: string | null) =>
    `That brings ${rate} of ${active}${compare === null ? '' : `, beside ${compare} as published for such work`}.`,
  labelSilent: (missing: readonly string[]) =>
    `The label entry does not say ${missing.join(', ')}: look on the label in hand.`,
  labelDate: (day: string) => `Label last compared on ${day}; the label in hand wins.`,
  reEntry: (words: string) => `Label, re-entry: ${words}`,

  unpublished: (key: string) =>
    key === 'common-practice' ? 'Common practice.' : 'From memory, not checked against a publication.',
  wind: (limit: string) => `wind (below ${limit})`,
  airBetween: (from: string | null, to: string | null) =>
    `air temperature (${from === null ? `below ${to}` : to === null ? `above ${from}` : `${from} to ${to}`})`,
  rain: (depth: string, hours: number) => `rain (less than ${depth} in ${hours} h)`,
  entry: ({ day, areas, name, amount, setting, note }: Entry) =>
    [
      `${day}${areas === null ? '' : ` (${areas.join(', ')})`}`,
      name !== null || amount !== null ? [amount, name].filter((part) => part !== null).join(' of ') : null,
      setting === null ? null : `setting ${setting}`,
      note,
    ]
      .filter((part) => part !== null)
      .join('; '),
  soilTitle: (depth: string, now: string | null, usual: string | null) =>
    `Soil at ${depth}: ${now ?? 'not known'}${usual === null ? '' : ` (usual ${usual})`}`,
  usualToday: (what: string, usual: string, day: string) =>
    `${what}, ${day}: usually ${usual}; no weather was observed.`,
  noSoil: 'Soil: no reading',
  dueNow: (name: string, day: string, amount: string) => `Due: ${name}, ${day}${amount}.`,
  openNow: (name: string, day: string | null, amount: string) =>
    `Open now: ${name}${day === null ? '' : `, planned for ${day}`}${amount}.`,
  thisWeek: (name: string, day: string, amount: string) => `This week: ${name}, ${day}${amount}.`,
  nextWeeks: (name: string, day: string, amount: string) => `Within three weeks: ${name}, ${day}${amount}.`,
  missedNow: (name: string) => `Missed: ${name}.`,
  buy: (packages: string, name: string, day: string, cost: string) => `Buy by ${day}: ${packages} ${name}${cost}.`,
  nothingNow: (name: string, day: string) => `Nothing to do in the next three weeks. Next: ${name}, ${day}.`,
  seasonOver: 'Nothing more is planned in this season.',
  moved: (name: string, day: string, against: string) => `${name}: opens about ${day}, ${against}.`,
  behindIt: 'The soil and the heat behind it:',
  because: (line: string) => `  ${line}`,
} as const;

export type Words = typeof en;
