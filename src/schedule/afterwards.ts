import type { Writing } from './reasons.ts';
import { waterInOf } from './water-in.ts';
import type { DosedStep } from './within-caps.ts';

/** What is still to do when it lies on the grass. */
export function whenDown(placed: DosedStep, { display, words }: Writing): string[] {
  const label = placed.dose?.product?.label;
  const waterIn = waterInOf(placed);
  const depth = waterIn?.depth === undefined ? null : display.depth(waterIn.depth);
  return [
    ...(waterIn ? [words.work.waterIn(depth, waterIn.within ?? null)] : []),
    ...(label?.reEntry ? [words.work.reEntry(label.reEntry)] : []),
  ];
}

/** What a step that is over still asks for: once done the watering-in, while there is time for it; else nothing. */
export function afterwards(placed: DosedStep, writing: Writing): string[] {
  const { doneOn } = placed.progress;
  const { within = 1 } = waterInOf(placed) ?? {};
  return doneOn === null || writing.ground.asOf > doneOn + within ? [] : whenDown(placed, writing);
}
