import { outputOf, speedOver, timeFor } from '../amounts/sprayer/output.ts';
import { UNIT_AREA } from '../amounts/unit-area.ts';
import type { Display } from '../base/display.ts';
import type { Lawn } from '../model/lawn.ts';
import type { SprayerPlan } from '../model/season.ts';
import type { Words } from '../words/words.ts';
import { clockTime } from './in-words/sprayer.ts';

/** What a lawn's sprayer puts down, and how fast to go with it: as in the test that the output comes from. */
export function sprayerOf(lawn: Lawn, display: Display, { sprayer: words }: Words): SprayerPlan | null {
  const sprayer = lawn.equipment?.sprayer;
  if (!sprayer) return null;
  const { tank, catchTest, nozzleTest } = sprayer;
  const output = outputOf(sprayer);
  const by = catchTest ? 'catch' : nozzleTest ? 'nozzle' : 'file';
  const speed = nozzleTest ? speedOver(nozzleTest.run, nozzleTest.time) : null;
  const area = UNIT_AREA[display.system];
  const time = catchTest ? timeFor(catchTest, area) : null;
  return {
    tankL: tank * 1000,
    outputLPerM2: output * 1000,
    coversM2: tank / output,
    by,
    paceSPerM2: time === null ? null : (time * 86_400) / area,
    speedMps: speed,
    how: [
      words.output(display.sprayRate(output), by, display.volume(tank), display.area(tank / output)),
      ...(speed === null ? [] : [words.speed(display.speed(speed))]),
      ...(time === null ? [] : [words.pace(display.area(area), clockTime(time))]),
    ],
  };
}
