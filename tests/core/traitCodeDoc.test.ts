import { describe, expect, it } from 'vitest';
import { emptyFacility, lociFor, parseTraits, printTraits, readTraits, type Sex } from '../../src/core/index.ts';
import { readText, tableRows } from '../house/sources.ts';
import { value } from './log.ts';

const SEXES: Readonly<Record<string, Sex | null>> = { '1.0': 'M', '0.1': 'F', '0.0.1': null };
const rows = tableRows(readText('docs/trait-code.md')).filter(([, sex = '']) => Object.hasOwn(SEXES, sex));

describe('docs/trait-code.md', () => {
  it('shows ten animals', () => {
    expect(rows).toHaveLength(10);
  });
  it.each(rows)('%s %s typed as %s', (species, sex, typed, code, long, short) => {
    const { loci } = lociFor(emptyFacility(), species ?? '');
    const known = SEXES[sex ?? ''] ?? null;
    const bare = (text = '') => text.replaceAll('`', '');
    const said = value(readTraits(bare(typed), loci, known));
    expect([said.code, said.words.long, said.words.short]).toEqual([bare(code), long, short]);
    expect(printTraits(value(parseTraits(said.code, loci, known)))).toBe(said.code);
  });
});
