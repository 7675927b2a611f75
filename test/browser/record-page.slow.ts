/** The page of the applicator's record, as `did --export` makes it. */
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { beforeAll } from 'vitest';
import { demoCopy, soilclock } from '../kit.ts';
import { inBrowser } from './chromium.ts';
import { DESKTOP, NARROW } from './open.ts';
import { soundInEachView } from './sound.ts';

inBrowser('the record', (browser) => {
  let address = '';
  beforeAll(async () => {
    const { cwd, lawn } = demoCopy();
    await soilclock(cwd, ['did', lawn, '--export']);
    address = pathToFileURL(path.join(cwd, 'out/record/saltwether-lawn-2027.html')).href;
  });
  soundInEachView(browser, {
    name: 'record',
    address: () => address,
    views: [
      { ...NARROW, colorScheme: 'dark', scripts: true },
      { ...DESKTOP, colorScheme: 'light', scripts: true },
    ],
  });
});
