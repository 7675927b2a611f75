/** A published site: its list and finder, the page of a place, an owner's page, what others embed, and the feed behind a link. */
import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import ICAL from 'ical.js';
import { beforeAll, describe, expect, test } from 'vitest';
import { demoCopy, folderWith, soilclock } from '../kit.ts';
import { inBrowser } from './chromium.ts';
import { DESKTOP, NARROW, open, PHONE, type Stand, serve, VIEWS, type View } from './open.ts';
import { soundInEachView } from './sound.ts';

/** Where the site says that it stands; on this machine its own `serve` answers for it. */
const BASE = 'https://lawns.example';
const PUBLICATION = `kind: publication
version: 1
id: island-lawns
name: Lawns of Saltwether Island
about: One program for all of the island.
base-url: ${BASE}/
display: { units: us, language: en-US }
programs: [tall-fescue-transition.yaml, kentucky-bluegrass-cool-humid.yaml]
places:
  - { id: north-shore, name: North shore, latitude: 39.4, longitude: -72.5, grass: tall-fescue }
  - { id: mill, name: The mill, latitude: 38.4, longitude: -72.9, grass: kentucky-bluegrass }
  - { id: long, name: Behind the Netmakersandsailmakersguildhallgarden on the Quay, latitude: 37.9, longitude: -73.1, grass: tall-fescue }
lawns: [demo/lawn.yaml]
embed: true
changelog: ["2027-03-01: the second spring feed goes at half rate"]
`;
const LIGHT = { colorScheme: 'light', scripts: true } as const;
const ON_PHONE: View = { ...PHONE, ...LIGHT };

inBrowser('a published site', (browser) => {
  let stand: Stand = { origin: BASE, answers: '' };
  let owner = '';
  beforeAll(async () => {
    const { cwd } = demoCopy();
    writeFileSync(path.join(cwd, 'programs/publish.yaml'), PUBLICATION);
    const argv = ['publish', 'programs/publish.yaml', '--as-of', '2027-04-02', '--out', 'site', '--json'];
    const { stdout } = await soilclock(cwd, argv);
    const { lawns } = JSON.parse(stdout) as { lawns: readonly { readonly owner: string }[] };
    owner = lawns[0]?.owner ?? '';
    const served = await serve(path.join(cwd, 'site'));
    stand = { origin: BASE, answers: served.origin };
    return served.close;
  });
  const at = (address: string) => `${stand.answers}/${address}`;
  const visit = (address: string, view = ON_PHONE) => open(browser(), at(address), view, stand);

  const few: readonly View[] = [
    { ...NARROW, colorScheme: 'dark', scripts: true },
    { ...DESKTOP, ...LIGHT },
  ];
  soundInEachView(browser, { name: 'index', address: () => at('index.html'), views: VIEWS });
  soundInEachView(browser, { name: 'place', address: () => at('north-shore/index.html'), views: VIEWS });
  soundInEachView(browser, { name: 'place-of-a-long-name', address: () => at('long/index.html'), views: few });
  soundInEachView(browser, { name: 'owner', address: () => at(owner), views: few });
  soundInEachView(browser, { name: 'embedded', address: () => at('mill/embed.html'), views: few });

  describe('the finder', () => {
    const finding = async (typed: string) => {
      const { page, context } = await visit('index.html');
      await page.getByRole('searchbox').fill(typed);
      const found = await page.locator('#finder-found a').allTextContents();
      return { page, context, found };
    };
    test.each([
      ['mill', 'The mill'],
      ['NORTH', 'North shore'],
      // Cape May, New Jersey: 38.9 N, 74.9 W; the mill is nearest.
      ['08204', 'The mill'],
      // Montauk, New York: 41.0 N, 71.9 W.
      ['11954', 'North shore'],
    ])('%s leads to %s', async (typed, name) => {
      const { page, context, found } = await finding(typed);
      expect(found[0]).toBe(name);
      await page.locator('#finder-found a').first().click();
      expect(await page.locator('h1').textContent()).toBe(name);
      await context.close();
    });
    test('says so where nothing is found', async () => {
      const { page, context, found } = await finding('zzz');
      expect([found, await page.locator('#finder-none').isVisible()]).toEqual([[], true]);
      await context.close();
    });
    test('is not there without scripts, and the list is whole', async () => {
      const { page, context } = await visit('index.html', { ...ON_PHONE, scripts: false });
      expect(await page.getByRole('searchbox').isVisible()).toBe(false);
      expect(await page.locator('main li a').allTextContents()).toEqual([
        'Behind the Netmakersandsailmakersguildhallgarden on the Quay',
        'North shore',
        'The mill',
      ]);
      await context.close();
    });
  });

  describe('subscribing', () => {
    test.each([true, false])('by the https address, scripts %s: a feed with work to come', async (scripts) => {
      const { page, context } = await visit('north-shore/index.html', { ...ON_PHONE, scripts });
      const link = page.locator(`a[href^="${BASE}/"][href$=".ics"]`);
      const [loaded] = await Promise.all([page.waitForEvent('download'), link.click()]);
      const feed = readFileSync(await loaded.path(), 'utf8');
      expect(loaded.url()).toBe(`${BASE}/north-shore/north-shore.ics`);
      const calendar = new ICAL.Component(ICAL.parse(feed) as string | unknown[]);
      const starts = calendar
        .getAllSubcomponents('vevent')
        .map((one) => new ICAL.Event(one).startDate.toJSDate().getTime());
      expect(starts.filter((start) => start > Date.UTC(2027, 3, 2)).length).toBeGreaterThan(5);
      await context.close();
    });
    test('by webcal: the same address but for its scheme, also where another calendar is asked to add it', async () => {
      const { page, context } = await visit('north-shore/index.html');
      const hrefs = await page
        .locator('a[href*="webcal"]')
        .evaluateAll((all) => all.map((one) => one.getAttribute('href')));
      const wanted = `webcal${BASE.slice('https'.length)}/north-shore/north-shore.ics`;
      expect(hrefs).toHaveLength(2);
      expect(hrefs.map((href) => decodeURIComponent(href?.replace(/^.*cid=/, '') ?? ''))).toEqual([wanted, wanted]);
      await context.close();
    });
  });

  test('what stands to be copied shows the place inside of another page', async () => {
    const { page, context } = await visit('mill/index.html');
    const snippet = (await page.locator('pre code').first().textContent()) ?? '';
    await context.close();
    const html = `<!doctype html><title>Mine</title><link rel="icon" href="data:,">${snippet}`;
    const other = pathToFileURL(path.join(folderWith({ 'index.html': html }), 'index.html')).href;
    const shown = await open(browser(), other, ON_PHONE, stand);
    expect(await shown.page.frameLocator('iframe').locator('h1').textContent()).toBe('The mill');
    expect([shown.complaints, shown.strangers]).toEqual([[], []]);
    await shown.context.close();
  });
});
