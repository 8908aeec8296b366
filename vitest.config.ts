import { defineConfig } from 'vitest/config';
import { ClosingLine } from './tests/tools/closingLine.ts';

/** What takes long: crash runs, thousands of cards in the browser, the examples on the whole demo, comparisons with slower solvers. */
const LONG = [
  'tests/browser/hardTimes.test.ts',
  'tests/browser/longRun.test.ts',
  'tests/cli/demoDocs.test.ts',
  'tests/solver/plain.test.ts',
];
/** `npm run test:long` runs those, `npm test` all others. */
const isLong = process.env['npm_lifecycle_event'] === 'test:long';

/**
 * Node and browser tests alike; two forks, because the browser ones each hold a Chromium. Files share their fork: no module of
 * ours keeps anything between calls, and reading all modules anew for each of 200 files took half of the time (131 s against 14 s
 * for those without a browser). The programs that tests start read large logs, and are a seventh faster with more room for what is
 * young. The waits are for slow machines: no test is timed.
 */
export default defineConfig({
  test: {
    include: isLong ? LONG : ['tests/**/*.test.ts'],
    exclude: isLong ? [] : ['tests/out/**', ...LONG],
    env: { NODE_OPTIONS: '--max-semi-space-size=64' },
    testTimeout: 240_000,
    hookTimeout: 240_000,
    pool: 'forks',
    isolate: false,
    maxWorkers: 2,
    reporters: ['default', new ClosingLine()],
  },
});
