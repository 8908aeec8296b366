import { beforeAll, describe, expect, it } from 'vitest';
import { mintId, mintUnenrolledId, sayId } from '../../src/core/index.ts';
import { type Answers, answersOf, type Row, wrong } from './answers.ts';

/** By hand: the body 0000042 is 4 × 32 + 2 = 130, and 130 mod 37 = 19, whose letter is K. */
const ID = '0000042K';
const HOST = 'tubs.example';

const ROWS: readonly Row[] = [
  ['an id as printed', { text: ID }, { id: ID, display: '0000-042K', ok: true }],
  ['an id as read', { text: ' 0000-042k ' }, { id: ID, display: '0000-042K', ok: true }],
  ['look-alikes set right', { text: 'oOoO-O42k' }, { id: ID, display: '0000-042K', ok: true, corrected: true }],
  ['one character wrong', { text: '0000043K' }, wrong('check-failed', 'text', /its check letter does not fit/)],
  ['two characters swapped', { text: '0000024K' }, wrong('check-failed', 'text')],
  ['a check symbol that is never minted', { text: '000000Z*' }, wrong('check-failed', 'text')],
  ['a letter that no id has', { text: 'U000042K' }, wrong('not-an-id', 'text')],
  ['too short', { text: '000042K' }, wrong('not-an-id', 'text', /eight letters and digits/)],
  ['too long', { text: '00000042K' }, wrong('not-an-id', 'text')],
  ['nothing', { text: '' }, wrong('not-an-id', 'text')],
  ['a sign that cannot be seen', { text: '0000\u200b042K' }, wrong('not-an-id', 'text')],
  ['a stamp', { text: 'STAMP:FED-AS-PLANNED' }, wrong('not-an-id', 'text')],
  ['the own address', { text: `HTTPS://TUBS.EXAMPLE/${ID}`, host: HOST }, { id: ID, display: '0000-042K', ok: true }],
  ['the own address without s', { text: `http://tubs.example/${ID}`, host: HOST }, { id: ID, ok: true }],
  ['the own address of nothing', { text: 'https://tubs.example/', host: HOST }, wrong('not-an-id', 'text')],
  [
    'the own address of a wrong id',
    { text: 'https://tubs.example/0000043K', host: HOST },
    wrong('check-failed', 'text'),
  ],
  [
    'another address',
    { text: `https://other.example/${ID}`, host: HOST },
    wrong('foreign-host', 'text', /other\.example/),
  ],
  ['an address without a host of ours', { text: `https://tubs.example/${ID}` }, wrong('foreign-host', 'text')],
  [
    'a host that only begins alike',
    { text: `https://tubs.example.evil.example/${ID}`, host: HOST },
    wrong('foreign-host', 'text'),
  ],
  [
    'a host behind a name',
    { text: `https://tubs.example@evil.example/${ID}`, host: HOST },
    wrong('foreign-host', 'text'),
  ],
  ['another scheme', { text: `ftp://other.example/${ID}`, host: HOST }, wrong('foreign-host', 'text')],
  ['no address at all', { text: 'javascript:alert(1)', host: HOST }, wrong('not-an-id', 'text')],
  ['a number', { text: 42 }, wrong('case-malformed', 'text', /a text is wanted/)],
  ['an empty case', {}, wrong('case-malformed', 'text')],
  ['a list', [1], wrong('case-malformed', '', /not a JSON object/)],
  ['what is not JSON', 'nope', wrong('case-malformed', '', /not JSON/)],
  ['fields that are not known', { text: ID, colour: 'red' }, { id: ID, ok: true }],
  ['minting', { mint: { device: 7, counter: 3 } }, { id: minted(mintId(7, 3)) }],
  [
    'minting without a hub',
    { mint: { device: 7, counter: 3, enrolled: false } },
    { id: minted(mintUnenrolledId(7, 3)) },
  ],
  ['a device that cannot be', { mint: { device: 1024, counter: 0 } }, wrong('device-number', 'mint', /from 0 to 1023/)],
  ['a counter at its end', { mint: { device: 0, counter: 2 ** 24 } }, wrong('counter-spent', 'mint')],
  ['a counter below 0', { mint: { device: 0, counter: -1 } }, wrong('case-malformed', 'mint.counter')],
  ['half a device', { mint: { device: 0.5, counter: 1 } }, wrong('case-malformed', 'mint.device')],
  ['nothing to mint', { mint: null }, wrong('case-malformed', 'mint')],
];

function minted(id: ReturnType<typeof mintId>): string {
  return id.ok ? id.value : id.problem.message;
}

describe('calc id', () => {
  let ran: Answers;
  beforeAll(async () => {
    ran = await answersOf(
      'id',
      ROWS.map(([, given]) => given),
    );
  });

  it('answers every line, in order, and says by its exit code that some erred', () => {
    expect([ran.code, ran.answers.length]).toEqual([1, ROWS.length]);
  });

  it.each(ROWS.map(([name, , answer], at) => [name, at, answer] as const))('%s', (_name, at, answer) => {
    expect(ran.answers[at]).toMatchObject(answer);
  });

  it('says no more than the form has', () => {
    expect(ran.answers[0]).toEqual({ id: ID, display: '0000-042K', ok: true });
  });

  it('reads back what it mints, for every device and counter tried', async () => {
    const mints = Array.from({ length: 200 }, (_, n) => ({ mint: { device: (n * 5) % 1024, counter: n * 83_886 } }));
    const { answers } = await answersOf('id', mints);
    const ids = answers.map((one) => (one as { id: string }).id);
    const { code, answers: back } = await answersOf(
      'id',
      ids.map((id) => ({ text: sayId(id as never) })),
    );
    expect([code, back.map((one) => (one as { id: string }).id)]).toEqual([0, ids]);
    expect(new Set(ids).size).toBe(200);
  });

  it('skips blank lines and takes lines of any end', async () => {
    const { code, answers } = await answersOf('id', ['', `{"text":"${ID}"}\r`, '   ', `{"text":"${ID}"}`]);
    expect([code, answers]).toEqual([0, [expect.objectContaining({ id: ID }), expect.objectContaining({ id: ID })]]);
  });

  it('answers nothing for nothing', async () => {
    expect(await answersOf('id', [])).toEqual({ code: 0, answers: [] });
  });

  it('answers a hundred thousand lines in order', async () => {
    const { code, answers } = await answersOf(
      'id',
      Array.from({ length: 100_000 }, (_, n) => ({ mint: { device: 1, counter: n } })),
    );
    const last = answers.at(-1);
    expect([code, answers.length, last]).toEqual([0, 100_000, { id: minted(mintId(1, 99_999)) }]);
  });
});
