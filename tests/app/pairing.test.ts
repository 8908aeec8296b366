import { describe, expect, it } from 'vitest';
import { type Choice, pairingAddress, readChoice } from '../../src/app/pairing/choice.ts';
import { take } from '../../src/app/pairing/taking.ts';
import { foldFacility, type Id } from '../../src/core/index.ts';
import { ALDER, BIRCH, breedingLog, CEDAR, IVY, JUNIPER, KESTREL } from '../browser/pairingSite.ts';

const LOG = breedingLog();
const FACILITY = foldFacility(LOG);
const NOBODY: Choice = { sire: null, dam: null, eggs: null, either: null };

/** What comes of taking an animal: the address, or the code of the refusal. */
function taking(choice: Partial<Choice>, id: Id, wanted: 'sire' | 'dam' | null = null): string {
  const taken = take(FACILITY, { ...NOBODY, ...choice }, id, wanted);
  return taken.ok ? pairingAddress(taken.value) : taken.problem.code;
}

describe('an animal that is scanned for a pairing', () => {
  const [sire, dam] = [ALDER.id, BIRCH.id];
  it.each([
    ['a male', {}, sire, null, `/pairing?sire=${sire}`],
    ['a female', {}, dam, null, `/pairing?dam=${dam}`],
    ['the second half', { sire }, dam, null, `/pairing?sire=${sire}&dam=${dam}`],
    ['another male for both', { sire, dam }, CEDAR.id, null, `/pairing?sire=${CEDAR.id}&dam=${dam}`],
    ['an unsexed one', { sire }, IVY.id, null, `/pairing?sire=${sire}&either=${IVY.id}`],
    ['an unsexed one as dam', { sire }, IVY.id, 'dam', `/pairing?sire=${sire}&dam=${IVY.id}`],
    ['the same twice', { sire }, sire, null, 'pairing-self'],
    ['an unsexed one twice', { sire: IVY.id }, IVY.id, null, 'pairing-self'],
    ['a second male', { sire }, CEDAR.id, null, 'pairing-sexes'],
    ['a female as sire', {}, dam, 'sire', 'pairing-sexes'],
    ['another species', { sire }, JUNIPER.id, null, 'pairing-species'],
    ['one that left', {}, KESTREL.id, null, 'animal-gone'],
    ['one nobody knows', {}, '00000000' as Id, null, 'unknown-id'],
  ] as const)('%s: %j', (_what, choice, id, wanted, said) => {
    expect(taking(choice, id, wanted)).toBe(said);
  });
});

describe('the address', () => {
  it('is read as it is written, and what is no id or no count of eggs is left out', () => {
    const choice: Choice = { sire: ALDER.id, dam: BIRCH.id, eggs: 7, either: IVY.id };
    const query = Object.fromEntries(new URL(pairingAddress(choice), 'https://pairs.example').searchParams);
    expect(readChoice(query)).toEqual(choice);
    for (const eggs of ['0', '61', '2.5', 'many', '']) expect(readChoice({ sire: 'nobody', eggs })).toEqual(NOBODY);
  });
});
