import type { SoilCheck } from '../model/around-work.ts';
import { type Step, triggersIn } from '../model/program.ts';
import { triggerInWords } from './in-words/triggers.ts';
import type { Writing } from './reasons.ts';

/** The readings of the soil by which a step's window opens. */
export const soilChecksOf = ({ window }: Step, { display }: Writing): SoilCheck[] =>
  triggersIn(window.opens).flatMap((trigger) =>
    trigger.kind === 'soil' ? [{ depthM: trigger.depth, rule: triggerInWords(trigger, display, (step) => step) }] : [],
  );
