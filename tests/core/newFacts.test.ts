import { describe, expect, it } from 'vitest';
import { type ItemRecord, KEPT_DEEDS, KEPT_RUNS, NO_PAPER, partsOfRun } from '../../src/core/index.ts';
import { LIMITS } from '../../src/sync/index.ts';
import { eventId, id, type Line, log, RACK, REX, rex, site, TUB, undo } from './log.ts';

const ITEM = id(41);
const onItem = { subjects: [ITEM] };
const onTub = { subjects: [TUB] };
const onSite = { subjects: [] };
const tub: Line = ['2026-03-01', 'place-added', { placeKind: 'tub', name: '3-14', walk: 1, parent: RACK }, onTub];

describe('a place', () => {
  it('takes its size, pool, name and parent from the last writer, and keeps what the writer left out of the first line', () => {
    const sizeMm = { length: 900, width: 450, height: 300 };
    const set: Line = [
      '2026-03-02',
      'place-set',
      { sizeMm, pool: { litres: 80, filtered: true }, twoPeople: true },
      onTub,
    ];
    const place = site(tub, set).places.get(TUB);
    expect(place).toMatchObject({ name: '3-14', parent: RACK, sizeMm, pool: { litres: 80 }, twoPeople: true });
    const bare: Line = ['2026-03-03', 'place-set', { name: '3-15' }, onTub];
    expect(site(tub, set, bare).places.get(TUB)).toMatchObject({
      name: '3-15',
      sizeMm: null,
      pool: null,
      twoPeople: false,
    });
  });
  it('knows the latest days of each task and who did it; two deeds of a day are one', () => {
    const water = (day: number): Line => [`2026-04-${day}`, 'water-changed', {}, { subjects: [TUB, REX] }];
    const days = Array.from({ length: 15 }, (_none, at) => at + 10);
    const { deeds, waterOn } = site(tub, ...days.map(water), water(24)).places.get(TUB) ?? {};
    expect(deeds?.water?.map(({ day }) => day)).toEqual(days.slice(-KEPT_DEEDS).map((day) => `2026-04-${day}`));
    expect(deeds?.water?.at(-1)?.keeper).toBe('Ada');
    expect(waterOn).toBe('2026-04-24');
  });
  it.each<[string, Line, string]>([
    ['part', ['2026-03-02', 'pool-served', { work: 'part', percent: 30 }, onTub], 'pool-part'],
    ['drain', ['2026-03-02', 'pool-served', { work: 'drain' }, onTub], 'pool-drain'],
    ['a look', ['2026-03-02', 'health-looked', { well: true }, { subjects: [REX, TUB] }], 'look'],
    ['a spot clean', ['2026-03-02', 'place-cleaned', { how: 'spot' }, onTub], 'spot'],
  ])('counts %s as a deed', (_what, line, task) => {
    expect(site(tub, line).places.get(TUB)?.deeds).toEqual({ [task]: [{ day: '2026-03-02', keeper: 'Ada' }] });
  });
  it('has the keeper’s own interval until one without days takes it off', () => {
    const own: Line = ['2026-03-02', 'interval-set', { task: 'water', everyDays: [2, 3] }, onTub];
    const off: Line = ['2026-03-03', 'interval-set', { task: 'water' }, onTub];
    expect(site(tub, own).places.get(TUB)?.intervals).toEqual({ water: [2, 3] });
    expect(site(tub, own, off).places.get(TUB)?.intervals).toEqual({});
  });
  it('knows a round that began and how it ended, with the second person', () => {
    const begun: Line = ['2026-03-02', 'round-started', { task: 'feeding', second: 'Bo' }, onTub];
    const ended: Line = [
      '2026-03-02',
      'round-ended',
      { task: 'feeding', done: 57, refused: 3, skipped: 0, left: 0 },
      onTub,
    ];
    expect(site(tub, begun).places.get(TUB)?.rounds.feeding).toMatchObject({ second: 'Bo', ended: null });
    const figures = { done: 57, refused: 3, skipped: 0, left: 0 };
    expect(site(tub, begun, ended).places.get(TUB)?.rounds.feeding).toMatchObject({ second: 'Bo', ended: figures });
  });
});

