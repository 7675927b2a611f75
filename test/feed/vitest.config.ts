import { defineConfig } from 'vitest/config';

/** Other people's readers on every feed that a run of the tests kept in SOILCLOCK_FEEDS. `npm run test:feeds`. */
export default defineConfig({
  root: new URL('../..', import.meta.url).pathname,
  test: {
    setupFiles: ['test/after-each-file.ts'],
    include: ['test/feed/**/*.slow.ts'],
    testTimeout: 600_000,
    hookTimeout: 60_000,
  },
});
