import type { Fill } from '../../amounts/sprayer/tanks.ts';
import type { Display } from '../../base/display.ts';
import type { Days } from '../../base/units.ts';
import { wordsOf } from '../../words/words.ts';

/** A time as it is read off a watch. @example clockTime(51 / 86400) //=> '51 s' */
export function clockTime(time: Days): string {
  const seconds = Math.round(time * 86_400);
  const minutes = Math.floor(seconds / 60);
  return minutes === 0 ? `${seconds} s` : `${minutes} min ${seconds % 60} s`;
}

/** How a tank is filled. @param amount The product in words; null where it is not known. */
export function fillInWords(
  { count, area, spray, water }: Fill,
  kind: 'full' | 'last' | 'only',
  amount: string | null,
  display: Display,
): string {
  const words = wordsOf(display.language).sprayer;
  const mix =
    amount === null
      ? words.ofSpray
      : water === null
        ? words.toppedUp(amount)
        : water === 0
          ? words.noRoom(amount)
          : words.withWater(amount, display.volume(water));
  return words.tank(kind, count, display.volume(spray), mix, display.area(area));
}