describe('an animal', () => {
  it('has its chip, its source with licence, and its lengths by kind', () => {
    const animal = rex(
      { source: 'a friend' },
      ['2026-03-02', 'origin-set', { source: 'Heathside', licence: 'L 12' }],
      ['2026-03-02', 'microchip-set', { code: '900000000000001' }],
      ['2026-03-02', 'animal-measured', { lengthMm: 1200, of: 'total' }],
      ['2026-03-03', 'animal-measured', { lengthMm: 1250, of: 'total', guessed: true }],
    );
    expect(animal).toMatchObject({ source: 'Heathside', licence: 'L 12', microchip: '900000000000001' });
    expect(animal.lengths).toEqual([{ day: '2026-03-03', lengthMm: 1250, of: 'total', guessed: true }]);
  });
  it('is on offer since the first day, at the last price, until the offer ends', () => {
    const first: Line = ['2026-03-02', 'animal-offered', { priceMinor: 12_000 }];
    const cheaper: Line = ['2026-04-02', 'animal-offered', { priceMinor: 9_000, words: 'eats well' }];
    expect(rex({}, first, cheaper).offer).toEqual({ since: '2026-03-02', priceMinor: 9_000, words: 'eats well' });
    expect(rex({}, first, ['2026-03-09', 'offer-ended', {}]).offer).toBeNull();
  });
  it('keeps what became of it, its last look, skips and papers', () => {
    const animal = rex(
      {},
      ['2026-03-02', 'health-looked', { well: false, words: 'wheezes' }],
      ['2026-03-02', 'task-skipped', { task: 'weigh', why: 'in shed' }],
      ['2026-03-03', 'paper-kept', { mime: 'image/webp', base64: 'UklGRg==', words: 'the vet’s sheet' }],
      ['2026-03-04', 'animal-left', { how: 'given', to: 'a school' }],
    );
    expect(animal.lastLook).toEqual({ day: '2026-03-02', well: false, words: 'wheezes' });
    expect(animal.skipped).toEqual({ weigh: [{ day: '2026-03-02', keeper: 'Ada', why: 'in shed' }] });
    expect(animal.papers).toEqual([{ id: eventId(3), day: '2026-03-03', of: null, words: 'the vet’s sheet' }]);
    expect(animal.left).toEqual({ day: '2026-03-04', how: 'given', to: 'a school', cause: null });
  });
});

describe('skips of a task', () => {
  const skip = (on: string, why: string): Line => [on, 'task-skipped', { task: 'weigh', why }];
  it('are kept one a day, so that a later one does not hide that of a past round', () => {
    const { skipped } = rex({}, skip('2026-03-02', 'in shed'), skip('2026-03-09', 'moved'), skip('2026-03-09', 'ill'));
    expect(skipped['weigh']?.map(({ day: on, why }) => [on, why])).toEqual([
      ['2026-03-02', 'in shed'],
      ['2026-03-09', 'ill'],
    ]);
  });
});

describe('an item of the shop', () => {
  const mug: Line = ['2026-03-01', 'ware-set', { name: 'Mug', priceMinor: 900, lowAt: 2, edition: 20 }, onItem];
  const stocked = (count: number): Line => ['2026-03-02', 'item-stocked', { count }, onItem];
  const sold = (on: string, count: number): Line => [on, 'item-sold', { count, priceMinor: 900 }, onItem];
  const item = (...lines: readonly Line[]): ItemRecord | undefined => site(...lines).items.get(ITEM);

  it('is what was made less what was sold and lost, and a count begins anew', () => {
    const wasted: Line = ['2026-03-04', 'item-wasted', { count: 1, why: 'broken' }, onItem];
    const counted: Line = ['2026-03-05', 'item-counted', { count: 14 }, onItem];
    expect(item(mug, stocked(20), sold('2026-03-03', 3), wasted)).toMatchObject({
      made: 20,
      sold: 3,
      wasted: 1,
      left: 16,
    });
    expect(item(mug, stocked(20), sold('2026-03-03', 3), wasted, counted, sold('2026-03-06', 1))).toMatchObject({
      left: 13,
      countedOn: '2026-03-05',
      lastSoldOn: '2026-03-06',
    });
  });
  it('costs what the last writer said, and a slip brings the price back', () => {
    const priced: Line = ['2026-03-02', 'item-priced', { priceMinor: 1100 }, onItem];
    expect(item(mug, priced)?.priceMinor).toBe(1100);
    expect(item(mug, priced, undo('2026-03-03', 1, onItem))?.priceMinor).toBe(900);
  });
  it('made of a shed skin keeps what the animal was called on that day', () => {
    const made: Line = [
      '2026-03-05',
      'shed-item-made',
      { shown: 'Nora', species: 'Python regius', shedOn: '2026-03-04', priceMinor: 500, count: 2 },
      { subjects: [ITEM, REX] },
    ];
    expect(item(made)).toMatchObject({
      kind: 'shed',
      name: 'Nora',
      animal: REX,
      shedOn: '2026-03-04',
      made: 2,
      left: 2,
    });
  });
});

