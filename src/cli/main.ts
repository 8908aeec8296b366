#!/usr/bin/env node
import { processIo } from './io.ts';
import { run } from './run.ts';

// Whoever reads the output may stop early, as `head` does; that is not a failure to report.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') process.exit(0);
  throw error;
});
process.exitCode = await run(process.argv.slice(2), processIo());
