import type { Display } from '../../base/display.ts';
import { type Words, wordsOf } from '../../words/words.ts';
import type { Cap } from '../caps.ts';
import type { Unwanted } from '../condition.ts';
import type { Dropped } from '../placed.ts';
import type { Forbidden } from '../rules/forbidden.ts';

/** Why a day is not allowed, in words that follow "because". */
export function forbiddenInWords(rule: Forbidden, display: Display): string {
  const { forbidden: words, substances } = wordsOf(display.language);
  switch (rule.rule) {
    case 'not-working':
      return words.notWorking;
    case 'away':
    case 'full':
    case 'frozen':
    case 'saturated':
    case 'unseen':
      return words[rule.rule];
    case 'local':
      return words.local((substances as Record<string, string>)[rule.substance] ?? rule.substance, rule.because);
    case 'spacing':
      return words.spacing(rule.days, display.shortDay(rule.from));
    case 'apart':
    case 'interval':
    case 'seedlings':
      return words[rule.rule](rule.days, rule.of, display.shortDay(rule.from));
    case 'seed-safe':
      return words.seedSafe(rule.wait, rule.days, rule.of, display.shortDay(rule.from));
    case 'young':
      return words[rule.what === 'feed' ? 'youngFeed' : 'youngHerbicide'](rule.area, display.shortDay(rule.since));
    case 'dormant':
      return words[rule.by === 'lawn' ? 'dormantSaid' : 'dormantSeen'][rule.cause];
    case 'rain':
      return words.rain(display.depth(rule.depth), rule.known);
    case 'cold':
    case 'hot':
      return words[rule.rule](display.temperature(rule.limit), rule.known);
  }
}

/** What keeps a step from an area, in words that follow "it is only for a lawn where"; each once. */
export const unwantedInWords = (unwanted: readonly Unwanted[], display: Display): string[] => [
  ...new Set(unwanted.map((one) => keyInWords(one, display))),
];

function keyInWords(one: Unwanted, display: Display): string {
  const { wanted: words } = wordsOf(display.language);
  const print = <T>(value: T | null, as: (value: T) => string) => (value === null ? null : as(value));
  switch (one.key) {
    case 'lawn':
      return words.lawn(one.fact, one.wanted);
    case 'pH':
      return words.pH(print(one.below, display.number), print(one.above, display.number), one.wanted);
    case 'phosphorus':
    case 'potassium':
      return words.nutrient(one.key, one.levels, one.wanted);
    case 'area':
      return words.area(print(one.under, display.area), print(one.over, display.area), one.wanted);
    case 'shelf':
      return words.shelf(one.product, one.wanted);
  }
}

/** Why a step is not planned. */
export function droppedInWords(dropped: Dropped, unwanted: readonly Unwanted[], display: Display): string {
  const words = wordsOf(display.language);
  const { standing } = words;
  switch (dropped.because) {
    case 'unwanted':
      return standing.unwanted(unwantedInWords(unwanted, display));
    case 'follows':
      return standing.follows(dropped.step, dropped.status);
    case 'limit':
      return standing[dropped.cap.whole ? 'limitAlmost' : 'limitReached'](limitName(dropped.cap, words));
    case 'soil-test':
      return standing.noneAsked;
  }
}

/** The name of a limit. */
export function limitName({ counted, per, by }: Cap, { limit }: Words): string {
  const what =
    counted.kind === 'nutrient'
      ? limit.nutrients[counted.nutrient]
      : counted.kind === 'active'
        ? counted.active
        : counted.product;
  return limit.name(what, per, by);
}

/** Who sets a limit: a label, or what a program or a rule names as its source. */
export function limitSource({ source, because }: Cap, { limit }: Words): string | null {
  if (because === undefined) return source;
  return because === 'lime-at-once' ? limit.limeAtOnce : limit.ofLabel(because.label);
}
