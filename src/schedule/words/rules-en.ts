import type { Display } from '../../base/display.ts';
import type { Unwanted } from '../condition.ts';
import type { Dropped } from '../placed.ts';
import type { Forbidden } from '../rules/forbidden.ts';
import { days } from './triggers-en.ts';

/** Why a day is not allowed, in words that follow "because". */
export function forbiddenInWords(rule: Forbidden, display: Display): string {
  switch (rule.rule) {
    case 'not-working':
      return 'it is not one of your working days';
    case 'away':
      return 'you are away';
    case 'full':
      return 'the day is full';
    case 'frozen':
      return 'the ground is likely frozen';
    case 'saturated':
      return 'the ground is likely too wet';
    case 'unseen':
      return 'the observed weather ends too early to choose so close a day';
    case 'local':
      return `a local rule forbids ${rule.substance} then${rule.because === null ? '' : ` (${rule.because})`}`;
    case 'spacing':
      return `it is within ${days(rule.days)} of the nitrogen of ${display.shortDay(rule.from)}`;
    case 'apart':
      return `${days(rule.days)} are to lie between it and "${rule.of}" of ${display.shortDay(rule.from)}`;
    case 'interval':
      return `the label asks for ${days(rule.days)} between it and "${rule.of}" of ${display.shortDay(rule.from)}`;
    case 'seedlings':
      return `the seedlings of "${rule.of}" (${display.shortDay(rule.from)}) are to be mowed three times first, which takes ${days(rule.days)} or so`;
    case 'seed-safe':
      return `the label keeps ${rule.wait === 'for-seed' ? 'seed off after the herbicide' : 'the herbicide off after seed'} for ${days(rule.days)}, and "${rule.of}" is on ${display.shortDay(rule.from)}`;
    case 'young':
      return rule.what === 'feed'
        ? `"${rule.area}" was seeded on ${display.shortDay(rule.since)} and is fed three weeks later`
        : `the turf of "${rule.area}" is young (since ${display.shortDay(rule.since)}): herbicides wait for three mowings or three months`;
    case 'dormant': {
      const cause = rule.cause === 'drought' ? 'too dry' : 'too hot';
      return rule.by === 'lawn'
        ? `the lawn file says that the turf is dormant (${cause})`
        : `by the weather it is ${cause} for the turf to grow`;
    }
    case 'rain':
      return `${display.depth(rule.depth)} or more of rain is ${rule.known ? 'forecast' : 'likely'}`;
    case 'cold':
      return `the day stays below ${display.temperature(rule.limit)}${rule.known ? '' : ' in most years'}`;
    case 'hot':
      return `the day is above ${display.temperature(rule.limit)} on average${rule.known ? '' : ' in most years'}`;
  }
}

/** What keeps a step from an area, in words that follow "it is only for a lawn where". */
export function unwantedInWords(one: Unwanted, display: Display): string {
  const not = one.wanted ? '' : 'not ';
  switch (one.key) {
    case 'lawn':
      return `"${one.fact}" is ${one.wanted ? 'true' : 'not true'}`;
    case 'pH': {
      const bounds = [one.below === null ? '' : `below ${one.below}`, one.above === null ? '' : `above ${one.above}`];
      return `a soil test shows pH ${not}${bounds.filter((part) => part !== '').join(' and ')}`;
    }
    case 'phosphorus':
    case 'potassium':
      return `a soil test shows ${one.key} ${not}${one.levels.join(' or ')}`;
    case 'area': {
      const bounds = [
        one.over === null ? '' : `over ${display.area(one.over)}`,
        one.under === null ? '' : `under ${display.area(one.under)}`,
      ];
      return `the area is ${not}${bounds.filter((part) => part !== '').join(' and ')}`;
    }
    case 'shelf':
      return `"${one.product}" is ${not}on the shelf`;
  }
}

/** Why a step is not planned. */
export function droppedInWords(dropped: Dropped, unwanted: readonly Unwanted[], display: Display): string {
  switch (dropped.because) {
    case 'unwanted': {
      const parts = [...new Set(unwanted.map((one) => unwantedInWords(one, display)))];
      return `Not needed here: it is only for a lawn where ${parts.join(', ')}.`;
    }
    case 'follows':
      return `Nothing to follow: "${dropped.step}" is ${dropped.status}.`;
    case 'limit':
      return dropped.whole
        ? `Less than the label's rate is left of the limit "${dropped.cap}": none of it is put down.`
        : `Nothing is left of the limit "${dropped.cap}".`;
    case 'soil-test':
      return 'The soil test asks for none of it.';
  }
}
