/** Debian's Chromium, without a window and without a network; tests that need it are skipped by name where it is absent. */
import { existsSync } from 'node:fs';
import { type Browser, chromium } from 'playwright-core';
import { afterAll, beforeAll, describe } from 'vitest';

const EXECUTABLE = '/usr/bin/chromium';
const isInstalled = existsSync(EXECUTABLE);
if (!isInstalled) console.warn(`skipped: ${EXECUTABLE} is not there; install Debian's package chromium`);

const FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  // No name but this machine's leads anywhere, also for what no page asks through a request that can be watched.
  '--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE localhost',
];

/** Tests in one browser, which is started before them and ended after them. */
export function inBrowser(name: string, tests: (browser: () => Browser) => void): void {
  describe.skipIf(!isInstalled)(isInstalled ? name : `skipped: chromium is not installed: ${name}`, () => {
    let started: Browser | null = null;
    beforeAll(async () => {
      started = await chromium.launch({ executablePath: EXECUTABLE, headless: true, args: FLAGS });
    });
    afterAll(() => started?.close());
    tests(() => {
      if (!started) throw new Error('the browser has not started');
      return started;
    });
  });
}
