import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The folder of the package, seen from the built program as well as from its sources. */
export function packageRoot(): string {
  const here = dirname(fileURLToPath(import.meta.url));
  return here.endsWith(join('dist', 'src', 'cli')) ? join(here, '..', '..', '..') : join(here, '..', '..');
}
