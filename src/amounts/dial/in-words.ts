import type { Display } from '../../base/display.ts';
import { type Words, wordsOf } from '../../words/words.ts';
import { TOLERANCE } from '../spreader/calibration.ts';
import type { DialAdvice } from './advise.ts';

/** What the dial is to be set to, and what goes with it, line by line. @param pass What it is set for. */
export function adviceInWords(advice: DialAdvice, pass: keyof Words['dial']['passes'], display: Display): string[] {
  const words = wordsOf(display.language).dial;
  const { basis, rate, share, notes } = advice;
  const rest = notes.map((note) => words.notes[note]);
  if (advice.setting === null) return rest;
  const [what, setting] = [words.passes[pass], display.number(advice.setting)];
  if (basis === 'first') return [words.first(what, setting), ...rest];
  const head = basis === 'keep' ? words.keep(what, setting, `${100 * TOLERANCE} %`) : words.set(what, setting);
  const print = display.massRate;
  const range = rate ? words.range(print(rate.middle), Math.round(10 * share), print(rate.low), print(rate.high)) : '';
  return [`${head}${range}`, ...rest];
}
