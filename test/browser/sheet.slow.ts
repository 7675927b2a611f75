/** Sheets as they are looked at: on a phone, on a desk, by lamplight, without scripts, and on the garage wall. */
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { beforeAll, describe, expect, test } from 'vitest';
import { inBrowser } from './chromium.ts';
import { faintIn, paleOnPaper } from './contrast.ts';
import { textsIn } from './in-page/texts.ts';
import { DESKTOP, NARROW, open, PHONE, SIZES, serve, VIEWS, type View } from './open.ts';
import { overlapsIn } from './overlaps.ts';
import { pagesOf, smallerThan } from './pdf.ts';
import { DEMO, STEPS, sheetsOf } from './sheets.ts';
import { soundInEachView } from './sound.ts';

const LIGHT = { colorScheme: 'light', scripts: true } as const;
const ON_DESK: View = { ...DESKTOP, ...LIGHT };
const VARIANTS = {
  demo: DEMO,
  'demo-in-autumn': { ...DEMO, asOf: '2027-10-02' },
  ...Object.fromEntries(STEPS.map((steps) => [`steps-${steps}`, { ...DEMO, steps }])),
  'spanish-25': { ...DEMO, steps: 25, language: 'es-US', units: 'metric' },
} as const;

inBrowser('sheets', (browser) => {
  let [folder, origin] = ['', ''];
  beforeAll(async () => {
    folder = await sheetsOf(VARIANTS);
    const served = await serve(folder);
    origin = served.origin;
    return served.close;
  });
  const addressOf = (name: string) => `${origin}/${name}.html`;

  soundInEachView(browser, { name: 'demo', address: () => addressOf('demo'), views: VIEWS, drawn: 30 });
  for (const steps of STEPS) {
    soundInEachView(browser, {
      name: `steps-${steps}`,
      address: () => addressOf(`steps-${steps}`),
      // Where labels lie is the same in every light; scripts are for the checks alone, of which one size is enough.
      views: SIZES.map((size) => ({ ...size, colorScheme: 'light', scripts: size === DESKTOP })),
      drawn: steps,
    });
  }
  for (const name of ['demo-in-autumn', 'spanish-25']) {
    const views = [NARROW, DESKTOP].map((size) => ({ ...size, colorScheme: 'dark', scripts: false }) as const);
    soundInEachView(browser, { name, address: () => addressOf(name), views, drawn: 30 });
  }
  soundInEachView(browser, {
    name: 'demo-as-file',
    address: () => pathToFileURL(path.join(folder, 'demo.html')).href,
    views: [{ ...PHONE, ...LIGHT, scripts: false }],
  });

  describe.each(['Letter', 'A4'] as const)('printed on %s', (format) => {
    test.each([
      ['demo', 2],
      ['demo-in-autumn', 2],
      ['steps-25', 4],
      ['spanish-25', 4],
    ] as const)('%s takes at most %i sheets, with nothing under 9 pt', async (name, most) => {
      const { page, context } = await open(browser(), addressOf(name), { ...ON_DESK, colorScheme: 'dark' });
      const path = `out/browser/${name}-${format}.pdf`;
      const pages = pagesOf(await page.pdf({ format, preferCSSPageSize: true, printBackground: true, path }));
      await context.close();
      expect(pages.flatMap(({ texts }) => texts).length).toBeGreaterThan(50);
      expect([pages.length > most ? `${pages.length} sheets` : 'fits', smallerThan(9, pages)]).toEqual(['fits', []]);
    });
  });

  // Between margins of half an inch, Letter is 720 px wide and A4 about 698; laid crosswise both are wider.
  describe.each([698, 720])('as a printer lays it out on %i px', (width) => {
    test.each(['demo', 'steps-25', 'spanish-25'])('%s is read in ink on bare paper, text beside text', async (name) => {
      const { page, context } = await open(browser(), addressOf(name), { ...ON_DESK, width, colorScheme: 'dark' });
      await page.emulateMedia({ media: 'print' });
      const texts = await page.evaluate(textsIn);
      const faults = [...overlapsIn(texts), ...paleOnPaper(texts), ...(await faintIn(page, texts))];
      await context.close();
      expect(texts.length).toBeGreaterThan(50);
      expect(faults).toEqual([]);
    });
  });

  test('says the same without scripts', async () => {
    const said = await Promise.all(
      [true, false].map(async (scripts) => {
        const { page, context } = await open(browser(), addressOf('demo'), { ...ON_DESK, scripts });
        const texts = await page.evaluate(textsIn);
        await context.close();
        return texts;
      }),
    );
    expect(said[1]).toEqual(said[0]);
  });
});
