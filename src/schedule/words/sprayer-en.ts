import type { Fill } from '../../amounts/sprayer/tanks.ts';
import type { Display } from '../../base/display.ts';
import {
  type CubicMetres,
  type CubicMetresPerSquareMetre,
  type Days,
  factorOf,
  type MetresPerSecond,
  type SquareMetres,
} from '../../base/units.ts';

/** A time as it is read off a watch. @example clockTime(51 / 86400) //=> '51 s' */
function clockTime(time: Days): string {
  const seconds = Math.round(time * 86_400);
  const minutes = Math.floor(seconds / 60);
  return minutes === 0 ? `${seconds} s` : `${minutes} min ${seconds % 60} s`;
}

/** What a plan says of spraying. */
export const sprayerWords = {
  sprayer: (
    { tank, output, by }: { tank: CubicMetres; output: CubicMetresPerSquareMetre; by: 'file' | 'catch' | 'nozzle' },
    display: Display,
  ) => {
    const test = { file: '', catch: ' by your catch test', nozzle: ' by your nozzle test' }[by];
    return `The sprayer puts down ${display.sprayRate(output)}${test}: a tank of ${display.volume(tank)} covers ${display.area(tank / output)}.`;
  },
  pace: (area: SquareMetres, time: Days, display: Display) =>
    `Go as fast as in your test: ${display.area(area)} in ${clockTime(time)}.`,
  speed: (speed: MetresPerSecond, display: Display) => `Go as fast as in your test: ${display.speed(speed)}.`,
  tank: (
    { count, area, spray, water }: Fill,
    kind: 'full' | 'last' | 'only',
    amount: string | null,
    display: Display,
  ) => {
    const full = count === 1 ? 'One full tank' : `${count} full tanks, each`;
    const which = { full, last: 'Last tank', only: 'One tank, not full' }[kind];
    const mix = amount === null ? 'of spray' : `with ${amount}`;
    const carrier =
      water === null
        ? 'topped up with water'
        : water === 0
          ? 'and no room for water'
          : `and ${display.volume(water)} of water`;
    return `${which}: ${display.volume(spray)} ${mix}${amount === null ? '' : ` ${carrier}`}, for ${display.area(area)}.`;
  },
  tanksFor: (areas: readonly string[], line: string) => `For ${areas.join(', ')}: ${line}`,
  mixing: 'The label gives the order of mixing and the least amount of water.',
  tooThick:
    'The product alone is as much as the sprayer puts down, which leaves no room for water. Take nozzles or a pace that put down more, and measure again.',
  noSprayer: 'Once the lawn file names your sprayer, the tanks stand here; `soilclock sprayer` tells how to name it.',
} as const;

/** The area that a pace is told for [m²]. */
export const PACE_AREA = { us: 1000 * factorOf('sqft'), metric: 100 } as const;
