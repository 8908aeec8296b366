import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { LAYOUT_TEST, readPayload } from '../../scanner/index.ts';
import type { ProblemCode } from '../../src/core/index.ts';
import { anId } from './samples.ts';

const HOST = 'TUBS.EXAMPLE';
const ID = anId(1);

const codeOf = (text: string, host: string | undefined = HOST): ProblemCode | 'ok' => {
  const read = readPayload(text, { host });
  return read.ok ? 'ok' : read.problem.code;
};

describe('what our own codes say', () => {
  test.each([
    ['a bare id', ID],
    ['a bare id as a person types it', `${ID.slice(0, 4)}-${ID.slice(4)}`],
    ['a bare id with spaces', ` ${ID.slice(0, 4)} ${ID.slice(4)} `],
    ['a bare id in lower case', ID.toLowerCase()],
    ['the printed address', `HTTPS://${HOST}/${ID}`],
    ['the address in lower case', `https://${HOST}/${ID}`.toLowerCase()],
    ['the address with a folder', `HTTPS://${HOST}/T/${ID}`],
  ])('%s is the id', (_, text) => {
    expect(readPayload(text, { host: HOST })).toEqual({ ok: true, value: { kind: 'id', id: ID, corrected: false } });
  });

  test('a host with a port is the host with that port only', () => {
    expect(codeOf(`HTTPS://TUBS.EXAMPLE:8443/${ID}`, 'tubs.example:8443')).toBe('ok');
    expect(codeOf(`HTTPS://TUBS.EXAMPLE:8443/${ID}`)).toBe('foreign-host');
  });

  // Crockford, "Base 32" (2002), archived: i and l are read as 1, o as 0, case and hyphens do not matter; the number 42
  // is 1A with the check symbol 5. The number 1234 (16J, D) was worked out for this project, not taken from the page.
  test.each([
    ['0000-01A5', '000001A5', false],
    ['0000-01a5', '000001A5', false],
    ['oOO0-OlA5', '000001A5', true],
    ['0000-0iA5', '000001A5', true],
    ['0000-16JD', '000016JD', false],
  ])('%s is the id %s', (text, id, corrected) => {
    expect(readPayload(text)).toEqual({ ok: true, value: { kind: 'id', id, corrected } });
  });

  test('the worked example with another check letter fails its check', () => {
    expect(codeOf('0000-01AA')).toBe('check-failed');
  });

  test.each(['FED-AS-PLANNED', 'WATER', 'OK', 'A'.repeat(30)])('the stamp %s is read', (stamp) => {
    expect(readPayload(`STAMP:${stamp}`)).toEqual({ ok: true, value: { kind: 'stamp', stamp } });
    expect(readPayload(`stamp:${stamp.toLowerCase()}`)).toEqual({ ok: true, value: { kind: 'stamp', stamp } });
  });

  test.each(['', 'A', 'A'.repeat(31), 'FED_AS', 'FED AS', 'FED1', '../BOOKS', '__PROTO__', 'ſHED'])(
    'the stamp name “%s” is refused',
    (name) => {
      expect(codeOf(`STAMP:${name}`)).toBe('foreign-code');
    },
  );

  test.each(['CALIBRATE:A4-63.5X38.1/OFFICE-600', 'calibrate:a4-63.5x38.1/office-600'])(
    '“%s” names the paper and the printer of a calibration page',
    (text) => {
      const value = { kind: 'calibration', stock: 'a4-63.5x38.1', printer: 'office-600' };
      expect(readPayload(text)).toEqual({ ok: true, value });
    },
  );

  test.each(['CALIBRATE:', 'CALIBRATE:A4', 'CALIBRATE:A4/', 'CALIBRATE:/X', 'CALIBRATE:A4/X/Y', 'CALIBRATE:A4/../X'])(
    '“%s” is no such page',
    (text) => {
      expect(codeOf(text)).toBe('foreign-code');
    },
  );

  test('the layout test is known, and its garbled forms are known as such', () => {
    expect(readPayload(LAYOUT_TEST)).toEqual({ ok: true, value: { kind: 'layout-test' } });
    // As a US scanner comes out on a German and on a French keyboard (from memory of those keyboards).
    expect(codeOf('LAZOUTÖZYßQW-0123')).toBe('scanner-layout');
    expect(codeOf('LQYOUTMYW)AZ!à&é"')).toBe('scanner-layout');
  });
});

