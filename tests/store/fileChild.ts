import { LogFailure } from '../../src/store/eventLog.ts';
import { fileLog } from '../../src/store/file/index.ts';
import { events } from './sample.ts';

/** Appends batches of three for ever and says each number once it is confirmed; ends when the disk is full. */
const [path = '', begin = '0'] = process.argv.slice(2);
const log = await fileLog(path);
try {
  for (let n = Number(begin); n < 100_000; n += 3) {
    await log.append(events(n, n + 3));
    process.stdout.write(`${n + 3}\n`);
  }
} catch (error) {
  if (!(error instanceof LogFailure)) throw error;
  process.stdout.write(`${error.problem.code} ${await log.head()}\n`);
  await log.close();
}
