import { describe, expect, it } from 'vitest';
import { tubwright } from './tubwright.ts';

const NAMES = [
  'start',
  'cards',
  'labels',
  'tags',
  'lists',
  'calibrate',
  'due',
  'thaw',
  'order',
  'pack',
  'hand-over',
  'check',
  'export',
  'import',
  'calc',
];

describe('the command line', () => {
  it('lists every command, and none that does not work', async () => {
    const { code, out } = await tubwright(['--help']);
    const listed = out.split('\n').flatMap((line) => /^ {2}([\w-]+) {2}/.exec(line)?.[1] ?? []);
    expect([code, listed]).toEqual([0, NAMES]);
  });

  it.each(NAMES)('%s has its own help', async (name) => {
    const { code, out, err } = await tubwright([name, '--help']);
    expect([code, err]).toEqual([0, '']);
    expect(out).toMatch(new RegExp(`^tubwright ${name} `));
  });

  it('says its version', async () => {
    expect(await tubwright(['--version'])).toEqual({ code: 0, out: '0.4.0\n', err: '' });
  });

  it.each([
    [[], /tubwright COMMAND/],
    [
      ['sweep'],
      /There is no command “sweep”\. Take one of: start, cards, labels, tags, lists, calibrate, due, thaw, order, pack, hand-over, check, export, import, calc\./,
    ],
    [['help', 'sweep'], /There is no command “sweep”/],
    [['due'], /--site is missing\. See `tubwright due --help`\./],
    [['due', '--sit', 'x'], /there is no --sit; there are --site, --on, --task, --state, --json, --help/],
    [['due', '--site'], /--site needs a value behind it/],
    [['due', '--json=yes', '--site', 'x'], /--json takes no value/],
    [['due', 'site.ndjson'], /“site.ndjson” has no option before it/],
    [['due', '--site', 'x', '--on', '25.11.2026'], /“25.11.2026” is not a date\. Write year, month and day/],
    [['due', '--site', 'x', '--on', '2026-02-30'], /“2026-02-30” is not a date/],
    [['due', '--site', 'x', '--task', 'dusting'], /--task cannot be “dusting”\. Give one of feeding, water, spot/],
    [['due', '--site', 'x', '--task', 'water', '--state', 'vet'], /--state cannot be “vet”\. Give some of soon,due/],
    [['due', '--site', 'x', '--state', 'hungry'], /--state cannot be “hungry”\. Give some of due,soon/],
    [['due', '--site', 'no-such.ndjson'], /There is no no-such\.ndjson\. Look at the name and the folder/],
    [['check'], /FILE is missing/],
    [['check', 'a', 'b'], /“b” is one word too many/],
    [['export', '--site', 'x', '--out', 'y', '--format', 'csv'], /--format cannot be “csv”\. Give one of ndjson/],
    [['calc'], /KIND is missing/],
    [
      ['calc', 'shade'],
      /There is no kind of calculation “shade”\. Take one of: id, prey, due, cross, evidence, clutch-test, pedigree, carriers, season-plan, dose, enclosure, metabolism, gtin\./,
    ],
    [['order', '--site', 'x'], /--weeks is missing\. See `tubwright order --help`\./],
    [['order', '--site', 'x', '--weeks', '40'], /--weeks cannot be “40”\. Give a whole number from 1 to 26/],
    [
      ['order', '--site', 'x', '--weeks', '8', '--lead', 'soon'],
      /--lead cannot be “soon”\. Give a whole number from 0/,
    ],
    [['start', '--port', '80000'], /--port cannot be “80000”\. Give a whole number from 0 to 65535/],
  ] as const)('%j is refused in words', async (args, words) => {
    const { code, out, err } = await tubwright(args);
    expect([code, out]).toEqual([1, '']);
    expect(err).toMatch(words);
    expect(err).not.toMatch(/ {4}at /);
  });
});
