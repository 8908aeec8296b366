import { describe, expect, it } from 'vitest';
import {
  COUNTRY_PROFILES,
  type CountryProfile,
  csvText,
  type LogEvent,
  NOT_RECORDED,
  type Pack,
  type PackAnimal,
  type PackChoice,
  packFiles,
  packOf,
  profileById,
  profileOfSite,
  yearsBefore,
} from '../../src/core/index.ts';
import {
  added,
  DAM,
  day,
  eventId,
  fed,
  id,
  type Line,
  log,
  RACK,
  REX,
  refused,
  SIRE,
  TUB,
  undo,
  value,
  weighed,
} from './log.ts';
import { readCsv } from './readCsv.ts';

const ON = '2026-11-25';
const TUB_2 = id(12);
const PLACES: readonly Line[] = [
  ['2022-01-01', 'site-named', { name: 'Sample House', timeZone: 'Etc/UTC' }, { subjects: [] }],
  ['2022-01-01', 'place-added', { placeKind: 'rack', name: 'Rack 1', walk: 1 }, { subjects: [RACK] }],
  ['2022-01-01', 'place-added', { placeKind: 'tub', name: '1-01', parent: RACK, walk: 1 }, { subjects: [TUB] }],
  ['2022-01-01', 'place-added', { placeKind: 'tub', name: '1-02', parent: RACK, walk: 2 }, { subjects: [TUB_2] }],
];
const KNOWN = {
  name: 'Rex',
  number: '22-7',
  sex: 'male',
  hatchedOn: '2021-08-01',
  acquiredOn: '2022-02-03',
  source: 'Reed Farm',
} as const;
const ALL: PackChoice = { of: 'all' };

function packed(lines: readonly Line[], choice: PackChoice = ALL, profile = 'plain', on = ON): Pack {
  return value(packOf(log(...lines), { choice, on: day(on), profile: value(profileById(profile)) }));
}

function only(lines: readonly Line[], profile = 'plain', on = ON): PackAnimal {
  const [animal] = packed(lines, ALL, profile, on).animals;
  if (animal === undefined) throw new Error('the pack has no animal');
  return animal;
}

function saysOf({ facts }: PackAnimal, field: string): string | undefined {
  return facts.find((fact) => fact.field === field)?.says;
}

