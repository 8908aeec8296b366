import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { printPack } from '../../print/index.ts';
import { loadFonts } from '../../print/node/index.ts';
import {
  COUNTRY_PROFILES,
  type LogEvent,
  PACK_FIELDS,
  type Pack,
  type PackAnimal,
  type PackField,
  packFiles,
  packOf,
  profileById,
} from '../../src/core/index.ts';
import { readLog } from '../../src/store/index.ts';
import { ROOT } from '../cli/tubwright.ts';
import { added, day, eventId, fed, type Line, log, RACK, TUB, value, weighed } from '../core/log.ts';
import { readCsv } from '../core/readCsv.ts';
import { run, withFile } from './paper.ts';

const fonts = await loadFonts();
const onTub = { subjects: [TUB] };

/** A giant of which everything is written down, so that no answer is “not recorded” by chance. */
const GIANT: readonly Line[] = [
  [
    '2024-01-01',
    'site-named',
    { name: 'Sample House', timeZone: 'Etc/UTC', safetyLine: 'Protocol S-4 by the door' },
    { subjects: [] },
  ],
  ['2024-01-01', 'site-rules-set', { enclosureRule: 'austria' }, { subjects: [] }],
  ['2024-01-01', 'place-added', { placeKind: 'rack', name: 'Rack 1', walk: 1 }, { subjects: [RACK] }],
  ['2024-01-01', 'place-added', { placeKind: 'tub', name: '1-01', parent: RACK, walk: 1 }, onTub],
  [
    '2024-01-02',
    'place-set',
    { name: '1-01', parent: RACK, walk: 1, sizeMm: { length: 2000, width: 900, height: 800 } },
    onTub,
  ],
  added({
    species: 'Malayopython reticulatus',
    name: 'Goliath',
    number: '20-1',
    sex: 'female',
    hatchedOn: '2020-05-05',
    acquiredOn: '2024-02-01',
    source: 'Reed Farm',
  }),
  ['2025-01-02', 'origin-set', { source: 'Reed Farm', licence: 'L 24/118', papers: 'CITES 24-0091' }],
  ['2025-01-03', 'microchip-set', { code: '900255700411038' }],
  ['2025-01-04', 'animal-moved', { to: TUB }],
  ['2025-02-01', 'animal-measured', { lengthMm: 3900, of: 'total' }],
  fed('2025-03-01'),
  weighed('2025-03-02', 21_000),
  [
    '2025-03-03',
    'prescription-written',
    {
      drug: 'the vet’s drug',
      prescriber: 'Dr Reed',
      amount: { by: 'volume', ml: 0.2 },
      route: 'by mouth',
      everyHours: 24,
      count: 5,
      startsOn: '2025-03-03',
    },
    { n: 70 },
  ],
  ['2025-03-03', 'paper-kept', { of: eventId(70), mime: 'image/webp', base64: 'UklGRg==', words: 'both sides' }],
  ['2025-03-04', 'health-looked', { well: false, words: 'a dry patch' }],
  ['2025-03-05', 'note-made', { words: 'calm in the mornings' }],
  ['2025-03-06', 'task-skipped', { task: 'clean', why: 'opaque' }, onTub],
  ['2025-03-07', 'pool-served', { work: 'drain' }, onTub],
  ['2025-04-01', 'animal-left', { how: 'sold', to: 'Fen Hall' }],
];

function packed(lines: readonly LogEvent[], profile: string, on = '2026-11-25'): Pack {
  return value(packOf(lines, { choice: { of: 'all' }, on: day(on), profile: value(profileById(profile)) }));
}

function onlyAnimal({ animals }: Pack): PackAnimal {
  const [animal] = animals;
  if (animal === undefined || animals.length > 1) throw new Error(`${animals.length} animals`);
  return animal;
}

async function paperOf(pack: Pack): Promise<string> {
  const { pdf } = await printPack({ pack, paper: 'a4', fonts });
  return withFile(pdf, (path) => plain(run('pdftotext', '-layout', path, '-')));
}

