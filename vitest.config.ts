import { defineConfig } from 'vitest/config';
import { ClosingLine } from './tests/tools/closingLine.ts';

/** Node tests and browser tests alike; two forks, because the browser ones each hold a Chromium. */
export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    exclude: ['tests/out/**'],
    testTimeout: 60_000,
    hookTimeout: 60_000,
    pool: 'forks',
    maxWorkers: 2,
    reporters: ['default', new ClosingLine()],
  },
});
