import { describe, expect, it } from 'vitest';
import {
  cardTraits,
  type Facility,
  type Id,
  lociFor,
  type Parents,
  type Payload,
  parentsDraft,
  parentsFault,
  pedigreeAround,
  pedigreeOrder,
  planPairing,
  readTraits,
  traitsDraft,
  traitsOf,
} from '../../src/core/index.ts';
import { added, DAM, day, id, type Line, REX, refusal, SIRE, site, undo, value } from './log.ts';

const D = '2026-03-09';
const OTHER = id(3);
const BALL = lociFor(site(), 'Python regius').loci;
const own: Payload<'locus-set'> = {
  species: 'Python regius',
  locus: 'Own',
  inheritance: 'recessive',
  alleles: [{ symbol: 'own', names: ['Ours'] }],
  sources: ['our line'],
  confidence: 'memory',
};
const row = (more: Partial<Payload<'locus-set'>> = {}): Line => [D, 'locus-set', { ...own, ...more }, { subjects: [] }];
const traits = (code: string, of: Id = REX, words?: string): Line => [
  D,
  'traits-set',
  words === undefined ? { code } : { code, words },
  { subjects: [of] },
];
const parents = (of: Id, sire: Id | undefined, dam: Id | undefined): Line => [
  D,
  'parents-set',
  { ...(sire && { sire }), ...(dam && { dam }) },
  { subjects: [of] },
];
const family: readonly Line[] = [
  added({ name: 'Rex', sex: 'male', hatchedOn: '2024-06-01' }, { subjects: [REX] }),
  added({ name: 'Sire', sex: 'male', hatchedOn: '2020-06-01' }, { subjects: [SIRE] }),
  added({ name: 'Dam', sex: 'female', hatchedOn: '2020-06-01' }, { subjects: [DAM] }),
];
const rexIn = (facility: Facility) => {
  const found = facility.animals.get(REX);
  if (found === undefined) throw new Error('no Rex');
  return found;
};

describe('the site’s own loci', () => {
  it('come after ours and can be used in a code and in words at once', () => {
    const { loci, setAside } = lociFor(site(row()), 'Python regius');
    expect(loci.rows.at(-1)?.locus).toBe('Own');
    expect(setAside).toEqual([]);
    expect(value(readTraits('het Ours', loci, null)).code).toBe('own/+');
  });
  it('amend our row of the same locus', () => {
    const { loci } = lociFor(
      site(row({ locus: 'TFEC', alleles: [{ symbol: 'pie', names: ['Patchwork'] }] })),
      'Python regius',
    );
    expect(value(readTraits('Patchwork', loci, null)).code).toBe('pie/pie');
  });
  it('are by their last writer, and a slip brings the one before back', () => {
    const lines = [row(), row({ alleles: [{ symbol: 'own', names: ['Later'] }] })];
    const name = (facility: Facility) => lociFor(facility, 'Python regius').loci.rows.at(-1)?.alleles[0]?.names[0];
    expect(name(site(...lines))).toBe('Later');
    expect(name(site(...lines, undo(D, 1, { subjects: [] })))).toBe('Ours');
  });
  it('are set aside one by one where they break the table, and the rest stays', () => {
    const clash = row({ locus: 'Own two', alleles: [{ symbol: 'PIE', names: ['Clash'] }] });
    const { loci, setAside } = lociFor(site(row(), clash), 'Python regius');
    expect(setAside.map((one) => one.code)).toEqual(['loci-clash']);
    expect(loci.rows.some((one) => one.locus === 'Own')).toBe(true);
    expect(loci.rows.some((one) => one.locus === 'Own two')).toBe(false);
  });
  it('make a table for a species that we know nothing of', () => {
    const facility = site(row({ species: 'Lampropeltis getula' }));
    expect(lociFor(facility, 'Lampropeltis getula').loci.rows.map((one) => one.locus)).toEqual(['Own']);
    expect(lociFor(facility, 'Lampropeltis alterna').loci.rows).toEqual([]);
  });
});

