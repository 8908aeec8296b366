import { createHash } from 'node:crypto';
import { writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { writeLog } from '../src/store/index.ts';
import { demoEvents } from './index.ts';

/** Writes demo-data/site.ndjson, whether run from the sources or from dist. */
const here = dirname(fileURLToPath(import.meta.url));
const root = here.endsWith(join('dist', 'demo-data')) ? join(here, '..', '..') : join(here, '..');
const events = demoEvents();
const text = writeLog(events);
writeFileSync(join(root, 'demo-data', 'site.ndjson'), text);
const animals = events.filter((event) => event.kind === 'animal-added').length;
const sha256 = createHash('sha256').update(text).digest('hex');
const size = `${(Buffer.byteLength(text) / 1e6).toFixed(1)} MB`;
process.stdout.write(`demo-data/site.ndjson: ${events.length} events, ${animals} animals, ${size}, sha256 ${sha256}\n`);
