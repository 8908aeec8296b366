import { defineConfig } from 'vitest/config';
import { ClosingLine } from './tests/tools/closingLine.ts';

/**
 * Node and browser tests alike; two forks, because the browser ones each hold a Chromium. Files share their fork: no module of
 * ours keeps anything between calls, and reading all modules anew for each of 200 files took half of the time (131 s against 14 s
 * for those without a browser). The waits are for slow machines: no test is timed.
 */
export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    exclude: ['tests/out/**'],
    testTimeout: 240_000,
    hookTimeout: 240_000,
    pool: 'forks',
    isolate: false,
    maxWorkers: 2,
    reporters: ['default', new ClosingLine()],
  },
});