describe('typed traits', () => {
  it.each([
    ['Pastel, het Clown', 'Pas/+; cln/+'],
    ['cln/+ ; pas/+', 'Pas/+; cln/+'],
    ['66 % possible het Clown', '[cln 2:3]/+'],
    ['wt', 'wt'],
    ['normal', 'wt'],
    ['super pastel het pied', 'pie/+; Pas/Pas'],
  ])('%s is %s', (text, code) => {
    expect(value(readTraits(text, BALL, null)).code).toBe(code);
  });
  it.each([
    ['both copies of a series already full', 'alb/cdy; tof/+', 'traits-full', 'char 10'],
    ['a W on a species with X and Y', 'Ban/W', 'traits-chromosome', 'char 5'],
    ['a Y on a female', 'Ban/Y:+', 'traits-sex', 'char 5'],
    ['an unknown sign', 'zzz/+', 'traits-unknown', 'char 1'],
    ['an unknown word', 'het Clwon', 'trade-unknown', 'char 5'],
  ])('%s is refused at its place', (_what, text, code, path) => {
    const read = readTraits(text, BALL, 'F');
    expect(read.ok ? '' : [read.problem.code, read.problem.path]).toEqual([code, path]);
  });
  it('come with their welfare notes and source', () => {
    const [note] = value(readTraits('Spider', BALL, null)).welfare;
    expect([note?.sure, note?.source]).toEqual([true, expect.stringContaining('Starck')]);
  });
});

describe('traits on a record', () => {
  it('are null where nobody has written any', () => {
    const facility = site(...family);
    expect(value(traitsOf(facility, rexIn(facility)))).toBeNull();
    expect(cardTraits(facility, rexIn(facility))).toBeNull();
  });
  it('are said on the card by the tables, whatever words were written', () => {
    const facility = site(...family, traits('cln/+; Pas/+', REX, 'something else'));
    const card = cardTraits(facility, rexIn(facility));
    expect([card?.code, card?.words?.long]).toEqual(['Pas/+; cln/+', 'Pastel, het Clown']);
  });
  it('take a combo name that fits and was chosen', () => {
    const said = value(readTraits('Pas/+; Spi/+; cln/+', BALL, null));
    const [offer] = said.offers;
    expect(offer).toBeDefined();
    const facility = site(...family);
    const draft = traitsDraft(rexIn(facility), said, day(D), offer ?? null);
    const after = site(...family, traits(said.code, REX, (draft.payload as { words: string }).words));
    expect(cardTraits(after, rexIn(after))?.words).toEqual(offer?.words);
  });
  it('stand as they were written where no table knows them', () => {
    const facility = site(...family, traits('zzz/+', REX, 'het something, 50 % possible het other'));
    const { code, words } = cardTraits(facility, rexIn(facility)) ?? {};
    expect([code, words?.long]).toEqual(['zzz/+', 'het something, 50 % possible het other']);
    expect(refusal(traitsOf(facility, rexIn(facility)))).toBe('traits-unknown');
  });
  it('that the animal’s sex forbids are told', () => {
    const facility = site(...family, traits('Ban/Y:+', DAM));
    const dam = facility.animals.get(DAM);
    expect(dam && refusal(traitsOf(facility, dam))).toBe('traits-sex');
  });
});

