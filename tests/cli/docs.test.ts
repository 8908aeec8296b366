import { describe, expect, it } from 'vitest';
import { KINDS } from '../../src/cli/calc/kinds.ts';
import { examplesOf, runPage } from './docExamples.ts';

runPage('calc.md');

describe('the examples', () => {
  it('cover every command', () => {
    const commands = examplesOf('command-line.md').flatMap(
      ({ command }) => /npx tubwright (\w[\w-]*)/.exec(command)?.[1] ?? [],
    );
    expect([...new Set(commands)].sort()).toEqual([
      'calc',
      'calibrate',
      'cards',
      'check',
      'due',
      'export',
      'hand-over',
      'import',
      'labels',
      'lists',
      'order',
      'pack',
      'start',
      'tags',
      'thaw',
    ]);
  });

  it('cover every kind of calculation', () => {
    const kinds = examplesOf('calc.md').map(({ command }) => /calc ([\w-]+)/.exec(command)?.[1]);
    expect(kinds).toEqual(KINDS.map(({ name }) => name));
  });
});
