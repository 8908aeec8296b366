import { spawnSync } from 'node:child_process';
import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { ROOT, readText } from './sources.ts';

const FOLDER = 'tests/out/brands';
const EXPECTED = '// @ts-expect-error';

/** The errors that the compiler has to say of a text, put where the brands are. */
function errorsIn(text: string): readonly string[] {
  mkdirSync(join(ROOT, FOLDER), { recursive: true });
  const file = join(ROOT, FOLDER, 'brands.ts');
  writeFileSync(file, text.replaceAll('../../src/', '../../../src/'));
  const options = ['--noEmit', '--strict', '--module', 'nodenext', '--target', 'es2023', '--skipLibCheck'];
  const said = spawnSync(
    process.execPath,
    [join(ROOT, 'node_modules/typescript/bin/tsc'), ...options, '--allowImportingTsExtensions', '--ignoreConfig', file],
    { encoding: 'utf8', cwd: ROOT },
  );
  return said.stdout.split('\n').filter((line) => line.includes('error TS'));
}

afterAll(() => rmSync(join(ROOT, FOLDER), { recursive: true, force: true }));

describe('brands', () => {
  const text = readText('tests/house/brands.ts');
  const lines = text.split(EXPECTED).length - 1;
  it('make the compiler refuse plain numbers and plain text', () => {
    expect(lines).toBeGreaterThanOrEqual(8);
    expect(errorsIn(text)).toEqual([]);
  });
  it('give an error for each of these lines when nobody expects it', () => {
    expect(errorsIn(text.replaceAll(EXPECTED, '// expects'))).toHaveLength(lines);
  });
});
