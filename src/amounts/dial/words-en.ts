import type { Display } from '../../base/display.ts';
import { TOLERANCE } from '../spreader/calibration.ts';
import type { DialAdvice, DialNote } from './advise.ts';

const NOTES: Readonly<Record<DialNote, string>> = {
  'label-reached': "The label's maximum of one application is down: no further pass.",
  'load-no-more':
    'It may come out above what the label allows: load no more than that, and stop when the hopper is empty.',
  'held-back':
    'It opens wider than any setting tried, so it is kept low on purpose; what is left over shows how to go on.',
  coarse: 'No mark of the dial comes nearer.',
  'dial-ends-low': 'The dial does not go lower: watch how fast the hopper empties.',
  'dial-ends-high': 'The dial does not open wider.',
};

/** What the dial is to be set to, and what goes with it, line by line. @param pass Such as `Second pass`. */
export function adviceInWords(advice: DialAdvice, pass: string, display: Display): string[] {
  const { setting, basis, rate, share, notes } = advice;
  const rest = notes.map((note) => NOTES[note]);
  if (setting === null) return rest;
  if (basis === 'first')
    return [`${pass}: dial ${setting}, low on purpose, about a third open (common practice).`, ...rest];
  const kept = `keep the dial at ${setting}; within ${100 * TOLERANCE} % is as good as it gets (common practice).`;
  const range = rate
    ? ` About ${display.massRate(rate.middle)} is to be expected, ${Math.round(10 * share)} times in 10 between ${display.massRate(rate.low)} and ${display.massRate(rate.high)}.`
    : '';
  return [`${pass}: ${basis === 'keep' ? kept : `set the dial to ${setting}.`}${range}`, ...rest];
}
