import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: new URL('..', import.meta.url).pathname,
  test: {
    // One a processor: the default leaves one idle, which on two is half of the machine.
    maxWorkers: '100%',
    // Nothing in the house keeps state between two calls, and loading it anew for each file costs a third of the time.
    isolate: false,
    setupFiles: ['test/after-each-file.ts'],
    include: ['test/**/*.test.ts'],
    testTimeout: 20_000,
    // Hooks plan whole seasons and start other people's programs, as tests do; the default is half of their time.
    hookTimeout: 60_000,
    coverage: {
      provider: 'v8',
      include: ['src/**/*.ts'],
      reportsDirectory: 'out/coverage',
      reporter: ['text-summary', 'json-summary'],
      thresholds: { statements: 90, lines: 90 },
    },
  },
});