describe('the site’s paper', () => {
  const paper = (...lines: readonly Line[]) => site(...lines).site.paper;
  const printer = (name: string, removed?: boolean): Line => [
    '2026-03-01',
    'own-printer-set',
    { printer: 'own-p', name, dotsPerMm: 8, insetDots: 0.25, ...(removed && { removed }) },
    onSite,
  ];
  const laid = (run: string): Line => [
    '2026-03-02',
    'run-laid',
    { run, what: 'card', stock: 'a4-85x54', ids: [REX], revisions: ['a'], lastPages: [9], pages: 9 },
    onSite,
  ];
  const printed = (run: string, toPage: number): Line => ['2026-03-03', 'run-printed', { run, toPage }, onSite];

  it('is ours alone before somebody adds to it', () => {
    expect(paper()).toEqual(NO_PAPER);
  });
  it('has each printer by its last writer, until it is taken off', () => {
    expect(paper(printer('A'), printer('B')).printers).toMatchObject([{ name: 'B' }]);
    expect(paper(printer('A'), printer('A', true)).printers).toEqual([]);
  });
  it('has the last calibration of a printer with a stock, and the day on which it was measured', () => {
    const measured = (on: string, stock: string, offsetXMm: number): Line => [
      on,
      'printer-calibrated',
      { printer: 'own-p', stock, offsetXMm, offsetYMm: 0, scaleX: 1, scaleY: 1 },
      onSite,
    ];
    const lines = [measured('2026-03-01', 'a4', 1), measured('2026-03-04', 'a4', 2), measured('2026-03-02', 'b4', 3)];
    expect(paper(...lines).calibrations).toMatchObject([
      { stock: 'a4', offsetXMm: 2, day: '2026-03-04' },
      { stock: 'b4', offsetXMm: 3, day: '2026-03-02' },
    ]);
  });
  it('knows how far a run has come, and the latest runs only', () => {
    expect(paper(laid('a'), printed('a', 7)).runs).toMatchObject([{ run: 'a', printedTo: 7, pages: 9 }]);
    expect(paper(laid('a'), printed('a', 9)).runs).toEqual([]);
    const many = Array.from({ length: KEPT_RUNS + 3 }, (_none, at) => laid(`r${at}`));
    expect(paper(...many).runs.map(({ run }) => run)).toEqual(many.slice(3).map((_one, at) => `r${at + 3}`));
  });
  it('puts a run together that was laid in parts, each by its last writer, and knows none of which one is missing', () => {
    const part = (at: number, of: number, said: string): Line => [
      '2026-03-02',
      'run-laid',
      {
        ...{ run: 'l', what: 'card', stock: 's', part: [at, of], pages: 9 },
        ids: [`n${at}`],
        revisions: [said],
        lastPages: [at],
      },
      onSite,
    ];
    expect(paper(part(2, 2, 'b')).runs).toEqual([]);
    const whole = paper(part(2, 2, 'b'), part(1, 2, 'a'), part(2, 2, 'c'));
    expect(whole.runs).toMatchObject([{ ids: ['n1', 'n2'], revisions: ['a', 'c'], lastPages: [1, 2], parts: 2 }]);
    expect(whole.runs[0]).not.toHaveProperty('part');
    expect(paper(part(1, 2, 'a'), part(2, 2, 'b'), part(3, 3, 'c')).runs).toEqual([]);
    expect(paper(part(1, 2, 'a'), part(2, 2, 'b'), laid('l')).runs).toMatchObject([{ run: 'l', ids: [REX] }]);
  });
  it.each([
    [1, 1],
    [3, 2],
    [0, 2],
    [2, 101],
  ])('refuses part %d of %d of a run', (at, of) => {
    const payload = {
      run: 'l',
      what: 'card',
      stock: 's',
      part: [at, of],
      ids: ['a'],
      revisions: ['b'],
      lastPages: [1],
      pages: 1,
    };
    expect(() => log(['2026-03-02', 'run-laid', payload as never, onSite])).toThrow();
  });
  it('cuts a run in pieces that one event takes and that fit into one message of a hub', () => {
    const long = 'x'.repeat(40);
    const many = <T>(one: T) => Array.from({ length: 12_001 }, () => one);
    const run = {
      run: 'l',
      what: 'card',
      stock: 's',
      ids: many(long),
      revisions: many(long),
      lastPages: many(12_001),
      pages: 12_001,
    };
    const parts = partsOfRun(run);
    expect(parts.map(({ part, ids }) => [part, ids.length])).toEqual([
      [[1, 3], 4000],
      [[2, 3], 4001],
      [[3, 3], 4000],
    ]);
    for (const part of parts) expect(JSON.stringify(part).length).toBeLessThan(LIMITS.pushBytes);
    expect(paper(...parts.map((part): Line => ['2026-03-02', 'run-laid', part, onSite])).runs).toMatchObject([run]);
    expect(partsOfRun({ ...run, ids: ['a'], revisions: ['b'], lastPages: [1] })).toHaveLength(1);
  });
  it.each(['a4-85x54', 'own-', 'own-Ä'])('refuses the id %s for a printer of the site’s own', (id) => {
    const line: Line = [
      '2026-03-01',
      'own-printer-set',
      { printer: id, name: 'P', dotsPerMm: 8, insetDots: 0 },
      onSite,
    ];
    expect(() => log(line)).toThrow();
  });
});
