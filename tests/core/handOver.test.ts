import { describe, expect, it } from 'vitest';
import { type HandOver, type HandOverQuestion, handOver } from '../../src/core/index.ts';
import { added, DAM, day, fed, type Line, log, REX, refused, SIRE, site, undo, weighed } from './log.ts';

const D = day('2026-03-20');

function sheetOf(lines: readonly Line[], more: Partial<HandOverQuestion> = {}): HandOver {
  const facility = site(...lines);
  const animal = facility.animals.get(REX) ?? expect.fail('no such animal');
  return handOver({ facility, animal, history: log(...lines), on: D, tellsSource: false, ...more });
}

const says = (sheet: HandOver, label: string): string | undefined =>
  [...sheet.identity, ...sheet.parents].find(([one]) => one === label)?.[1];
const caution = (sheet: HandOver, title: string): string | undefined =>
  sheet.cautions.find((one) => one.title === title)?.words;

const SITE: Line = ['2025-01-01', 'site-named', { name: 'Small House', timeZone: 'Etc/UTC' }, { subjects: [] }];
const WHOLE: readonly Line[] = [
  SITE,
  added({ name: 'Basalt', sex: 'male' }, { subjects: [SIRE] }),
  ['2025-01-02', 'traits-set', { code: 'cln/+' }, { subjects: [SIRE] }],
  added({ name: 'Rex', number: '24-7', sex: 'female', hatchedOn: '2024-07-02', acquiredOn: '2025-01-01', sire: SIRE }),
  ['2025-01-03', 'origin-set', { source: 'Reed Farm', licence: 'L 12', papers: 'invoice 7' }],
  ['2025-01-03', 'microchip-set', { code: '276098101234567' }],
  ['2025-01-04', 'traits-set', { code: 'Pas/+; [pie 2:3]/+' }],
  weighed('2025-06-01', 800),
  weighed('2026-03-01', 900),
  ...Array.from({ length: 12 }, (_, at) => fed(`2026-01-${String(at + 1).padStart(2, '0')}`, 60 + at)),
  refused('2026-02-10'),
  fed('2026-03-10', 80),
  ['2025-12-01', 'shed-seen', { whole: true }],
  ['2026-02-01', 'shed-seen', { whole: false }],
  ['2025-01-20', 'vet-cleared', { by: 'Dr Ash', words: 'an old word' }],
  ['2025-10-20', 'vet-cleared', { by: 'Dr Ash', words: 'seen' }],
];

describe('a hand-over sheet', () => {
  const sheet = sheetOf(WHOLE);
  it('says who it is', () => {
    expect(sheet).toMatchObject({ called: 'Rex · 24-7', species: 'Python regius · ball python', site: 'Small House' });
    expect(['Sex', 'Hatched', 'Came here', 'Microchip'].map((label) => says(sheet, label))).toEqual([
      'female',
      '2 Jul 2024',
      'acquired 1 Jan 2025',
      '276 0981 0123 4567',
    ]);
  });
  it('tells the source only where the site wants it', () => {
    expect(says(sheet, 'From')).toBeUndefined();
    const told = sheetOf(WHOLE, { tellsSource: true });
    expect(['From', 'Its licence', 'Papers'].map((label) => says(told, label))).toEqual([
      'Reed Farm',
      'L 12',
      'invoice 7',
    ]);
  });
  it('tells what is certain apart from what is only possible', () => {
    expect(sheet.traits).toEqual({
      code: '[pie 2:3]/+; Pas/+',
      words: 'Pastel, 66 % possible het Piebald',
      certain: ['Pastel'],
      possible: ['66 % possible het Piebald'],
    });
  });
  it('names the parents with their traits', () => {
    expect(says(sheet, 'Sire')).toMatch(/^Basalt · [0-9A-Z]{4}-[0-9A-Z]{4} · cln\/\+ · het Clown$/);
    expect(says(sheet, 'Dam')).toBe('not known');
  });
  it('has the last ten offers, the newest first, refusals too', () => {
    expect(sheet.offers).toHaveLength(10);
    expect(sheet.offers.slice(0, 3).map(({ day: on, totalG, taken }) => [on, totalG, taken])).toEqual([
      ['2026-03-10', 80, true],
      ['2026-02-10', 30, false],
      ['2026-01-12', 71, true],
    ]);
  });
  it('says what it eats, how often and what it took last', () => {
    expect(sheet.feeding.eats).toMatch(/^\d+ × .*\d g/);
    expect(sheet.feeding.every).toMatch(
      /^every 7–14 days \(Python regius, under 1000 g \(C: common practice, no source\)\)$/,
    );
    expect(sheet.feeding.last).toBe('10 Mar 2026: 1 × rat pup, 80 g');
  });
  it('has weights with the last change, sheds, and twelve months of health', () => {
    expect(sheet.weights).toEqual([
      ['1 Mar 2026', '900 g (+100 g since 1 Jun 2025)'],
      ['1 Jun 2025', '800 g'],
    ]);
    expect(sheet.sheds).toBe('1 Feb 2026 (in pieces), 1 Dec 2025');
    expect(sheet.health.map(({ words }) => words)).toEqual(['Dr Ash; seen']);
  });
  it('says nothing of what was taken back', () => {
    const back = sheetOf([...WHOLE, undo('2026-03-11', 22)]);
    expect(back.offers[0]?.day).toBe('2026-02-10');
  });
  it('knows nothing of later days', () => {
    const early = sheetOf([...WHOLE, weighed('2026-03-21', 950)]);
    expect(early.weights[0]?.[0]).toBe('1 Mar 2026');
  });
  it('has the same revision for the same words, and another for others', () => {
    expect(sheetOf(WHOLE).revision).toBe(sheet.revision);
    expect(sheetOf([...WHOLE, ['2026-03-11', 'animal-named', { name: 'Roz' }]]).revision).not.toBe(sheet.revision);
  });
  it('of an animal that nobody wrote anything of says so and fails nowhere', () => {
    const bare = sheetOf([added({ species: 'Anilius scytale' })]);
    expect([bare.offers, bare.weights, bare.health, bare.holds, bare.traits]).toEqual([[], [], [], [], null]);
    expect(bare.feeding).toEqual({
      eats: 'no plan and no meal on record',
      every: 'no plan on record: ask the keeper',
      last: 'none on record',
      note: null,
    });
    expect(says(bare, 'Came here')).toBe('on this record since 1 Jan 2025');
    expect(bare.sheds).toBe('none on record');
  });
});