describe('the number of a ware', () => {
  // GS1's own examples, through the project's notes; twelve digits are thirteen with a 0 before them.
  test.each([
    ['6291041500213', '6291041500213'],
    ['036000291452', '0036000291452'],
    [' 7300011000017', '7300011000017'],
  ])('“%s” is %s', (text, digits) => {
    expect(readPayload(text)).toEqual({ ok: true, value: { kind: 'ware', digits } });
  });
  test('of eight digits is an id before it is anything else', () => {
    expect(codeOf('96385074')).toBe('check-failed');
  });
});

describe('what is not ours', () => {
  test.each<[string, string, ProblemCode]>([
    ['a wrong check letter', `${ID.slice(0, 7)}${ID.endsWith('A') ? 'B' : 'A'}`, 'check-failed'],
    ['two characters swapped', `${ID[1]}${ID[0]}${ID.slice(2)}`, 'check-failed'],
    ['nothing', '', 'not-an-id'],
    ['one character missing', ID.slice(1), 'not-an-id'],
    ['one character too many', `${ID}7`, 'not-an-id'],
    ['the address of a page of ours', `HTTPS://${HOST}/`, 'not-an-id'],
    ['an id with a query behind it', `HTTPS://${HOST}/${ID}?a=1`, 'not-an-id'],
    // Worked examples of the GS1 check digit pages.
    ['a ware’s number of 13 digits with a wrong check', '6291041500214', 'ware-misread'],
    ['a ware’s number of 12 digits with a wrong check', '036000291453', 'ware-misread'],
    ['a number of 14 digits', '10012345600019', 'foreign-code'],
    ['words', 'hello there, keeper', 'foreign-code'],
    ['full-width letters', 'ＨＴＴＰＳ：／／ＴＵＢＳ', 'foreign-code'],
    ['a path without a scheme', '//tubs.example/x', 'foreign-code'],
  ])('%s is refused with its own reason', (_, text, code) => {
    expect(codeOf(text)).toBe(code);
  });

  test.each([
    ['another site', `HTTPS://OTHER.EXAMPLE/${ID}`, 'other.example'],
    ['a host that starts like ours', `HTTPS://${HOST}.OTHER.EXAMPLE/${ID}`, 'tubs.example.other.example'],
    ['a host that ends like ours', `HTTPS://NOT-${HOST}/${ID}`, 'not-tubs.example'],
    ['our host further back', `HTTPS://OTHER.EXAMPLE/${HOST}/${ID}`, 'other.example'],
    ['our host behind a backslash', `HTTPS://OTHER.EXAMPLE\\@${HOST}/${ID}`, 'other.example'],
    ['our host in the query', `HTTPS://OTHER.EXAMPLE?${HOST}/${ID}`, 'other.example'],
  ])('%s is refused by its name', (_, text, host) => {
    const read = readPayload(text, { host: HOST });
    expect(read).toMatchObject({ ok: false, problem: { code: 'foreign-host' } });
    expect(!read.ok && read.problem.message).toContain(` ${host},`);
  });

  test('without a host of its own the site takes no address at all', () => {
    expect(readPayload(`HTTPS://${HOST}/${ID}`)).toMatchObject({ ok: false, problem: { code: 'foreign-host' } });
  });
});

