import { copyFileSync, existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { eventLine, writeLog } from '../../src/store/index.ts';
import { eventsOf, idOf, MOSS, SITE_ROWS, siteEvents } from './sampleSite.ts';
import { freshFolder, tubwright } from './tubwright.ts';

const folder = freshFolder();
const path = (name: string) => join(folder, name);
const site = path('site.ndjson');
const text = writeLog(siteEvents());
beforeAll(() => writeFileSync(site, text));

async function checked(name: string, content: string) {
  writeFileSync(path(name), content);
  return tubwright(['check', path(name)]);
}

describe('check', () => {
  it('proves a sealed file sound', async () => {
    const { code, out, err } = await tubwright(['check', site]);
    expect([code, err]).toEqual([0, '']);
    expect(out).toMatch(/22 events, 5 animals, 5 places, 1 devices\nseal: fits/);
    expect(out).toMatch(/^sound$/m);
  });

  const lines = text.split('\n');
  const noSeal = siteEvents().map(eventLine).join('\n');
  const twin = eventsOf([['2026-11-02', 'animal-weighed', [MOSS], { weightG: 901 }]], 16).map(eventLine);
  it.each([
    ['its seal cut off within the last newline', text.slice(0, -1), /ends in the middle of line 23/],
    ['cut right before a newline', text.slice(0, text.indexOf('\n', 1500)), /ends in the middle of line \d/],
    ['cut right before the mark of a line', text.slice(0, text.indexOf(' \n', 1500)), /ends in the middle of line \d/],
    ['cut within a line', text.slice(0, 1500), /The file ends in the middle of line 6\./],
    ['cut between two lines', `${lines.slice(0, 5).join('\n')}\n`, /The file ends in the middle of line 6\./],
    ['one character changed', text.replace('"weightG":900', '"weightG":901'), /was changed after it was written/],
    ['a line taken out', lines.filter((_, at) => at !== 7).join('\n'), /was changed after it was written/],
    ['two lines swapped', [lines[1], lines[0], ...lines.slice(2)].join('\n'), /was changed after it was written/],
    ['a line after the seal', `${text}${lines[0]}\n`, /line 24 stands after the seal/],
    ['a broken line', `${noSeal}\n{"kind":"shed-seen"\n`, /Line 23 is not a whole event: it is not JSON/],
    ['a line that is no event', `${noSeal}\n{"kind":"shed-seen"}\n`, /Line 23 is not a whole event: id: /],
    ['two events with one id', `${noSeal}\n${twin}\n`, /Two different events carry the id \S{36}\./],
    ['nothing at all', '', /ends in the middle of line 1/],
  ])('finds %s', async (name, content, words) => {
    const { code, out, err } = await checked(`${name}.ndjson`, content);
    expect(code).toBe(1);
    expect(err).toMatch(words);
    expect(out).toMatch(/^not sound: \d+ found$/m);
  });

  it('passes a file without a seal, but says that nothing proves it whole', async () => {
    const { code, out } = await checked('plain.ndjson', `${noSeal}\n`);
    expect([code, out]).toEqual([0, expect.stringMatching(/^seal: none that proves that the file is whole$/m)]);
  });

  it('passes a file of another program that lacks the last newline', async () => {
    const { code, out, err } = await checked('other.ndjson', noSeal);
    expect([code, err, out]).toEqual([0, '', expect.stringMatching(/22 events/)]);
    expect((await tubwright(['export', '--site', path('other.ndjson'), '--out', path('same.ndjson')])).code).toBe(0);
    expect(readFileSync(path('same.ndjson'), 'utf8')).toBe(text);
  });

  it('notes what is odd but sound', async () => {
    const odd = eventsOf([['2026-11-02', 'animal-weighed', [idOf(77)], { weightG: 9 }]], 40);
    const future = {
      ...JSON.parse(eventLine(odd[0] as never)),
      id: '01900000-0000-7000-8000-000000000000',
      kind: 'moon-seen',
    };
    const { code, out } = await checked('odd.ndjson', `${noSeal}\n${odd.map(eventLine)}\n${JSON.stringify(future)}\n`);
    expect(code).toBe(0);
    expect(out).toMatch(/1 × “moon-seen”: a kind that this program does not know/);
    expect(out).toMatch(/2 events about it, none that adds it/);
    expect(out).toMatch(/device 9: 17 of its numbers are missing/);
  });

  it('says it in JSON too', async () => {
    const { code, out } = await tubwright(['check', path('a broken line.ndjson'), '--json']);
    expect(code).toBe(1);
    expect(JSON.parse(out)).toMatchObject({
      sound: false,
      seal: 'unsealed',
      events: 22,
      problems: [{ code: 'line-broken' }],
    });
  });
});

describe('export', () => {
  it('writes the same bytes for the same events, sealed', async () => {
    const { code, out } = await tubwright(['export', '--site', site, '--out', path('out.ndjson')]);
    expect([code, out]).toEqual([0, `${path('out.ndjson')}: 22 events, sealed\n`]);
    expect(readFileSync(path('out.ndjson'), 'utf8')).toBe(text);
  });

  it('passes nothing on that is not sound, and leaves what was there', async () => {
    writeFileSync(path('kept.ndjson'), 'as it was');
    writeFileSync(path('edited.ndjson'), text.replace('"weightG":900', '"weightG":90'));
    const { code, err } = await tubwright(['export', '--site', path('edited.ndjson'), '--out', path('kept.ndjson')]);
    expect([code, err]).toEqual([1, expect.stringMatching(/was changed after it was written/)]);
    expect(readFileSync(path('kept.ndjson'), 'utf8')).toBe('as it was');
  });

  it.each([
    ['no-such-folder/x.ndjson', /cannot be written: the folder is missing/],
    ['.', /cannot be written: it is a folder/],
  ])('says why %s cannot be written', async (out, words) => {
    const { code, err } = await tubwright(['export', '--site', site, '--out', path(out)]);
    expect([code, err]).toEqual([1, expect.stringMatching(words)]);
  });
});

describe('import', () => {
  const more = writeLog([...siteEvents(), ...eventsOf([['2026-11-26', 'shed-seen', [MOSS]]], 30)]);

  it('adds what is new to a file, once', async () => {
    copyFileSync(site, path('into.ndjson'));
    writeFileSync(path('more.ndjson'), more);
    const first = await tubwright(['import', path('more.ndjson'), '--into', path('into.ndjson')]);
    expect(first).toEqual({ code: 0, out: `${path('into.ndjson')}: 1 new events, 22 were there already\n`, err: '' });
    const before = statSync(path('into.ndjson')).mtimeMs;
    const again = await tubwright(['import', path('more.ndjson'), '--into', path('into.ndjson')]);
    expect(again.out).toMatch(/: 0 new events, 23 were there already/);
    expect(readFileSync(path('into.ndjson'), 'utf8')).toBe(more);
    expect(statSync(path('into.ndjson')).mtimeMs).toBe(before);
  });

  it('fills a hub’s folder, whose export is the file again', async () => {
    const hub = path('hub');
    expect((await tubwright(['import', path('more.ndjson'), '--into', hub])).out).toMatch(/23 new events, 0 were/);
    expect((await tubwright(['import', path('more.ndjson'), '--into', hub])).out).toMatch(/0 new events, 23 were/);
    expect((await tubwright(['check', hub])).code).toBe(0);
    expect((await tubwright(['export', '--site', hub, '--out', path('back.ndjson')])).code).toBe(0);
    expect(readFileSync(path('back.ndjson'), 'utf8')).toBe(more);
  });

  it('keeps both of two events with one id, and says so', async () => {
    const twin = eventsOf([['2026-11-02', 'animal-weighed', [MOSS], { weightG: 901 }]], 16);
    writeFileSync(path('twin.ndjson'), writeLog(twin));
    for (const into of ['into.ndjson', 'hub']) {
      const { code, err } = await tubwright(['import', path('twin.ndjson'), '--into', path(into)]);
      expect([code, err]).toEqual([1, expect.stringMatching(/Two different events carry the id .* Both were kept\./)]);
      const check = await tubwright(['check', path(into)]);
      expect([check.code, check.err]).toEqual([1, expect.stringMatching(/Two different events carry the id/)]);
    }
  });

  it('takes nothing from a file that is not sound', async () => {
    writeFileSync(path('half.ndjson'), more.slice(0, 2000));
    const { code, err } = await tubwright(['import', path('half.ndjson'), '--into', path('new-hub')]);
    expect([code, err]).toEqual([1, expect.stringMatching(/The file ends in the middle of line 8/)]);
    expect(existsSync(path('new-hub'))).toBe(false);
  });

  it('stays out of a folder that a hub is using', async () => {
    mkdirSync(path('busy'));
    writeFileSync(path('busy/events.ndjson.lock'), String(process.pid));
    const { code, err } = await tubwright(['import', site, '--into', path('busy')]);
    expect([code, err]).toEqual([1, expect.stringMatching(/is in use by process \d+\. End that program first/)]);
  });

  it('leaves no half-written file behind', () => {
    expect(readdirSync(folder).filter((name) => name.endsWith('.new'))).toEqual([]);
    expect(SITE_ROWS).toHaveLength(22);
  });
});