describe('the profiles', () => {
  // SI 2018/486, Schedule 3, paragraph 2(1)(a) to (g), as first made; SSI 2021/84, guidance for pet sellers, Annex B, 2 (h).
  it('of England and Scotland ask for the register in its order, Scotland for the microchip too', () => {
    const points = (name: string) =>
      value(profileById(name)).asked.flatMap(({ point, fields }) => (/^\(/.test(point) ? [[point, ...fields]] : []));
    const register = [
      ['(a)', 'supplier'],
      ['(b)', 'sex'],
      ['(c)', 'age'],
      ['(d)', 'treatment'],
      ['(e)', 'hatched', 'acquired'],
      ['(f)', 'sold'],
      ['(g)', 'died'],
    ];
    expect(points('england')).toEqual(register);
    expect(points('scotland')).toEqual([...register, ['(h)', 'microchip']]);
  });
  it.each(COUNTRY_PROFILES.map((one) => [one.id, one] as const))(
    '%s: every field that it names is in the pack',
    (name, profile) => {
      const named = profile.asked.flatMap(({ fields }) => fields);
      expect(named.length).toBeGreaterThan(5);
      for (const facts of [KNOWN, {}]) {
        const animal = only([...PLACES, added(facts)], name);
        for (const field of named) expect(saysOf(animal, field), field).toMatch(/\S/);
      }
    },
  );
  it('name their source, and a text with the day on which it came into force', () => {
    const texts = COUNTRY_PROFILES.filter(({ law }) => law !== null);
    expect(texts.map(({ id: name, inForce }) => [name, inForce])).toEqual([
      ['england', '2018-10-01'],
      ['scotland', '2021-09-01'],
      ['north-carolina', null],
      ['united-states', '2015-04-09'],
    ]);
    for (const { inForce, dated } of texts) expect(inForce === null).toBe(dated !== null);
    expect(COUNTRY_PROFILES.every(({ source, years }) => source !== '' && years === 3)).toBe(true);
  });
  it('are refused when unknown, and a site’s unknown one becomes the plain one', () => {
    expect(profileById('atlantis')).toMatchObject({ ok: false, problem: { code: 'profile-unknown' } });
    expect(
      [profileOfSite(null), profileOfSite('atlantis'), profileOfSite('scotland')].map((one: CountryProfile) => one.id),
    ).toEqual(['plain', 'plain', 'scotland']);
  });
});

describe('who the animal is', () => {
  it('is told with every day and its age', () => {
    const animal = only([...PLACES, added(KNOWN), ['2022-02-04', 'animal-moved', { to: TUB }]]);
    expect(Object.fromEntries(animal.facts.map(({ field, says }) => [field, says]))).toMatchObject({
      name: 'Rex',
      number: '22-7',
      species: 'Python regius',
      'common-name': 'ball python',
      sex: 'male',
      age: '5 years 3 months',
      hatched: '1 Aug 2021',
      acquired: '3 Feb 2022',
      supplier: 'Reed Farm',
      sold: 'not sold',
      died: 'no death recorded',
      microchip: NOT_RECORDED,
      enclosure: 'tub Rack 1 · 1-01',
      size: NOT_RECORDED,
      'animals-there': '1',
      owner: 'Sample House',
      'left-to': 'still here',
      cause: 'still here',
      papers: 'none kept',
      'rule-set': 'the site has picked no rule set to compare with',
    });
  });
  it('is said to be not recorded where nobody wrote it', () => {
    const animal = only([added()]);
    const fields = ['name', 'number', 'age', 'hatched', 'supplier', 'licence', 'origin-papers', 'enclosure', 'size'];
    for (const field of [...fields, 'microchip', 'length', 'health', 'animals-there'])
      expect(saysOf(animal, field), field).toBe(NOT_RECORDED);
    expect(saysOf(animal, 'acquired')).toBe('not recorded; on this record since 1 Jan 2025');
  });
  it('bred here names the parents as its source', () => {
    const lines = [added({ name: 'Sire' }, { subjects: [SIRE] }), added({ clutch: id(30), sire: SIRE, dam: DAM })];
    const rex = packed(lines).animals.find((one) => one.id === REX);
    expect(rex && saysOf(rex, 'supplier')).toMatch(/^bred here, from Sire × /);
    expect(rex && saysOf(rex, 'acquired')).toBe('no, bred here');
  });
  it.each([
    ['sold', { sold: '1 Jun 2026', died: 'no death recorded' }],
    ['died', { sold: 'not sold', died: '1 Jun 2026' }],
    ['given', { sold: 'not sold: given away on 1 Jun 2026', died: 'no death recorded' }],
    ['lost', { sold: 'not sold: lost on 1 Jun 2026', died: 'no death recorded' }],
  ] as const)('that was %s', (how, says) => {
    const animal = only([added(KNOWN), ['2026-06-01', 'animal-left', { how }]]);
    for (const [field, words] of Object.entries(says)) expect(saysOf(animal, field)).toBe(words);
    expect(saysOf(animal, 'age')).toBe('4 years 10 months when it left');
    expect(animal.moves.at(-1)?.where).toBe(`off the site: ${how}`);
  });
  it('tells where it came from and went to, by whose licence, with which papers and why', () => {
    const came: Line = ['2026-01-01', 'origin-set', { source: 'Reed Farm', licence: 'L 24/118', papers: 'invoice 7' }];
    const sold: Line = ['2026-06-01', 'animal-left', { how: 'sold', to: 'A. Buyer, Fen Lane' }];
    const died: Line = ['2026-06-01', 'animal-left', { how: 'died', cause: 'unknown; vet asked for a post-mortem' }];
    const facts = (...lines: readonly Line[]) => {
      const animal = only([added(), came, ['2026-01-02', 'microchip-set', { code: '900255700411038' }], ...lines]);
      return ['supplier', 'licence', 'origin-papers', 'microchip', 'left-to', 'cause'].map((one) =>
        saysOf(animal, one),
      );
    };
    const known = ['Reed Farm', 'L 24/118', 'invoice 7', '900255700411038'];
    expect(facts(sold)).toEqual([...known, 'A. Buyer, Fen Lane', NOT_RECORDED]);
    expect(facts(died)).toEqual([...known, 'nobody', 'unknown; vet asked for a post-mortem']);
    const { moves } = only([added(), sold]);
    expect(moves.at(-1)?.where).toBe('off the site: sold; to A. Buyer, Fen Lane');
  });
  it('CARE-ENCLOSURE: stands beside the rule set that the site picked, with its source and the caution', () => {
    const onTub = { subjects: [TUB] };
    const lines: readonly Line[] = [
      ...PLACES,
      ['2022-01-02', 'site-rules-set', { enclosureRule: 'england' }, { subjects: [] }],
      [
        '2022-01-02',
        'place-set',
        { name: '1-01', parent: RACK, walk: 1, sizeMm: { length: 900, width: 450, height: 300 } },
        onTub,
      ],
      added(KNOWN),
      ['2022-02-04', 'animal-moved', { to: TUB }],
    ];
    const unmeasured = only(lines);
    expect(saysOf(unmeasured, 'size')).toBe('90 × 45 × 30 cm inside, 0.405 m² of floor');
    expect(saysOf(unmeasured, 'rule-set')).toBe('not compared with England: no length is recorded');
    const says = saysOf(
      only([...lines, ['2026-06-01', 'animal-measured', { lengthMm: 1300, of: 'total' }]]),
      'rule-set',
    );
    expect(says).toMatch(/^England asks for 130 cm long, .*: short by 40 cm of length, .*opinion of 2023/);
    expect(says).toContain('your local code, licence or inspector decides');
    expect(says).not.toMatch(/illegal|unlawful/);
  });
  it.each([
    ['Malayopython reticulatus', 'yes: Reticulated Python, Python reticulatus', /listed as injurious/, /Appendix II/],
    ['Eunectes murinus', 'yes: Green Anaconda, Eunectes murinus', /listed as injurious/, /Appendix II/],
    ['Simalia amethistina', 'yes: Amethystine Python, Morelia amethistina', /check the current one/, /Appendix II/],
    [
      'Python regius',
      'not named in the text; its hybrids with one that is named are',
      /check the current one/,
      /Appendix II/,
    ],
    [
      'Pantherophis guttatus',
      'not named in the text; its hybrids with one that is named are',
      /check the current one/,
      /check the current one/,
    ],
  ] as const)('%s beside the lists: %s', (species, named, lacey, cites) => {
    const animal = only([added({ species })]);
    expect(saysOf(animal, 'large-constrictor')).toBe(named);
    expect(saysOf(animal, 'lacey')).toMatch(lacey);
    expect(saysOf(animal, 'cites')).toMatch(cites);
  });
  it('under treatment is said so: by a prescription, or by a hold', () => {
    const written: Line = ['2026-11-20', 'prescription-written', { ...PRESCRIPTION, endsOn: '2026-11-30' }];
    const held: Line = ['2026-11-20', 'hold-placed', { reason: 'treatment', until: '2026-11-25' }];
    const lifted: Line = ['2026-11-21', 'hold-lifted', { reason: 'treatment' }];
    expect(saysOf(only([added(), written]), 'under-treatment')).toMatch(/^YES/);
    expect(saysOf(only([added(), held]), 'under-treatment')).toMatch(/^YES/);
    expect(saysOf(only([added(), held], 'plain', '2026-11-26'), 'under-treatment')).toBe('no');
    expect(saysOf(only([added(), held, lifted]), 'under-treatment')).toBe('no');
  });
});

const PRESCRIPTION = {
  drug: 'the vet’s drug',
  prescriber: 'Dr Reed',
  amount: { by: 'mass', dose: { mgPerKg: 5 }, strength: { mgPerMl: 10 } },
  route: 'by mouth',
  everyHours: 48,
  count: 3,
  startsOn: '2026-11-20',
  lot: 'L7',
} as const;

describe('the tables', () => {
  it('tell feeds, weights, and what a vet wrote with its units', () => {
    const animal = only([
      added(),
      fed('2026-11-01'),
      refused('2026-11-08'),
      ['2026-11-09', 'animal-weighed', { weightG: 912.5, confirmed: true }],
      ['2026-11-20', 'prescription-written', PRESCRIPTION],
      ['2026-11-20', 'dose-given', { prescription: eventId(4), ml: 0.46, second: 'Bo', lot: 'L7' }],
      ['2026-11-21', 'regurgitation-seen', {}],
    ]);
    expect(
      animal.feeds.map(({ day: on, prey, count, totalG, taken, by }) => [on, prey, count, totalG, taken, by]),
    ).toEqual([
      ['2026-11-01', 'rat pup', 1, 30, true, 'Ada'],
      ['2026-11-08', 'rat pup', 1, 30, false, 'Ada'],
    ]);
    expect(animal.weights).toEqual([{ day: '2026-11-09', by: 'Ada', weightG: 912.5, doubted: true }]);
    expect(animal.treatments.map(({ what, words }) => `${what}: ${words}`)).toEqual([
      'prescription: the vet’s drug; written by Dr Reed; 5 mg/kg of 10 mg/mL; by mouth; every 48 h, 3 doses; from 20 Nov 2026; lot L7',
      'dose: the vet’s drug, 0.46 mL; with Bo; lot L7',
      'regurgitated: ',
    ]);
    expect([animal.hasDoses, only([added()]).hasDoses]).toEqual([true, false]);
  });
  it('tell lengths, looks, notes, papers without their pictures, and what was skipped and why', () => {
    const onTub = { subjects: [TUB] };
    const animal = only([
      ...PLACES,
      added(),
      ['2026-01-01', 'animal-moved', { to: TUB }],
      ['2026-02-01', 'animal-measured', { lengthMm: 1240, of: 'total', guessed: true }],
      ['2026-02-02', 'health-looked', { well: false, words: 'a dry patch' }, { subjects: [REX, TUB] }],
      ['2026-02-03', 'health-looked', { well: true }, { subjects: [TUB, TUB_2] }],
      ['2026-02-03', 'health-looked', { well: false, words: 'another one’s' }, { subjects: [DAM, TUB] }],
      ['2026-02-04', 'note-made', { words: 'calm' }],
      ['2026-02-05', 'prescription-written', PRESCRIPTION, { n: 77 }],
      ['2026-02-05', 'paper-kept', { of: eventId(77), mime: 'image/webp', base64: 'UklGRg==', words: 'both sides' }],
      ['2026-02-06', 'task-skipped', { task: 'clean', why: 'opaque' }, onTub],
      ['2026-02-07', 'task-skipped', { task: 'weigh' }],
      ['2026-02-08', 'pool-served', { work: 'part', percent: 30 }, onTub],
      ['2026-02-09', 'pool-served', { work: 'drain' }, onTub],
      added({}, { subjects: [DAM] }),
    ]);
    const by = 'Ada';
    expect(animal.lengths).toEqual([{ day: '2026-02-01', by, lengthMm: 1240, of: expect.any(String), guessed: true }]);
    expect(animal.looks).toEqual([
      { day: '2026-02-02', by, well: false, words: 'a dry patch' },
      { day: '2026-02-03', by, well: true, words: '' },
    ]);
    expect(saysOf(animal, 'health')).toBe('looked well on 3 Feb 2026');
    expect(animal.notes).toEqual([{ day: '2026-02-04', by, words: 'calm' }]);
    expect(animal.papers).toEqual([
      { day: '2026-02-05', by, of: 'Prescription: the vet’s drug, Dr Reed', words: 'both sides' },
    ]);
    expect(JSON.stringify(animal)).not.toContain('UklGRg');
    expect(animal.skipped.map(({ task, where, why }) => [task, where, why])).toEqual([
      ['full clean', 'Rack 1 · 1-01', 'opaque'],
      ['weighing', 'this animal', ''],
    ]);
    expect(animal.cleaning.map(({ what }) => what)).toEqual(['pool changed in part, 30 %', 'pool drained']);
  });
  it('go three years back from the day and no further, and not beyond it', () => {
    const lines = [
      added({}, {}, '2020-01-01'),
      fed('2023-11-24'),
      fed('2023-11-25'),
      fed('2026-11-25'),
      fed('2026-11-26'),
    ];
    expect(only(lines).feeds.map((feed) => feed.day)).toEqual(['2023-11-25', '2026-11-25']);
    expect(yearsBefore(day('2024-02-29'), 3)).toBe('2021-02-28');
  });
  it('leave out what was taken back', () => {
    expect(only([added(), fed('2026-11-01'), undo('2026-11-01', 1)]).feeds).toEqual([]);
  });
  it('tell the cleaning of a tub for whoever lived in it then, and of the rack around it', () => {
    const cleaned = (on: string, place: typeof TUB): Line => [
      on,
      'place-cleaned',
      { how: 'full' },
      { subjects: [place] },
    ];
    const animal = only([
      ...PLACES,
      added(),
      cleaned('2026-01-01', TUB),
      ['2026-02-01', 'animal-moved', { to: TUB }],
      cleaned('2026-02-10', TUB),
      cleaned('2026-02-11', TUB_2),
      cleaned('2026-02-12', RACK),
      ['2026-03-01', 'animal-moved', { to: TUB_2 }],
      cleaned('2026-03-10', TUB),
      ['2026-03-11', 'water-changed', {}, { subjects: [RACK, TUB, TUB_2] }],
    ]);
    expect(animal.cleaning.map(({ day: on, what, where }) => [on, what, where])).toEqual([
      ['2026-02-10', 'cleaned in full', 'Rack 1 · 1-01'],
      ['2026-02-12', 'cleaned in full', 'Rack 1'],
      ['2026-03-11', 'water changed', 'Rack 1 · 1-02'],
    ]);
  });
});

describe('a choice', () => {
  const HERD: readonly Line[] = [
    ...PLACES,
    added({ name: 'Rex' }),
    added({ name: 'Dam' }, { subjects: [DAM] }),
    added({ name: 'Sire' }, { subjects: [SIRE] }),
    ['2026-01-01', 'animal-moved', { to: TUB }],
    ['2026-01-02', 'animal-moved', { to: TUB_2 }, { subjects: [DAM] }],
    ['2026-06-01', 'animal-left', { how: 'sold' }, { subjects: [DAM] }],
  ];
  const called = (pack: Pack): readonly string[] => pack.animals.map((one) => one.called);
  it('of all takes who is here in walking order, then who left in these years', () => {
    expect(called(packed(HERD))).toEqual(['Rex', 'Sire', 'Dam']);
    const later = packed(HERD, ALL, 'plain', '2029-06-02');
    expect([called(later), later.gone]).toEqual([['Rex', 'Sire'], 1]);
  });
  it('of a place takes all within it, and who left from there', () => {
    expect(called(packed(HERD, { of: 'place', place: RACK }))).toEqual(['Rex', 'Dam']);
  });
  it('of ids names those that are none', () => {
    const pack = packed(HERD, { of: 'only', ids: [DAM, RACK, id(99)] });
    expect(called(pack)).toEqual(['Dam']);
    expect(pack.left.map(({ problem }) => problem.code)).toEqual(['pack-no-animal', 'unknown-id']);
  });
  it.each([
    [{ of: 'place', place: REX }, 'pack-no-place'],
    [{ of: 'place', place: id(99) }, 'unknown-id'],
    [{ of: 'only', ids: [RACK] }, 'pack-no-animal'],
    [{ of: 'only', ids: [] }, 'pack-empty'],
  ] as const)('%j with no animal is refused: %s', (choice, code) => {
    const made = packOf(log(...HERD), { choice, on: day(ON), profile: profileOfSite(null) });
    expect(made).toMatchObject({ ok: false, problem: { code } });
  });
  it('reads only: the log is as it was, in any order', () => {
    const events: readonly LogEvent[] = Object.freeze(log(...HERD));
    const before = JSON.stringify(events);
    const ask = { choice: ALL, on: day(ON), profile: profileOfSite(null) };
    const pack = value(packOf(events, ask));
    expect(JSON.stringify(events)).toBe(before);
    expect(value(packOf([...events].reverse(), ask))).toEqual(pack);
  });
});

// RFC 4180, 2: CRLF ends a record, quotes around fields with quotes, commas or line breaks, quotes doubled (read in a mirror).
describe('the CSV files', () => {
  const ODD = 'say "boo", twice\r\nand again';
  const lines: readonly Line[] = [
    added({ name: ODD, source: '=1+2' }),
    fed('2026-11-01'),
    weighed('2026-11-02', 900),
    ['2026-11-03', 'vet-cleared', { by: '@Reed', words: '-fine' }],
  ];
  const files = new Map(packFiles(packed(lines)).map(({ name, text }) => [name, readCsv(text)]));
  it('are one a table, and come back as they were written', () => {
    expect([...files.keys()]).toEqual([
      'animals.csv',
      'feeds.csv',
      'weights.csv',
      'lengths.csv',
      'treatments.csv',
      'looks.csv',
      'notes.csv',
      'papers.csv',
      'skipped.csv',
      'cleaning.csv',
      'moves.csv',
    ]);
    expect(files.get('feeds.csv')).toEqual([
      ['animal', 'called', 'day', 'prey', 'count', 'grams', 'outcome', 'by'],
      [REX, ODD, '2026-11-01', 'rat pup', '1', '30', 'taken', 'Ada'],
    ]);
    expect(files.get('cleaning.csv')).toHaveLength(1);
  });
  it('have as many cells in every row as heads', () => {
    for (const [name, rows] of files) expect(new Set(rows.map((row) => row.length)).size, name).toBe(1);
  });
  it('take a keeper’s formula for a text', () => {
    const [heads = [], row = []] = files.get('animals.csv') ?? [];
    expect(row[heads.indexOf('supplier')]).toBe("'=1+2");
    expect(files.get('treatments.csv')?.[1]?.[4]).toBe("'@Reed; -fine");
  });
  it.each(['=1', '+1', '-1', '@a', '\tx', '\rx', '\nx', ' =1', '＝1', '-', '="a,b"'])(
    'put an apostrophe before %j',
    (text) => {
      expect(readCsv(csvText([[text]]))).toEqual([[`'${text}`]]);
    },
  );
  it.each(['1-2', 'a=b', "'quoted'", '', ' x ', '"', 'a,b', 'ä – ü 日本', 'a\nb'])('leave %j as it is', (text) => {
    expect(readCsv(csvText([[text, 'end']]))).toEqual([[text, 'end']]);
  });
  it('leave numbers as numbers, below zero too, and end each row with CRLF', () => {
    expect(
      csvText([
        [-1.5, null, 3],
        ['a', 'b', 'c'],
      ]),
    ).toBe('-1.5,,3\r\na,b,c\r\n');
  });
});