describe('hostile content', () => {
  test.each([
    ['a script', 'javascript:alert(1)'],
    ['a script in capitals behind a space', ' JAVASCRIPT:alert(1)'],
    ['a page in the code', 'data:text/html,<script>alert(1)</script>'],
    ['a plain address', `http://${HOST}/${ID}`],
    ['a file', 'file:///etc/passwd'],
    ['a call', 'tel:+10000000000'],
    ['a network key', 'WIFI:T:WPA;S:x;P:y;;'],
    ['a message', 'smsto:1:hello'],
    ['an app link', 'intent://x#Intent;scheme=y;end'],
    ['a user name before the host', `HTTPS://${HOST}@OTHER.EXAMPLE/${ID}`],
    ['a host of look-alike letters', `HTTPS://TUВS.EXAMPLE/${ID}`],
    ['a host in brackets', `HTTPS://[::1]/${ID}`],
    ['no host', `HTTPS:///${ID}`],
    ['201 characters', `HTTPS://${HOST}/`.padEnd(201, 'A')],
    ['a line break', `${ID}\n`],
    ['a zero byte', `${ID}\u0000`],
    ['a tabulator', `\t${ID}`],
    ['an escape sign', `\u001b[2J${ID}`],
    ['a high control character', `${ID}\u0085`],
    ['a turn of reading', `\u202e${ID}`],
    ['an isolate', `\u2066${ID}\u2069`],
    ['an Arabic letter mark', `\u061c${ID}`],
    ['a space of no width', `${ID.slice(0, 4)}\u200b${ID.slice(4)}`],
    ['a byte order mark', `\ufeff${ID}`],
    ['a soft hyphen', `${ID.slice(0, 4)}\u00ad${ID.slice(4)}`],
    ['a line separator', `${ID}\u2028`],
    ['half of a pair', `${ID}\ud800`],
    ['a tag letter', `${ID}\u{e0041}`],
  ])('%s is hostile', (_, text) => {
    expect(codeOf(text)).toBe('hostile-code');
  });

  test('200 characters are read, not refused for their length', () => {
    expect(codeOf('A'.repeat(200))).toBe('foreign-code');
  });

  test('what is said of a refused code never holds more than a line of it', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 400 }), (text) => {
        const read = readPayload(text, { host: HOST });
        return read.ok || read.problem.message.length < 200;
      }),
    );
  });
});

describe('laws', () => {
  const pieces = fc.constantFrom(
    'HTTPS://',
    'STAMP:',
    'CALIBRATE:',
    'LAYOUT:',
    HOST,
    '/',
    ID,
    '@',
    '\\',
    ':',
    '-',
    '%00',
    ' ',
    '?',
  );
  const anything = fc.oneof(
    fc.string({ unit: 'binary', maxLength: 260 }),
    fc.string({ unit: 'grapheme', maxLength: 60 }),
    fc.array(fc.oneof(pieces, fc.string({ maxLength: 4 })), { maxLength: 8 }).map((parts) => parts.join('')),
  );

  test('no text makes reading throw, and every answer is a value or a problem with a remedy', () => {
    fc.assert(
      fc.property(anything, fc.option(fc.string(), { nil: undefined }), (text, host) => {
        const read = readPayload(text, { host });
        return read.ok || read.problem.remedy.length > 0;
      }),
      { numRuns: 5000 },
    );
  });

  test('an id comes only from itself or from the site’s own address', () => {
    fc.assert(
      fc.property(anything, (text) => {
        const read = readPayload(text, { host: HOST });
        if (!read.ok || read.value.kind !== 'id') return true;
        const last = text.slice(text.lastIndexOf('/') + 1);
        return text === last || text.trim().toUpperCase().startsWith(`HTTPS://${HOST}/`);
      }),
      { numRuns: 5000 },
    );
  });

  test('every minted id is read back from each of its forms', () => {
    fc.assert(
      fc.property(fc.nat(2 ** 24 - 1), (counter) => {
        const id = anId(counter);
        return [id, `HTTPS://${HOST}/${id}`, id.toLowerCase()].every((text) => {
          const read = readPayload(text, { host: HOST });
          return read.ok && read.value.kind === 'id' && read.value.id === id && !read.value.corrected;
        });
      }),
    );
  });
});