/** Blanks and line ends are the paper’s; a text that was wrapped is found again without them. */
function plain(text: string): string {
  return text.replace(/\s+/g, '');
}

/** The column of a field in the CSV, as a program reads it. */
function inCsv(pack: Pack, field: PackField): string | undefined {
  const text = packFiles(pack).find(({ name }) => name === 'animals.csv')?.text ?? '';
  const [heads = [], row = []] = readCsv(text);
  const at = heads.indexOf(field.replaceAll('-', '_'));
  return at < 0 ? undefined : row[at];
}

describe.each(COUNTRY_PROFILES.map(({ id }) => id))('every field that the profile %s names', (profile) => {
  const pack = packed(log(...GIANT), profile);
  const animal = onlyAnimal(pack);
  const named = pack.profile.asked.flatMap(({ asks, fields }) => fields.map((field) => [field, asks] as const));
  it('has its column in the CSV, with what the log says', () => {
    expect(named.length).toBeGreaterThan(4);
    for (const [field] of named) {
      const fact = animal.facts.find((one) => one.field === field);
      expect(fact, field).toBeDefined();
      const cell = inCsv(pack, field);
      expect(cell, field).toBe(field === 'id' ? animal.id : fact?.plain);
      expect(cell, field).toMatch(/\S/);
    }
  });
  it('has its place on the paper, under the words by which it is asked for', async () => {
    const text = await paperOf(pack);
    for (const [field, asks] of named) {
      expect(text, field).toContain(plain(asks));
      expect(text, field).toContain(plain(animal.facts.find((one) => one.field === field)?.says ?? 'nothing'));
    }
    for (const words of [pack.profile.name, pack.profile.source, ...pack.profile.rules])
      expect(text).toContain(plain(words));
    const date = pack.profile.dated ?? (pack.profile.inForce === null ? '' : pack.profile.inForce.slice(0, 4));
    expect(text).toContain(plain(date));
  });
});

/**
 * What each text asks for, written down apart from the profiles: England, SI 2018/486, Schedule 3, paragraph 2 (as first
 * made); Scotland, SSI 2021/84 (guidance for pet sellers, Annex B, 2); North Carolina, G.S. 14-417.1(a) to (c) (copied at
 * ncleg.net and statutes.laws.com); 50 CFR 16.15 and CITES Appendix II (the final rule of 2015; the list as of 2008).
 */
const ASKED: readonly (readonly [profile: string, what: string, field: PackField])[] = [
  ...(['england', 'scotland'] as const).flatMap((one) => [
    [one, 'full name of the supplier', 'supplier'] as const,
    [one, 'sex', 'sex'] as const,
    [one, 'age', 'age'] as const,
    [one, 'details of veterinary treatment', 'treatment'] as const,
    [one, 'date of birth', 'hatched'] as const,
    [one, 'date of acquisition', 'acquired'] as const,
    [one, 'date of sale', 'sold'] as const,
    [one, 'date of death', 'died'] as const,
    [one, 'under treatment, marked in writing', 'under-treatment'] as const,
  ]),
  ['scotland', 'microchip number', 'microchip'],
  ['north-carolina', 'a species that the text names', 'large-constrictor'],
  ['north-carolina', 'scientific name', 'species'],
  ['north-carolina', 'common name', 'common-name'],
  ['north-carolina', 'number of specimens', 'animals-there'],
  ['north-carolina', 'owner’s identifying information', 'owner'],
  ['north-carolina', 'written safety protocol', 'protocol'],
  ['north-carolina', 'enclosure', 'enclosure'],
  ['united-states', 'listed as injurious', 'lacey'],
  ['united-states', 'CITES', 'cites'],
  ['north-carolina', 'CITES', 'cites'],
];

describe('what the texts ask for', () => {
  it.each(ASKED)('%s: %s is asked for by the profile', (profile, _what, field) => {
    expect(value(profileById(profile)).asked.flatMap(({ fields }) => fields)).toContain(field);
  });
});

