import { defineConfig } from 'vitest/config';

/** Tests that pack, install and run the package: they need the registry and take half a minute. `npm run test:package`. */
export default defineConfig({
  root: new URL('../..', import.meta.url).pathname,
  test: {
    include: ['test/package/**/*.slow.ts'],
    testTimeout: 120_000,
    hookTimeout: 300_000,
    fileParallelism: false,
  },
});