describe('parents', () => {
  const facility = site(
    ...family,
    added({ name: 'Corn', species: 'Pantherophis guttatus', sex: 'male' }, { subjects: [OTHER] }),
  );
  const fault = (of: Partial<Parents>) =>
    parentsFault(facility, rexIn(facility), { sire: null, dam: null, ...of })?.code;
  it.each<[string, Partial<Parents>, string | undefined]>([
    ['two that fit', { sire: SIRE, dam: DAM }, undefined],
    ['one unknown', { dam: DAM }, undefined],
    ['the animal itself', { sire: REX }, 'parent-self'],
    ['a female as sire', { sire: DAM }, 'parent-sex'],
    ['a male as dam', { dam: SIRE }, 'parent-sex'],
    ['another species', { sire: OTHER }, 'parent-species'],
    ['an id that nobody has', { sire: id(99) }, 'parent-unknown'],
  ])('%s: %s gives %s', (_what, of, code) => {
    expect(fault(of)).toBe(code);
  });
  it('younger than the young are refused', () => {
    const late = site(...family, added({ sex: 'male', hatchedOn: '2025-01-01' }, { subjects: [OTHER] }));
    expect(parentsFault(late, rexIn(late), { sire: OTHER, dam: null })?.code).toBe('parent-younger');
  });
  it('that come down from the animal are refused: it would be its own ancestor', () => {
    const loop = site(
      added({ sex: 'male' }, { subjects: [REX] }),
      added({ sex: 'female' }, { subjects: [DAM] }),
      added({ sex: 'male' }, { subjects: [SIRE] }),
      parents(DAM, REX, undefined),
      parents(SIRE, undefined, DAM),
    );
    expect(parentsFault(loop, rexIn(loop), { sire: SIRE, dam: null })?.code).toBe('parent-descends');
  });
  it('are written in one event or not at all', () => {
    const both = value(parentsDraft(facility, rexIn(facility), { sire: SIRE, dam: DAM }, day(D)));
    expect(both).toMatchObject({ kind: 'parents-set', subjects: [REX], payload: { sire: SIRE, dam: DAM } });
    expect(refusal(parentsDraft(facility, rexIn(facility), { sire: SIRE, dam: SIRE }, day(D)))).toBe('parent-sex');
  });
  it('set later win over those that the animal came with', () => {
    const after = site(
      added({ sire: SIRE, dam: DAM }),
      added({ sex: 'male' }, { subjects: [OTHER] }),
      parents(REX, OTHER, undefined),
    );
    expect([rexIn(after).sire, rexIn(after).dam]).toEqual([OTHER, null]);
  });
});

describe('the pedigree around an animal', () => {
  it('holds its ancestors, and a parent without a record is unknown', () => {
    const facility = site(...family, parents(REX, SIRE, DAM), parents(SIRE, id(98), undefined));
    expect(pedigreeAround(facility, [REX])).toEqual(
      expect.arrayContaining([
        { id: REX, sire: SIRE, dam: DAM },
        { id: SIRE, sire: null, dam: null },
        { id: DAM, sire: null, dam: null },
      ]),
    );
  });
  it('ends on a ring of parents, which two devices may have written, and the order tells of it', () => {
    const ring = site(...family, parents(REX, SIRE, undefined), parents(SIRE, REX, undefined));
    expect(refusal(pedigreeOrder(pedigreeAround(ring, [REX])))).toBe('pedigree-cycle');
  });
});

describe('a planned pairing', () => {
  it('crosses what the records say, and says what it took for granted', () => {
    const plan = value(planPairing(site(...family, traits('pie/+', SIRE)), SIRE, DAM));
    expect(plan.cross.chromosomes.flatMap((one) => one.loci)).toContain('TFEC');
    expect(plan.assumed).toEqual(['No traits are written of Dam: it is taken as wild type.']);
  });
  it('warns with its source before anything is written', () => {
    const plan = value(planPairing(site(...family, traits('Spi/+', SIRE)), SIRE, DAM));
    expect(new Set(plan.warnings.map((one) => one.who))).toEqual(new Set(['sire', 'young']));
  });
  it.each<[string, readonly Line[], Id, Id, string]>([
    ['one animal twice', family, SIRE, SIRE, 'pairing-self'],
    ['two males', family, SIRE, REX, 'pairing-sexes'],
    ['a stranger', family, SIRE, id(97), 'unknown-id'],
    [
      'two species',
      [...family, added({ species: 'Pantherophis guttatus', sex: 'female' }, { subjects: [OTHER] })],
      SIRE,
      OTHER,
      'pairing-species',
    ],
    ['traits that cannot be read', [...family, traits('zzz/+', SIRE)], SIRE, DAM, 'traits-unknown'],
    ['a female with a Y', [...family, traits('Ban/Y:+', DAM)], SIRE, DAM, 'traits-sex'],
  ])('%s is refused', (_what, lines, sire, dam, code) => {
    expect(refusal(planPairing(site(...lines), sire, dam))).toBe(code);
  });
});
