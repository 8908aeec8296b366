import { describe, expect, it } from 'vitest';
import { PROBLEMS } from '../../src/core/index.ts';
import { filesIn, readText, tableRows } from './sources.ts';

describe('docs/problems.md', () => {
  it('lists exactly the problems of the code, word for word, in the same order', () => {
    const rows = tableRows(readText('docs/problems.md'));
    expect(rows).toEqual(Object.entries(PROBLEMS).map(([code, { says, remedy }]) => [code, says, remedy]));
  });
});

describe('every problem', () => {
  const sources = ['src', 'print', 'scanner', 'demo-data'].flatMap((folder) => [...filesIn(folder, '.ts', '.tsx')]);
  const code = sources
    .filter(([path]) => path !== 'src/core/problems.ts')
    .map(([, text]) => text)
    .join('\n');
  it.each(Object.keys(PROBLEMS))('%s can come up: some source names it', (name) => {
    expect(code.includes(`'${name}'`)).toBe(true);
  });
});
