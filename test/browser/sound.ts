/** What has to hold of every page that the house makes, whoever looks at it. */
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { axeOn } from './axe.ts';
import { faintIn } from './contrast.ts';
import { sticksOut } from './in-page/layout.ts';
import { type Text, textsIn } from './in-page/texts.ts';
import { keyboardFaults } from './keyboard.ts';
import { keepPicture, nameOf, type Opened, open, type Stand, type View } from './open.ts';
import { overlapsIn } from './overlaps.ts';

interface Looked {
  readonly name: string;
  readonly address: () => string;
  readonly views: readonly View[];
  readonly stand?: Stand | null;
  /** How many texts its drawings have at least. */
  readonly drawn?: number;
}

/** Tests of a page in each of these views; its pictures are kept under `out/browser`. */
export function soundInEachView(
  browser: () => Browser,
  { name, address, views, stand = null, drawn = 0 }: Looked,
): void {
  describe.each(views.map((view) => [nameOf(view), view] as const))(`${name}, %s`, (viewed, view) => {
    let opened: Opened;
    let texts: readonly Text[];
    beforeAll(async () => {
      opened = await open(browser(), address(), view, stand);
      await keepPicture(opened.page, `${name}-${viewed}-first`, false);
      if (view.scripts) await keepPicture(opened.page, `${name}-${viewed}`);
      texts = await opened.page.evaluate(textsIn);
    });
    afterAll(() => opened?.context.close());

    test('has words on it, and in its drawings', () => {
      expect(texts.length).toBeGreaterThan(5);
      expect(texts.filter(({ drawing }) => drawing !== null).length).toBeGreaterThanOrEqual(drawn);
    });
    test('sticks out nowhere', async () => expect(await opened.page.evaluate(sticksOut)).toEqual([]));
    test('no text lies over another', () => expect(overlapsIn(texts)).toEqual([]));
    test('the texts of its drawings stand out', async () => expect(await faintIn(opened.page, texts)).toEqual([]));
    if (view.scripts) {
      test('axe finds nothing serious', async () => {
        const { grave, lesser } = await axeOn(opened.page);
        if (lesser.length > 0) console.info(`${name}, ${viewed}: ${lesser.join('\n')}`);
        expect(grave).toEqual([]);
      });
    }
    test('the tab key reaches everything, in order and seen', async () =>
      expect(await keyboardFaults(opened.page)).toEqual([]));
    // Last, so that it holds for all that was done with the page.
    test('no complaint, and nobody else asked', () => expect([opened.complaints, opened.strangers]).toEqual([[], []]));
  });
}
