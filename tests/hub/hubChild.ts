import { startHub } from '../../src/hub/index.ts';

/** A hub of its own process, to be killed. */
const [dataDir = ''] = process.argv.slice(2);
const hub = await startHub({ port: 0, dataDir, appDir: dataDir });
process.stdout.write(`${hub.url}\n`);
