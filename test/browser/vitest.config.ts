import { defineConfig } from 'vitest/config';

/** Sheets and sites as a browser shows them, with Debian's Chromium; skipped where it is absent. `npm run test:browser`. */
export default defineConfig({
  root: new URL('../..', import.meta.url).pathname,
  test: {
    setupFiles: ['test/after-each-file.ts'],
    include: ['test/browser/**/*.slow.ts'],
    // A browser is several processes of its own.
    maxWorkers: 2,
    testTimeout: 60_000,
    hookTimeout: 120_000,
    // What is wrong with a page is told in full, also where only the message is kept.
    chaiConfig: { truncateThreshold: 0 },
  },
});
