import { defineConfig } from 'vitest/config';
import { ClosingLine } from './tests/tools/closingLine.ts';

/** Node and browser tests alike; two forks, because the browser ones each hold a Chromium. The waits are for slow machines: no test is timed. */
export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    exclude: ['tests/out/**'],
    testTimeout: 240_000,
    hookTimeout: 240_000,
    pool: 'forks',
    maxWorkers: 2,
    reporters: ['default', new ClosingLine()],
  },
});
