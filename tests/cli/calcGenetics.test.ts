import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { ROOT, tubwright } from './tubwright.ts';

interface Example {
  readonly case: Record<string, unknown>;
  readonly answer: Record<string, unknown>;
}

const KINDS = ['cross', 'evidence', 'clutch-test', 'pedigree', 'carriers'] as const;

/** Examples of the contract, made by brute force elsewhere. */
function examplesOf(kind: string): readonly Example[] {
  const file = join(ROOT, 'tests', 'core', 'genetics', 'examples', `${kind}.ndjson`);
  return readFileSync(file, 'utf8')
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line) as Example);
}

async function answers(
  kind: string,
  cases: readonly unknown[],
): Promise<{ lines: Record<string, unknown>[]; code: number | null }> {
  const ran = await tubwright(['calc', kind], { input: `${cases.map((one) => JSON.stringify(one)).join('\n')}\n` });
  return {
    code: ran.code,
    lines: ran.out
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line) as Record<string, unknown>),
  };
}

/** Lists whose order is free, sorted by their text. */
function sorted(answer: Record<string, unknown>): Record<string, unknown> {
  const free = Object.entries(answer).map(([key, value]) =>
    key === 'genotypes' || key === 'phenotypes' ? [key, [...(value as unknown[])].map(canonical).sort()] : [key, value],
  );
  return Object.fromEntries(free);
}

function canonical(value: unknown): string {
  const isMap = (item: unknown): item is Record<string, unknown> =>
    typeof item === 'object' && item !== null && !Array.isArray(item);
  return JSON.stringify(value, (_key, item: unknown) =>
    isMap(item) ? Object.fromEntries(Object.entries(item).sort()) : item,
  );
}

describe.each(KINDS)('calc %s', (kind) => {
  it('gives equal fractions on every line of the contract’s examples', async () => {
    const examples = examplesOf(kind);
    const { lines, code } = await answers(
      kind,
      examples.map((one) => one.case),
    );
    expect(code).toBe(0);
    expect(lines.map(sorted)).toEqual(examples.map((one) => sorted(one.answer)));
  });

  it('answers a bad case on its own line and goes on', async () => {
    const [good] = examplesOf(kind);
    const { lines, code } = await answers(kind, [{}, good?.case, []]);
    expect(code).toBe(1);
    expect(lines.map((line) => 'error' in line)).toEqual([true, false, true]);
  });
});

const WRONG = [
  [
    'pedigree',
    {
      animals: [
        { id: 'a', sire: 'b', dam: null },
        { id: 'b', sire: 'a', dam: null },
      ],
    },
    'pedigree-cycle',
  ],
  ['pedigree', { animals: [{ id: 'a', sire: 'zz', dam: null }] }, 'parent-unknown'],
  [
    'pedigree',
    {
      animals: [
        { id: 'a', sire: null, dam: null },
        { id: 'a', sire: null, dam: null },
      ],
    },
    'pedigree-twice',
  ],
  ['clutch-test', { p: ['1/2', '1/3'], n: [1, 1] }, 'case-malformed'],
  ['clutch-test', { p: ['x', '1/2'], n: [1, 1] }, 'not-a-number'],
  [
    'carriers',
    { alleles: ['+', 'a'], animals: [{ id: 'a', seen: ['q/q'] }], founderFreq: { '+': '1' } },
    'case-malformed',
  ],
] as const;

describe('a case that does not hold together', () => {
  it.each(WRONG)('%s %j: %s', async (kind, given, code) => {
    const { lines } = await answers(kind, [given]);
    expect(lines[0]).toMatchObject({ error: { code } });
  });

  it('names the animal that is its own ancestor', async () => {
    const { lines } = await answers('pedigree', [WRONG[0][1]]);
    expect(JSON.stringify(lines[0])).toMatch(/animal [ab] is its own ancestor/);
  });
});

describe('the fast way of a pedigree', () => {
  it('gives the numbers of the exact one', async () => {
    const cases = examplesOf('pedigree')
      .map((one) => one.case)
      .filter((one) => !('founderKin' in one));
    const exact = await answers('pedigree', cases);
    const fast = await answers(
      'pedigree',
      cases.map((one) => ({ ...one, float: true })),
    );
    const numbers = (line: Record<string, unknown> | undefined) =>
      Object.values((line?.['F'] ?? {}) as Record<string, string | number>).map(fractionValue);
    for (const [at, line] of exact.lines.entries()) {
      for (const [place, value] of numbers(line).entries())
        expect(numbers(fast.lines[at])[place]).toBeCloseTo(value, 12);
    }
  });
});

function fractionValue(value: string | number): number {
  const [top = 0, bottom = 1] = String(value).split('/').map(Number);
  return top / bottom;
}
