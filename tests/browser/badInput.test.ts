import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { addDays, type LogEvent } from '../../src/core/index.ts';
import { readLog, writeLog } from '../../src/store/index.ts';
import { idOf } from '../cli/sampleSite.ts';
import { launchChromium } from '../tools/browser.ts';
import { countedOnceSent, onTheHub } from './hub.ts';
import { qrPicture, type Upload } from './qrPicture.ts';
import type { RunningApp } from './site.ts';
import { laySmallSite, MOSS, openRecord, type SmallSite, smallLog, TODAY, typeId } from './smallSite.ts';

let site: SmallSite;
let app: RunningApp;
let browser: Browser;
let page: Page;
let before: number;

beforeAll(async () => {
  site = await laySmallSite();
  app = await site.start();
  browser = await launchChromium();
  page = await browser.newPage({ viewport: { width: 390, height: 844 } });
  await page.goto(`${app.url}/`);
  await page.getByText('Hold a card in the frame').waitFor();
  before = (await onTheHub(app)).length;
}, 60_000);

afterAll(async () => {
  await browser?.close();
  await app?.stop();
  site?.clear();
});

const strip = () => page.getByRole('region', { name: 'Last entries' });
const button = (name: string | RegExp) => page.getByRole('button', { name, exact: typeof name === 'string' });

/** What the newest line of the strip says once it says this much. */
async function stripSays(words: string): Promise<string> {
  const line = strip().getByRole('listitem').first();
  await expect.poll(() => line.textContent(), { timeout: 20_000 }).toContain(words);
  return (await line.textContent()) ?? '';
}

describe('a code or an id that is not ours is named, not opened', () => {
  test.each([
    ['a sound id of another site', () => idOf(900), 'this site has no record of it', 'If the animal is new, add it'],
    ['an id with a letter wrong', () => wrongLetter(MOSS.id), 'its check letter does not fit', 'Compare it'],
    ['a word', () => 'moss', 'is not a Tubwright id', 'eight letters and digits'],
  ])('%s', async (_case, text, says, remedy) => {
    await page.goto(`${app.url}/`);
    await typeId(page, text());
    expect(await stripSays(says)).toContain(remedy);
    expect(page.url()).toBe(`${app.url}/`);
    // What was typed stays, so that one letter can be mended.
    expect(await page.getByRole('textbox', { name: 'Id on the card' }).inputValue()).toBe(text());
  });

  test.each([
    ['an address elsewhere', `https://other.example/${MOSS.id}`, 'belongs to other.example'],
    ['a script', 'javascript:document.title=1', 'holds text that no card of ours holds'],
    ['an address that hides its host', `HTTPS://TUBS.EXAMPLE@EVIL.EXAMPLE/${MOSS.id}`, 'hides its host'],
    ['a shop’s code', 'HELLO WORLD 4006381333931', 'not one of ours'],
  ])('%s in a photo', async (_case, text, says) => {
    await page.goto(`${app.url}/`);
    await upload(await qrPicture(text));
    expect(await stripSays(says)).toContain('It was not opened.');
    expect(page.url()).toBe(`${app.url}/`);
    expect(await page.title()).toContain('Scan');
  });

  test('half a code in a photo is told apart, and a whole one opens its record', async () => {
    const whole = await qrPicture(`HTTPS://TUBS.EXAMPLE/${MOSS.id}`);
    await page.goto(`${app.url}/`);
    await upload(halfOf(whole));
    expect(await stripSays('There is no whole code in this picture')).toContain('Take it again from closer');
    await upload({ name: 'notes.txt', mimeType: 'image/png', buffer: Buffer.from('no picture') });
    await stripSays('“notes.txt” is not a picture that this browser can open.');
    await upload(whole);
    await page.waitForURL(`**/animal/${MOSS.id}`);
  });
});

