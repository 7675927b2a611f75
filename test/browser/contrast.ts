/** Contrast of the texts in drawings against what is really painted behind them, which no reader of styles can know. */
import type { Page } from 'playwright-core';
import { showLetters } from './in-page/letters.ts';
import type { Box, Text } from './in-page/texts.ts';
import { told } from './overlaps.ts';
import { type Pixels, pixelsOf } from './png.ts';

type Rgb = readonly [number, number, number];

/**
 * Contrast of two colours, from 1 to 21.
 *
 * Source: W3C (2018), Web Content Accessibility Guidelines 2.1, definitions of contrast ratio and relative luminance.
 * @example contrastOf([0, 0, 0], [255, 255, 255]) //=> 21
 */
export function contrastOf(one: Rgb, other: Rgb): number {
  const [lighter = 0, darker = 0] = [luminance(one), luminance(other)].sort((a, b) => b - a);
  return (lighter + 0.05) / (darker + 0.05);
}

function luminance(color: Rgb): number {
  const [red = 0, green = 0, blue = 0] = color.map((one) => {
    const part = one / 255;
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

/** W3C (2018), the same, success criterion 1.4.3 at level AA, for text of any size. */
const LEAST = 4.5;
/** A line of one pixel behind a label takes less than this of its box, and the letters stand out from it all the same. */
const THIN = 0.1;

/** Pictures higher than some 16,000 px are cut by the browser; half of that leaves room for one more drawing [CSS px]. */
const HIGHEST = 8000;

/** The texts of the page's drawings that stand out too little from what is painted behind them. */
export async function faintIn(page: Page, texts: readonly Text[]): Promise<string[]> {
  const drawn = texts.filter(({ drawing }) => drawing !== null).toSorted((a, b) => a.y - b.y);
  const faint: string[] = [];
  while (drawn.length > 0) {
    const top = drawn[0]?.y ?? 0;
    const low = drawn.findIndex(({ y }) => y > top + HIGHEST);
    const shown = drawn.splice(0, low < 0 ? drawn.length : low);
    const frame = frameOf(shown);
    const pixels = await withoutLetters(page, frame);
    for (const text of shown) {
      const worst = worstBehind(pixels, text, frame);
      if (worst < LEAST) faint.push(`${worst.toFixed(2)} ${told(text)}`);
    }
  }
  return faint;
}

/** What holds all of these texts. */
function frameOf(texts: readonly Text[]): Box {
  const [x, y] = [
    Math.floor(Math.min(...texts.map((one) => one.x))),
    Math.floor(Math.min(...texts.map((one) => one.y))),
  ];
  const right = Math.ceil(Math.max(...texts.map((one) => one.x + one.width)));
  const bottom = Math.ceil(Math.max(...texts.map((one) => one.y + one.height)));
  return { x, y, width: right - x, height: bottom - y };
}

/** The texts outside of drawings that stand out too little from bare paper: printers leave what lies behind them out. */
export function paleOnPaper(texts: readonly Text[]): string[] {
  const PAPER: Rgb = [255, 255, 255];
  return texts
    .filter(({ drawing }) => drawing === null)
    .map((text) => ({ text, reached: contrastOf(seenOn(PAPER, text), PAPER) }))
    .filter(({ reached }) => reached < LEAST)
    .map(({ text, reached }) => `${reached.toFixed(2)} ${told(text)}`);
}

/** A text's colour where it lets this much of what is behind it through. */
const seenOn = (behind: Rgb, { color: [red, green, blue, opacity] }: Text): Rgb => [
  red * opacity + behind[0] * (1 - opacity),
  green * opacity + behind[1] * (1 - opacity),
  blue * opacity + behind[2] * (1 - opacity),
];

/** A picture of a part of the page with the letters of its drawings left out, their halos kept. */
async function withoutLetters(page: Page, { x, y, width, height }: Box): Promise<Pixels> {
  await page.evaluate(showLetters, false);
  const png = await page.screenshot({ clip: { x, y, width, height }, fullPage: true });
  await page.evaluate(showLetters, true);
  return pixelsOf(png);
}

/** The contrast that all but a thin part of the text's box reaches. */
function worstBehind(pixels: Pixels, text: Text, frame: Box): number {
  const contrasts: number[] = [];
  const [left, top] = [Math.max(0, Math.round(text.x - frame.x)), Math.max(0, Math.round(text.y - frame.y))];
  for (let y = top; y < Math.min(pixels.height, top + Math.floor(text.height)); y++) {
    for (let x = left; x < Math.min(pixels.width, left + Math.floor(text.width)); x++) {
      const behind = pixels.at(x, y);
      contrasts.push(contrastOf(seenOn(behind, text), behind));
    }
  }
  return contrasts.sort((a, b) => a - b)[Math.floor(contrasts.length * THIN)] ?? 0;
}
