/** Every check sees the fault that it is for, planted here into a small page, and nothing where there is none. */
import { writeFileSync } from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser } from 'playwright-core';
import { expect, test } from 'vitest';
import { folderWith } from '../kit.ts';
import { serving } from '../serve/server.ts';
import { axeOn } from './axe.ts';
import { inBrowser } from './chromium.ts';
import { contrastOf, faintIn, paleOnPaper } from './contrast.ts';
import { sticksOut } from './in-page/layout.ts';
import { textsIn } from './in-page/texts.ts';
import { keyboardFaults } from './keyboard.ts';
import { NARROW, open, type View } from './open.ts';
import { overlapsIn } from './overlaps.ts';
import { pagesOf, smallerThan } from './pdf.ts';

const VIEW: View = { ...NARROW, colorScheme: 'light', scripts: true };
const page = (body: string, head = '') => `<!doctype html><html lang="en"><head><meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1"><title>Planted</title><link rel="icon" href="data:,">
<style>body{background:#fff;color:#000;font:16px/1.4 sans-serif}</style>${head}</head><body><main><h1>Planted</h1>${body}</main></body></html>`;
const drawing = (inner: string) => `<svg width="300" height="100" viewBox="0 0 600 200" role="img">${inner}</svg>`;
const SOUND = page(`<p>Some <b>prose</b> that goes over more than one line of a narrow page.</p><a href="#x">A link</a>
${drawing('<rect width="600" height="200" fill="#fff"/><text x="10" y="40" font-size="28">one</text><text x="10" y="80" font-size="28">two</text>')}
<details><summary>More</summary><a href="#y">Folded</a></details>`);

async function opened(browser: Browser, html: string, view = VIEW) {
  const file = path.join(folderWith(), 'page.html');
  writeFileSync(file, html);
  return open(browser, pathToFileURL(file).href, view);
}

inBrowser('labels', (browser) => {
  const overlaps = async (html: string) => overlapsIn(await (await opened(browser(), html)).page.evaluate(textsIn));
  test('a sound page has none that overlap', async () => expect(await overlaps(SOUND)).toEqual([]));
  test.each([
    [
      'two in a drawing',
      drawing('<text x="10" y="40" font-size="28">first</text><text x="40" y="50" font-size="28">second</text>'),
    ],
    [
      'one of a drawing and prose',
      `<p style="margin:0;height:0">${'words '.repeat(5)}</p>${drawing('<text x="0" y="30" font-size="28">first</text>')}`,
    ],
    ['two paragraphs', '<p style="margin:0;height:5px">upper</p><p style="margin:0">lower</p>'],
  ])('%s that overlap are found', async (_, body) => expect(await overlaps(page(body))).toHaveLength(1));
  test.each([
    ['folded away', '<details><summary>More</summary><p>upper</p></details>'],
    [
      'cut to nothing for those who hear the page',
      '<p style="position:absolute;clip-path:inset(50%);overflow:hidden;width:1px;height:1px">upper</p><p style="margin:0">lower</p>',
    ],
    [
      'a line further down',
      '<svg width="90" height="60" style="display:block"><text y="20">a<tspan x="0" dy="1em">b</tspan></text></svg>',
    ],
  ])('what is %s overlaps nothing', async (_, body) => expect(await overlaps(page(body))).toEqual([]));
  test('sizes are as drawn, where the drawing is scaled by half', async () => {
    const texts = await (await opened(browser(), SOUND)).page.evaluate(textsIn);
    expect(texts.filter(({ drawing: one }) => one !== null).map(({ text, sizePx }) => [text, sizePx])).toEqual([
      ['one', 14],
      ['two', 14],
    ]);
  });
});

inBrowser('contrast in drawings', (browser) => {
  const faint = async (inner: string) => {
    const { page: shown } = await opened(browser(), page(drawing(inner)));
    return (await faintIn(shown, await shown.evaluate(textsIn))).length;
  };
  const text = (attributes: string) => `<text x="10" y="60" font-size="28" ${attributes}>words</text>`;
  test.each([
    ['ink on paper', text(''), 0],
    ['grey on paper at 4.5', text('fill="#767676"'), 0],
    ['grey on paper just below', text('fill="#787878"'), 1],
    ['ink half seen through', text('opacity="0.45"'), 1],
    ['ink on a band of the same', `<rect width="600" height="200" fill="#26345c"/>${text('')}`, 1],
    ['paper on that band', `<rect width="600" height="200" fill="#26345c"/>${text('fill="#fff"')}`, 0],
    [
      'ink on a band that fades into itself',
      `<linearGradient id="g"><stop stop-color="#000"/><stop offset="1" stop-color="#fff"/></linearGradient><rect width="200" height="200" fill="url(#g)"/>${text('')}`,
      1,
    ],
    ['ink across a line of one pixel', `<path d="M0 50h600" stroke="#000" stroke-width="2"/>${text('')}`, 0],
  ])('%s', async (_, inner, expected) => expect(await faint(inner)).toBe(expected));
  // W3C, Understanding success criterion 1.4.3 (G18): black on white is 21:1; #767676 is the lightest grey to reach 4.5:1.
  test('as the guidelines reckon it', () => {
    expect(contrastOf([0, 0, 0], [255, 255, 255])).toBeCloseTo(21, 6);
    expect(contrastOf([0x76, 0x76, 0x76], [255, 255, 255])).toBeCloseTo(4.54, 2);
  });
});

