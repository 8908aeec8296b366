import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { drawGrowth } from '../../print/growth/marks.ts';
import { type Mark, openTypeface, PACK_PAPERS, type PackPaper, printPack, type Typeface } from '../../print/index.ts';
import { loadFonts } from '../../print/node/index.ts';
import { wrap } from '../../print/pack/wrap.ts';
import {
  COUNTRY_PROFILES,
  DOSE_CAUTION,
  growthPlot,
  type LogEvent,
  type Pack,
  type PackChoice,
  packOf,
  parseId,
  profileById,
} from '../../src/core/index.ts';
import { readLog } from '../../src/store/index.ts';
import { ROOT } from '../cli/tubwright.ts';
import { added, CLUTCH, day, eventId, fed, id, type Line, log, REX, refused, value, weighed } from '../core/log.ts';
import { run, withFile, wordsOf } from './paper.ts';
import { expectSoundFile } from './readBack.ts';

const ON = day('2026-11-25');
const fonts = await loadFonts();

function packed(events: readonly LogEvent[], profile = 'plain', choice: PackChoice = { of: 'all' }): Pack {
  return value(packOf(events, { choice, on: ON, profile: value(profileById(profile)) }));
}

async function pdfOf(pack: Pack, paper: PackPaper = 'a4'): Promise<Uint8Array> {
  return (await printPack({ pack, paper, fonts })).pdf;
}

function textOf(pdf: Uint8Array): Promise<string> {
  return withFile(pdf, (path) => plain(run('pdftotext', '-layout', path, '-')));
}

/** Blanks and line ends are the paper’s; a text that was wrapped is found again without them. */
function plain(text: string): string {
  return text.replace(/\s+/g, '');
}

const LONG_NAME = 'Ångström-Éclair-de-Żubrówka-the-Second-of-the-Lower-Shelf-beside-the-Door';
const WORDS = Array.from({ length: 260 }, (_none, at) => `word${at}`).join(' ');
const PRESCRIPTION = {
  drug: 'the vet’s drug',
  prescriber: 'Dr Reed',
  amount: { by: 'volume', ml: 0.2 },
  route: 'by mouth',
  everyHours: 24,
  startsOn: '2026-01-12',
} as const;
/** A year of weekly feeds and monthly weights, a laying, a long word of the vet, a name that is too long, a sign that the type lacks. */
const CROWDED: readonly Line[] = [
  ['2025-01-01', 'site-named', { name: 'House of 日 Reeds', timeZone: 'Etc/UTC' }, { subjects: [] }],
  added({ name: LONG_NAME, source: 'Reed & Sons <West>', hatchedOn: '2022-05-05', acquiredOn: '2023-01-01' }),
  ...Array.from({ length: 52 }, (_none, at) => {
    const on = new Date(Date.UTC(2025, 1, 1 + 7 * at)).toISOString().slice(0, 10);
    return at % 9 === 4 ? refused(on) : fed(on, 60 + at);
  }),
  ...Array.from({ length: 12 }, (_none, at) => weighed(`2025-${String(at + 1).padStart(2, '0')}-15`, 1400 + 20 * at)),
  ['2026-01-10', 'clutch-laid', { clutch: CLUTCH, eggs: 6, damG: 1180 }],
  ['2026-01-11', 'vet-cleared', { by: 'Dr Reed', words: WORDS }],
  ['2026-01-12', 'prescription-written', PRESCRIPTION],
  ['2026-01-12', 'dose-given', { prescription: eventId(68), ml: 0.2 }],
  ...Array.from({ length: 3 }, (_none, at) => added({ name: `Other ${at}` }, { subjects: [id(50 + at)] })),
];