describe('a figure that cannot be is refused where it was typed', () => {
  test('a weight that no snake has, one that can be read twice, and one that food does not explain', async () => {
    await openRecord(page, app, MOSS);
    await button('Weighed').click();
    const sheet = page.getByRole('dialog');
    const field = page.getByLabel('Weight as the scale shows it');
    for (const [typed, says] of [
      ['900 kg', '900000 g is not a weight that a snake has'],
      ['-5', '“-5” is not a number'],
      ['1,200', '“1,200” can be 1200 g or 1.2 g'],
      ['3 stone', 'has no unit that is known here'],
      ['', 'is not a number'],
    ] as const) {
      await field.fill(typed);
      await button('Write weight').click();
      await sheet.getByText(says).waitFor();
      expect(await field.inputValue()).toBe(typed);
    }
    await field.fill('9000');
    await button('Write weight').click();
    await sheet.getByText('9,000 g is 10 times the last weight, 900 g.').waitFor();
    await button('No, write nothing').click();
    await page.getByRole('region', { name: 'Ledger' }).getByText('Weighed 900 g').waitFor();
    expect(await page.getByText('9,000 g').count()).toBe(0);
  });

  test('a day in the future', async () => {
    await openRecord(page, app, MOSS);
    await page.getByText('All actions, and on another day').click();
    await page.getByLabel('On another day').fill(addDays(TODAY, 3));
    await button('Water changed').click();
    expect(await stripSays('lies in the future')).toContain('Nothing was written.');
  });

  test('nothing of all that was written', async () => {
    expect(await countedOnceSent(page, app)).toBe(before);
  });
});

describe('an event file in Books', () => {
  const importing = () => page.locator('.import');
  const choose = async (name: string, text: string): Promise<void> => {
    await page.goto(`${app.url}/books`);
    await importing()
      .locator('input[type=file]')
      .setInputFiles({ name, mimeType: 'text/plain', buffer: Buffer.from(text) });
  };

  test('that was edited is said to be, and nothing of it is taken unless the keeper says so', async () => {
    const edited = writeLog(smallLog()).replace('"weightG":900', '"weightG":950');
    await choose('edited.ndjson', edited);
    await importing().getByText('Not all of edited.ndjson is sound.').waitFor();
    expect(await importing().textContent()).toContain('was changed after it was written');
    await button('Take nothing').click();
    expect(await importing().getByText('Not all of').count()).toBe(0);
  });

  test('that was cut gives its sound lines when asked to', async () => {
    const lines = readFileSync(site.file, 'utf8').split('\n');
    const cut = `${lines.slice(0, 20).join('\n')}\n${lines[20]?.slice(0, 90)}`;
    await choose('cut.ndjson', cut);
    await importing().getByText('The file ends in the middle of line 21.').waitFor();
    await button('Take the 20 sound entries').click();
    expect(await importing().locator('.done-line').textContent()).toContain('20 were here already');
  });

  test('that holds no events is refused in words', async () => {
    await choose('letter.txt', 'Dear keeper,\nthis is no log.\n');
    await importing().getByText('“letter.txt” holds no events.').waitFor();
  });

  test('that was exported here comes back whole, with its seal', async () => {
    await page.goto(`${app.url}/books`);
    const download = page.waitForEvent('download');
    await button('Export the whole log').click();
    const file = join(site.folder, 'export.ndjson');
    await (await download).saveAs(file);
    const read = readLog(readFileSync(file, 'utf8'));
    expect(read).toMatchObject({ sealed: true, problems: [] });
    expect(idsOf(read.events)).toEqual(idsOf(await onTheHub(app)));
    await choose('export.ndjson', readFileSync(file, 'utf8'));
    expect(await importing().locator('.done-line').textContent()).toContain('The seal fits: nothing is missing.');
  });
});

const idsOf = (events: readonly LogEvent[]): readonly string[] => events.map(({ id }) => id).sort();

async function upload(picture: Upload): Promise<void> {
  await page.locator('input[type=file]').setInputFiles(picture);
}

/** The id with its third letter changed to one that another animal could not have either. */
function wrongLetter(id: string): string {
  return `${id.slice(0, 2)}${id[2] === 'A' ? 'B' : 'A'}${id.slice(3)}`;
}

function halfOf({ buffer }: Upload): Upload {
  const [whole, half] = [join(site.folder, 'whole.png'), join(site.folder, 'half.png')];
  writeFileSync(whole, buffer);
  execFileSync('ffmpeg', ['-y', '-loglevel', 'error', '-i', whole, '-vf', 'crop=iw*0.55:ih:0:0', half]);
  return { name: 'half.png', mimeType: 'image/png', buffer: readFileSync(half) };
}