describe('whatever else the log holds', () => {
  const pack = packed(log(...GIANT), 'plain');
  const animal = onlyAnimal(pack);
  it('is known of this animal, so that the test is one', () => {
    const unknown = animal.facts.filter(({ isKnown }) => !isKnown).map(({ field }) => field);
    expect(unknown).toEqual(['cause']);
  });
  it('has a column in the CSV for every field that there is', () => {
    for (const field of PACK_FIELDS) expect(inCsv(pack, field), field).toBeDefined();
  });
  it('stands on the paper: places, papers, notes, looks, lengths, pool, skipped tasks, and no picture', async () => {
    const before = await paperOf(packed(log(...GIANT), 'plain', '2025-03-31'));
    for (const words of [
      'Austria asks for 1.5 m² of floor, 120 cm high: short by 40 cm of height',
      'your local code, licence or inspector decides',
    ])
      expect(before, words).toContain(plain(words));
    const text = await paperOf(pack);
    for (const words of [
      'L 24/118',
      'CITES 24-0091',
      '900255700411038',
      'Fen Hall',
      '200 × 90 × 80 cm inside, 1.8 m² of floor',
      '3.9 m',
      'a dry patch',
      'calm in the mornings',
      'both sides',
      'Prescription: the vet’s drug, Dr Reed',
      'pool drained',
      'full clean',
      'opaque',
    ])
      expect(text, words).toContain(plain(words));
    expect(text).not.toContain('UklGRg');
  });
  it('is in its own CSV table too', () => {
    const tables = new Map(packFiles(pack).map(({ name, text }) => [name, readCsv(text).length - 1]));
    expect(Object.fromEntries(tables)).toEqual({
      'animals.csv': 1,
      'feeds.csv': 1,
      'weights.csv': 1,
      'lengths.csv': 1,
      'treatments.csv': 1,
      'looks.csv': 1,
      'notes.csv': 1,
      'papers.csv': 1,
      'skipped.csv': 1,
      'cleaning.csv': 1,
      'moves.csv': 3,
    });
  });
});

describe('three years back, with the log of the demo house', () => {
  const { events } = readLog(readFileSync(join(ROOT, 'demo-data', 'site.ndjson'), 'utf8'));
  const daysOf = (pack: Pack): string[] =>
    pack.animals.flatMap(({ feeds, weights, cleaning, moves }) =>
      [...feeds, ...weights, ...cleaning, ...moves].map((row) => row.day),
    );
  const whole = packed(events, 'england', '2028-05-18');
  const later = packed(events, 'england', '2029-03-01');
  const gone = ({ animals }: Pack): number =>
    animals.filter(({ moves }) => moves.some(({ where }) => /^off the site/.test(where))).length;
  it('all that is younger than three years is told, and nothing that is older', () => {
    const moves = events.flatMap(({ kind, day: on }) => (kind === 'animal-moved' ? [on] : [])).sort();
    expect([whole.from, whole.gone]).toEqual(['2025-05-18', 0]);
    expect(daysOf(whole)).toContain(moves[0]);
    expect(later.from).toBe('2026-03-01');
    const days = daysOf(later);
    expect(days.length).toBeGreaterThan(10_000);
    expect(days.every((one) => one >= '2026-03-01')).toBe(true);
    expect(days).toContain('2026-03-01');
    expect(daysOf(whole).length).toBeGreaterThan(days.length);
  });
  it('who left in those years is told until three years are over, and then counted only', () => {
    expect(gone(whole)).toBeGreaterThan(100);
    expect(later.gone).toBeGreaterThan(20);
    expect(gone(later) + later.gone).toBe(gone(whole));
  });
  it('a pack of an earlier day says only what was known then', () => {
    const then = packed(events, 'england', '2025-12-24');
    expect(daysOf(then).every((one) => one <= '2025-12-24')).toBe(true);
    expect(then.animals.length).toBeGreaterThan(100);
  });
});