describe.each(Object.keys(PACK_PAPERS) as PackPaper[])('a pack on %s', (paper) => {
  const { widthMm, heightMm } = PACK_PAPERS[paper];
  const pack = packed(log(...CROWDED), 'england');
  let pdf: Uint8Array;
  let pages: number;
  beforeAll(async () => {
    const printed = await printPack({ pack, paper, fonts });
    [pdf, pages] = [printed.pdf, printed.manifest.pages.length];
  });
  it('is a sound file with both cuts embedded, of that size', async () => {
    await withFile(pdf, (path) => {
      expectSoundFile(path);
      const info = run('pdfinfo', path);
      const [, width = '', height = ''] = /Page size:\s+([\d.]+) x ([\d.]+) pts/.exec(info) ?? [];
      expect(Number(width) * (25.4 / 72)).toBeCloseTo(widthMm, 1);
      expect(Number(height) * (25.4 / 72)).toBeCloseTo(heightMm, 1);
      expect(Number(/Pages:\s+(\d+)/.exec(info)?.[1])).toBe(pages);
    });
  });
  it('has every word inside the margins, and no two on each other', async () => {
    await withFile(pdf, (path) => {
      for (let page = 1; page <= pages; page++) {
        const words = wordsOf(path, page);
        expect(words.length).toBeGreaterThan(10);
        for (const { text, box } of words) {
          const [left, top, right, bottom] = box;
          expect(left, text).toBeGreaterThan(12);
          expect(top, text).toBeGreaterThan(6);
          expect(right, text).toBeLessThan(widthMm - 12);
          expect(bottom, text).toBeLessThan(heightMm - 6);
        }
        expect(words.flatMap((one, at) => words.slice(at + 1).filter((other) => covers(one.box, other.box)))).toEqual(
          [],
        );
      }
    });
  });
  it('cuts nothing: every word of the log is on the paper', async () => {
    const text = await textOf(pdf);
    const [rex] = pack.animals.filter((one) => one.id === REX);
    expect(rex?.feeds).toHaveLength(52);
    for (const { by } of rex?.feeds ?? []) expect(text).toContain(by);
    for (let at = 0; at < 260; at++) expect(text).toContain(`word${at}`);
    for (const words of [DOSE_CAUTION, 'Reed & Sons <West>', 'the vet’s drug, 0.2 mL'])
      expect(text).toContain(plain(words));
  });
  it('has the site, the day, the profile with its text, and the page on every page', async () => {
    await withFile(pdf, (path) => {
      for (let page = 1; page <= pages; page++) {
        const text = plain(run('pdftotext', '-layout', '-f', `${page}`, '-l', `${page}`, path, '-'));
        for (const words of ['Made on 25 Nov 2026', 'England, selling animals as pets', `page ${page} of ${pages}`])
          expect(text, `page ${page}`).toContain(plain(words));
      }
      const first = plain(run('pdftotext', '-layout', '-l', '1', path, '-'));
      for (const words of [pack.profile.law ?? '', pack.profile.source, 'House of', 'U+65E5'])
        expect(first).toContain(plain(words));
    });
  });
  it('sends the reader to the page on which each animal begins', async () => {
    await withFile(pdf, (path) => {
      const list = run('pdftotext', '-layout', '-l', '1', path, '-');
      for (const { called, display } of pack.animals.filter((one) => one.called.startsWith('Other'))) {
        const page = new RegExp(`${called} +${display}.* (\\d+)\\n`).exec(list)?.[1] ?? '';
        const text = run('pdftotext', '-f', page, '-l', page, path, '-');
        expect(text, called).toContain(`${called}\n`);
        expect(text).toContain('Asked for');
      }
    });
  });
  it('is the same bytes each time', async () => {
    expect(Buffer.from(await pdfOf(packed(log(...CROWDED), 'england'), paper)).equals(pdf)).toBe(true);
  });
});

describe('a long list', () => {
  it('goes on on the next page under its heads', async () => {
    const pdf = await pdfOf(packed(log(...CROWDED), 'plain', { of: 'only', ids: [REX] }));
    await withFile(pdf, (path) => {
      const text = run('pdftotext', '-layout', path, '-');
      const heads = text.match(/day +offered +grams +outcome +by/g) ?? [];
      expect(heads.length).toBeGreaterThan(1);
      const days = text.match(/\d+ \w{3} 202\d +1 × rat pup/g) ?? [];
      expect(days).toHaveLength(52);
    });
  });
  it('says how far it is, up to the end', async () => {
    const shares: number[] = [];
    const many = Array.from({ length: 60 }, (_none, at) => added({ name: `A${at}` }, { subjects: [id(100 + at)] }));
    await printPack({ pack: packed(log(...many)), paper: 'a4', fonts, onProgress: (share) => shares.push(share) });
    expect(shares.at(-1)).toBe(1);
    expect(shares.length).toBeGreaterThan(10);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
  });
});