inBrowser('the page', (browser) => {
  test('a sound one sticks out nowhere', async () =>
    expect(await (await opened(browser(), SOUND)).page.evaluate(sticksOut)).toEqual([]));
  test('what is wider than 320 px is named', async () => {
    const { page: shown } = await opened(browser(), page('<p class="wide" style="width:330px">words</p>'));
    expect((await shown.evaluate(sticksOut)).join()).toContain('p.wide');
  });
  test('what scrolls within itself does not count', async () => {
    const html = page('<div style="overflow-x:auto"><p style="width:900px">words</p></div>');
    expect(await (await opened(browser(), html)).page.evaluate(sticksOut)).toEqual([]);
  });
  test.each([
    [
      'an image of another host',
      '<img alt="" src="https://elsewhere.example/a.png">',
      'https://elsewhere.example/a.png',
    ],
    [
      'a style of another host',
      '<link rel="stylesheet" href="http://elsewhere.example/a.css">',
      'http://elsewhere.example/a.css',
    ],
  ])('%s is told', async (_, body, asked) => expect((await opened(browser(), page(body))).strangers).toEqual([asked]));
  test('a sound one asks nobody and complains of nothing', async () => {
    const { strangers, complaints } = await opened(browser(), SOUND);
    expect([strangers, complaints]).toEqual([[], []]);
  });
  test.each([
    ['an error of a script', '<script>missing()</script>'],
    ['an error of the console', '<script>console.error("no")</script>'],
    ['what its policy refuses', '<img alt="" src="data:image/gif;base64,R0lGODlhAQABAAAAACwAAAAAAQABAAA=">'],
  ])('%s is told', async (_, body) => {
    const policy = `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; script-src 'unsafe-inline'">`;
    expect((await opened(browser(), page(body, policy))).complaints.length).toBeGreaterThan(0);
  });
  test('a file that the site has not is told', async () => {
    const port = await serving(folderWith({ 'index.html': page('<img alt="" src="gone.png">') }));
    const { complaints } = await open(browser(), `http://localhost:${port}/`, VIEW);
    expect(complaints.join()).toContain('404');
  });
});

inBrowser('the keyboard', (browser) => {
  const faults = async (body: string) => keyboardFaults((await opened(browser(), page(body))).page);
  test('a sound page is reached in order', async () =>
    expect(await keyboardFaults((await opened(browser(), SOUND)).page)).toEqual([]));
  test.each([
    ['a link taken out of the order', '<a href="#a">one</a> <a href="#b" tabindex="-1">two</a>', 'never reached'],
    ['an order of its own', '<a href="#a">one</a> <a href="#b" tabindex="1">two</a>', 'out of order'],
    ['no ring', '<a href="#a" style="outline:none">one</a>', 'no ring'],
    ['a ring that is off the page', '<a href="#a" style="position:fixed;left:-999px">one</a>', 'no ring'],
  ])('%s is found', async (_, body, fault) => expect((await faults(body)).join()).toContain(fault));
});

inBrowser('axe', (browser) => {
  test('finds nothing grave in a sound page', async () =>
    expect(
      (await axeOn((await opened(browser(), SOUND)).page)).grave.filter((one) => !one.includes('svg-img-alt')),
    ).toEqual([]));
  test.each([
    ['pale prose', '<p style="color:#bbb">pale</p>'],
    ['prose on a ground that it cannot tell', '<p style="background:linear-gradient(#fff,#888)">pale</p>'],
  ])('finds %s', async (_, body) =>
    expect((await axeOn((await opened(browser(), page(body))).page)).grave.join()).toContain('color-contrast'),
  );
});

inBrowser('paper', (browser) => {
  const print = async (body: string) => {
    const { page: shown } = await opened(browser(), page(body));
    return pagesOf(await shown.pdf({ format: 'Letter', preferCSSPageSize: true }));
  };
  test('its sheets are counted', async () =>
    expect(
      await print('<p style="break-after:page">one</p><p style="break-after:page">two</p><p>three</p>'),
    ).toHaveLength(3));
  test('words and sizes are those of the page', async () => {
    const [sheet] = await print('<p style="font-size:9pt">nine</p>');
    expect(sheet?.texts.filter(({ text }) => text === 'nine')).toEqual([{ text: 'nine', sizePt: 9 }]);
  });
  test.each([
    ['small prose', '<p style="font-size:8.9pt">words</p>', 1],
    ['prose at the limit', '<p style="font-size:9pt">words</p>', 0],
    // 22 px in a drawing of half size is 11 px, 8.25 pt.
    ['small words in a drawing', drawing('<text y="50" font-size="22">words</text>'), 1],
    ['small words half seen through', `<p style="opacity:.5;font-size:8pt">words</p>`, 1],
    ['a page that had to be made smaller to fit', '<p style="width:1200px;font-size:9pt">words</p>', 1],
  ])('%s', async (_, body, expected) =>
    expect(smallerThan(9, await print(body)).filter((one) => one.includes('words'))).toHaveLength(expected),
  );
  test.each([
    ['ink', '#000', 0],
    ['pale ink', '#999', 1],
    ['paper on a dark ground that no printer prints', '#fff;background:#000', 1],
  ])('prose in %s', async (_, color, expected) => {
    const { page: shown } = await opened(browser(), page(`<p style="color:${color}">words</p>`));
    expect(paleOnPaper(await shown.evaluate(textsIn))).toHaveLength(expected);
  });
});