describe('the cautions of a hand-over sheet', () => {
  it('are the ones for every snake', () => {
    const titles = sheetOf([added({ species: 'Pantherophis guttatus' })]).cautions.map(({ title }) => title);
    expect(titles).toEqual(['Wash your hands', 'After the journey', 'After a meal', 'Keep it apart', 'Vet']);
  });
  // CDC: Salmonella, and who keeps away; no food for 7 days after transport: veterinary web pages, as in docs/sources.md.
  it('name Salmonella, the groups at risk, and the first day of food', () => {
    const sheet = sheetOf(WHOLE);
    expect(caution(sheet, 'Wash your hands')).toMatch(
      /Salmonella.*five or under, pregnant people and people with weak immunity/,
    );
    expect(caution(sheet, 'After the journey')).toContain(
      'No food for 7 days after transport (hatchlings 7–14), so not before 27 Mar 2026',
    );
    expect(caution(sheet, 'After a meal')).toContain('48 hours');
  });
  it('say when it ate too lately to be carried', () => {
    const ate = sheetOf([...WHOLE, fed('2026-03-19')]);
    expect(caution(ate, 'After the journey')).toContain('do not carry it before 21 Mar 2026');
    expect(caution(sheetOf([...WHOLE, fed('2026-03-18')]), 'After the journey')).not.toContain('carry');
  });
  it('stand on top where somebody can come to harm', () => {
    const lines: readonly Line[] = [
      added({ species: 'Malayopython reticulatus' }),
      ['2026-01-01', 'animal-measured', { lengthMm: 4200, of: 'total' }],
      ['2026-01-01', 'animal-flagged', { flags: ['venomous'] }],
    ];
    const sheet = sheetOf(lines);
    expect(sheet.cautions.filter(({ danger }) => danger).map(({ title }) => title)).toEqual([
      'VENOMOUS',
      'Three people: never alone',
    ]);
    expect(sheet.cautions.map(({ title }) => title)).toEqual(expect.arrayContaining(['CITES', 'Lacey Act']));
    expect(caution(sheet, 'VENOMOUS')).toMatch(/licence and your local code/);
  });
  it('have what is known of its traits', () => {
    const sheet = sheetOf([added(), ['2025-01-02', 'traits-set', { code: 'Spi/+' }]]);
    expect(sheet.traits?.words).toBe('Spider');
    expect(caution(sheet, 'Its traits')).toMatch(/\S/);
  });
});

describe('holds on a hand-over sheet', () => {
  it('are told all, the vet’s and quarantine too', () => {
    const sheet = sheetOf([
      added(),
      ['2026-03-01', 'hold-placed', { reason: 'vet', words: 'wheezes' }],
      ['2026-03-01', 'hold-placed', { reason: 'quarantine', until: '2026-06-01' }],
      ['2026-03-18', 'opaque-seen', {}],
    ]);
    expect(sheet.holds).toEqual([
      'a vet’s word is needed: wheezes',
      expect.stringContaining('opaque since 18 Mar 2026'),
      'quarantine since 1 Mar 2026, until 1 Jun 2026',
    ]);
  });
  it('of a parent do not count', () => {
    expect(sheetOf([added(), added({}, { subjects: [DAM] })]).holds).toEqual([]);
  });
});