const ONLY_ASKED: readonly string[] = ['owner', 'protocol', 'lacey', 'large-constrictor', 'animals-there'];

describe('for an animal of the demo facility', () => {
  const events = readLog(readFileSync(join(ROOT, 'demo-data', 'site.ndjson'), 'utf8')).events;
  const known = parseId('F7EY-TJR6');
  it.each(COUNTRY_PROFILES.map((one) => one.id))('every field of the profile %s is on the paper', async (profile) => {
    const pack = packed(events, profile, { of: 'only', ids: known.ok ? [known.value.id] : [] });
    const [animal] = pack.animals;
    const text = await textOf(await pdfOf(pack));
    for (const { asks, fields } of pack.profile.asked) {
      expect(text).toContain(plain(asks));
      for (const field of fields) {
        const says = animal?.facts.find((fact) => fact.field === field)?.says ?? 'nothing';
        expect(text, field).toContain(plain(says));
      }
    }
    // What only another profile asks for is in the CSV, and would be noise here.
    const ours = (animal?.facts ?? []).filter(({ field }) => !ONLY_ASKED.includes(field));
    expect(ours.length).toBeGreaterThan(20);
    for (const { label, says } of ours) expect(text, label).toContain(plain(says));
    for (const heading of ['Growth', 'Feeds', 'Weights', 'Health and treatment', 'Moves', 'Cleaning and water'])
      expect(text).toContain(plain(heading));
  });
});

describe('wrapped text', () => {
  const measure: Typeface = openTypeface(fonts);
  const room = { widthMm: 30, sizePt: 8.5, measure };
  it.each([LONG_NAME, WORDS, 'short', 'a 日本 b', `${'x'.repeat(200)} end`])(
    'is never wider than its room, and whole: %s',
    (text) => {
      const lines = wrap(text, 'regular', room);
      for (const { widthAtOnePt } of lines) expect(widthAtOnePt * 8.5).toBeLessThanOrEqual(30);
      const whole = text.replace('日', 'U+65E5').replace('本', 'U+672C');
      expect(plain(lines.map((line) => line.text).join(''))).toBe(plain(whole));
    },
  );
});

describe('the growth plot on paper', () => {
  const measure = openTypeface(fonts);
  const plot = growthPlot({ id: REX, species: 'Python regius' }, log(...CROWDED), ON);
  const { marks, heightMm } = drawGrowth(plot, [day('2025-01-01'), ON], 177, measure);
  const count = (is: (mark: Mark) => boolean): number => marks.filter(is).length;
  it('has a dot for each weighing and one in its key, and a bar for each feed: hollow where it was refused', () => {
    expect(count(({ kind }) => kind === 'dot')).toBe(plot.weights.length + 1);
    const isBar = (mark: Mark): boolean => mark.kind === 'rule' && mark.faint !== true && mark.widthMm < 5;
    const taken = plot.feeds.filter((feed) => feed.taken).length;
    expect(count(isBar)).toBe(taken + 1);
    const isHollow = (mark: Mark): boolean => mark.kind === 'path' && mark.fill === 'paper';
    expect(count(isHollow)).toBe(plot.feeds.length - taken + 1);
  });
  it('breaks its line at the laying, and joins nothing else', () => {
    const lines = marks.filter((mark) => mark.kind === 'path' && mark.fill === 'line' && mark.dashMm === 0);
    expect(lines.map((mark) => mark.kind === 'path' && mark.points.length)).toEqual([12]);
  });
  it('stays in its field', () => {
    for (const mark of marks) {
      const right = mark.xMm + ('widthMm' in mark ? mark.widthMm : 0);
      expect([mark.xMm >= 0, right <= 177.5, mark.yMm >= 0, mark.yMm <= heightMm]).toEqual([true, true, true, true]);
    }
  });
});

type Box = readonly [left: number, top: number, right: number, bottom: number];

/** Whether two words lie on each other by more than their boxes’ air: a box is a quarter higher than its ink. */
function covers(a: Box, b: Box): boolean {
  const across = Math.min(a[2], b[2]) - Math.max(a[0], b[0]);
  const down = Math.min(a[3], b[3]) - Math.max(a[1], b[1]);
  const lower = Math.min(a[3] - a[1], b[3] - b[1]);
  return across > 0.3 && down > lower * 0.45;
}
