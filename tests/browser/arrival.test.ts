import { join } from 'node:path';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { addDays, type Id, type LogEvent } from '../../src/core/index.ts';
import { run } from '../print/paper.ts';
import { expectSoundFile } from '../print/readBack.ts';
import { launchChromium } from '../tools/browser.ts';
import { layArrivalSite, Q_TUB, Q_TUB_DISPLAY } from './arrivalSite.ts';
import { onTheHub } from './hub.ts';
import { scannerTypes } from './keys.ts';
import { readWithOtherDecoder, textOf } from './paper.ts';
import { type RunningApp, startApp } from './site.ts';
import { BRACKEN, CLOVER, cardWords, FREE_TUB, MOSS, openRecord, TODAY, typeId } from './smallSite.ts';

let house: Awaited<ReturnType<typeof layArrivalSite>>;
let app: RunningApp;
let browser: Browser;
let context: BrowserContext;
let page: Page;
/** The animal that arrives: its id, and what its printed card’s code says. */
let nora: Id;
let code: string;
const faults: string[] = [];

beforeAll(async () => {
  house = await layArrivalSite();
  app = await startApp(['--data', house.data]);
  browser = await launchChromium();
  context = await browser.newContext({ viewport: { width: 390, height: 844 }, acceptDownloads: true });
  page = await context.newPage();
  page.on('pageerror', (error) => faults.push(String(error)));
  page.on('console', (said) => {
    if (/Content Security Policy/.test(said.text())) faults.push(said.text());
  });
  await page.goto(`${app.url}/more`);
  await page.getByRole('link', { name: /^Arrival/ }).click();
  await page.getByRole('heading', { name: 'An animal arrives' }).waitFor();
}, 60_000);

afterAll(async () => {
  await browser?.close();
  await app?.stop();
  house?.clear();
});

const button = (name: string | RegExp) => page.getByRole('button', { name, exact: typeof name === 'string' });
const sheet = () => page.getByRole('dialog');
const part = (name: string) => page.getByRole('region', { name, exact: true });
const ledger = () => page.getByRole('region', { name: 'Ledger' });
const words = async (of: { textContent(): Promise<string | null> }) =>
  ((await of.textContent()) ?? '').replace(/\s+/g, ' ').replaceAll('\u2060', '');

/** The hub’s events of an animal, once it has one of that kind. */
async function written(id: Id, kind: LogEvent['kind'], count = 1): Promise<readonly LogEvent[]> {
  const have = async () => (await onTheHub(app)).filter((one) => one.subjects.includes(id));
  const all = async () => (await have()).filter((one) => one.kind === kind);
  await expect.poll(async () => (await all()).length, { timeout: 20_000 }).toBe(count);
  return have();
}

async function saved(name: string): Promise<string> {
  const link = page.getByRole('link', { name: 'Save the PDF' });
  await link.waitFor({ timeout: 60_000 });
  const download = page.waitForEvent('download');
  await link.click();
  const file = join(house.folder, `${name}.pdf`);
  await (await download).saveAs(file);
  return file;
}

async function fill(lines: readonly (readonly [label: string, text: string])[]): Promise<void> {
  for (const [label, text] of lines) await page.getByLabel(label, { exact: true }).fill(text);
}

describe('an arrival', () => {
  test('that is blank says so at its line, and nothing is written', async () => {
    const before = (await onTheHub(app)).length;
    await button('Write the arrival').click();
    await page.getByText('The species is missing.').waitFor();
    await page.getByText('Nothing was written. What is wrong stands at its line.').waitFor();
    expect((await onTheHub(app)).length).toBe(before);
  });

  test('with its place scanned, its chip read and its papers is written in one go', async () => {
    await fill([
      ['Species', 'Python regius'],
      ['Name', 'Nora'],
      ['Acquired from', 'Osier Lane Snakes'],
      ['Supplier’s licence', 'licence 26/0471'],
      ['Papers that came with it', 'invoice 1183'],
      ['Microchip', '900 255 700411038'],
      ['Weight, if it was weighed', '640'],
    ]);
    await page.getByText('900 2557 0041 1038: the form of ISO 11784, number of a manufacturer.').waitFor();
    await page.getByRole('heading', { name: 'An animal arrives' }).click();
    await scannerTypes(page, Q_TUB_DISPLAY);
    await expect.poll(() => page.getByLabel('Its place').inputValue()).toBe(Q_TUB);
    expect(await page.getByLabel('Quarantine until', { exact: true }).inputValue()).toBe(addDays(TODAY, 90));
    await page.getByText('60–90 days at least (S: a veterinary web page)').waitFor();
    await page.getByLabel('No food before').fill(addDays(TODAY, 3));
    await button('Write the arrival').click();
    await sheet().getByText('It would be fed 3 days after it came; 7 days without food are usual.').waitFor();
    await button('No, write nothing').click();
    await page.getByLabel('No food before').fill(addDays(TODAY, 8));
    await button('Write the arrival').click();
    await page.getByText('is here as').waitFor();
    const link = page.getByRole('link', { name: 'Open its record' });
    nora = ((await link.getAttribute('href')) ?? '').slice('/animal/'.length) as Id;
    const events = await written(nora, 'animal-added');
    expect(events.map(({ kind }) => kind)).toEqual([
      ...[
        'animal-added',
        'origin-set',
        'microchip-set',
        'animal-moved',
        'animal-weighed',
        'hold-placed',
        'hold-placed',
      ],
    ]);
    expect(events.at(-1)).toMatchObject({ payload: { reason: 'quarantine', until: addDays(TODAY, 90) } });
  });

  test('offers its card, whose code from the paper opens the record with its flag', async () => {
    await page.getByRole('link', { name: 'Print its card' }).click();
    await button(/^Make the PDF of 1 card/).click();
    const file = await saved('card');
    code = readWithOtherDecoder(file);
    expect(code).toBe(`HTTPS://TUBS.EXAMPLE/${nora}`);
    expect(textOf(file)).toContain('Quarantine');
    await page.goto(`${app.url}/more`);
    await page.getByRole('heading', { name: 'More' }).waitFor();
    await scannerTypes(page, code);
    await page.waitForURL(`**/animal/${nora}`);
    expect(await cardWords(page)).toMatch(/Quarantine: last in the walk, own tools/);
    await part('Quarantine').getByText('It ends by the vet’s or the keeper’s word.').waitFor();
    await part('Origin and chip').getByText('licence 26/0471').waitFor();
    await page.getByText('Nothing to feed now.').waitFor();
  });

  test('is marked for two people on its record, and its card says so until somebody says that it was wrong', async () => {
    await part('Handling').getByText('No marks.').waitFor();
    await button('Change the marks …').click();
    await page.getByLabel(/^Two people/).check();
    await button('Write the marks').click();
    await part('Handling').getByText('Marked: two people.').waitFor();
    expect(await cardWords(page)).toMatch(/do not open alone/);
    expect((await written(nora, 'animal-flagged')).at(-1)).toMatchObject({ payload: { flags: ['two-people'] } });
    await button('Change the marks …').click();
    await page.getByLabel(/^Two people/).uncheck();
    await button('Write the marks').click();
    await sheet().getByText('Nora would no longer be marked: two people.').waitFor();
    await button(/^Yes, write/).click();
    await part('Handling').getByText('No marks.').waitFor();
  });
});

describe('quarantine', () => {
  test('asks before the animal moves out, or another one in', async () => {
    await page.goto(`${app.url}/`);
    await button('Take a stamp').click();
    await page.getByRole('dialog', { name: 'Stamps' }).getByRole('button', { name: 'moved' }).click();
    await scannerTypes(page, code);
    await page.getByText('Nora goes to the place that is scanned next').waitFor();
    await scannerTypes(page, FREE_TUB);
    await sheet().getByText('is no quarantine place.').waitFor();
    await button('No, write nothing').click();
    await typeId(page, CLOVER.id);
    await page.getByText('Clover goes to the place that is scanned next').waitFor();
    await scannerTypes(page, Q_TUB);
    await sheet().getByText('Clover is not in quarantine. Nora lives in Quarantine rack · Q-1 already.').waitFor();
    await button('No, write nothing').click();
    await button('Put down').click();
    expect((await written(nora, 'animal-moved')).filter(({ kind }) => kind === 'animal-moved')).toHaveLength(1);
  });

  test('is on the board with what is due, and ends by the vet’s word, asked about before its day', async () => {
    await page.goto(`${app.url}/quarantine`);
    const line = page.getByRole('listitem').filter({ hasText: 'Nora' }).first();
    await line.getByText('Since').waitFor();
    await line.getByText('due today').waitFor();
    await line.getByRole('button', { name: 'Looked well' }).click();
    await line.getByText('done today').waitFor();
    await line.getByRole('button', { name: 'End it …' }).click();
    await button('Write the end').click();
    await sheet().getByText('Nobody is named who ends the quarantine.').waitFor();
    await sheet().getByLabel('By whose word (vet or keeper)').fill('Dr Linnet Sallowfield');
    await button('Write the end').click();
    await sheet().getByText('It has been in quarantine for 0 days').waitFor();
    await button(/^Yes, write/).click();
    await page.getByText('Nobody is in quarantine.').waitFor();
    expect((await written(nora, 'hold-lifted')).at(-1)).toMatchObject({ payload: { by: 'Dr Linnet Sallowfield' } });
  });
});

describe('a length', () => {
  test('that asks for two people stands on the record, the card and the place; an unlikely one is asked about', async () => {
    await openRecord(page, app, BRACKEN);
    const measure = async (text: string) => {
      await button('Measure …').click();
      await sheet().getByLabel('Length', { exact: true }).fill(text);
      await button('Write length').click();
    };
    await measure('2.6 furlongs');
    await sheet().getByText('has no unit that is known here').waitFor();
    await sheet().getByLabel('Length', { exact: true }).fill('260');
    await button('Write length').click();
    await part('Length').getByText('Two people', { exact: true }).waitFor();
    expect(await cardWords(page)).toContain('Two people: do not open alone');
    expect(await words(part('Length'))).toContain('Never open or feed a large constrictor alone');
    await measure('2.1 m');
    await sheet().getByText('2.1 m is shorter than the 2.6 m').waitFor();
    await button('No, write nothing').click();
    await page.getByRole('link', { name: 'Rack 1 · 1-02' }).click();
    await page.getByRole('note', { name: 'Never alone' }).getByText('Two people: do not open alone.').waitFor();
  });
});

describe('leaving', () => {
  test('by sale is refused under treatment, with what to do', async () => {
    await openRecord(page, app, MOSS);
    await part('Leaving').getByText('Moss is under treatment and is not to be sold or given away.').waitFor();
    await button('Sold or given …').click();
    await button('Write sold').click();
    await sheet().getByText('Wait until the course is done or the vet has stopped it.').waitFor();
    await button('Write nothing').click();
    expect((await onTheHub(app)).filter((one) => one.kind === 'animal-left')).toEqual([]);
  });

  test('by sale leads to the hand-over sheet, whose words and code are found on the paper', async () => {
    await page.goto(`${app.url}/${nora}`);
    await part('Leaving').waitFor();
    await button('Sold or given …').click();
    await sheet().getByLabel('To whom (may stay empty)').fill('Old Kiln Serpents');
    await button('Write sold').click();
    await page.waitForURL(`**/animal/${nora}/hand-over`);
    await page.getByText(/\d pages?, ready to print/).waitFor({ timeout: 60_000 });
    await page.getByText(/^1 of 1 code, (\d+) of \1 lines read back\.$/).waitFor({ timeout: 60_000 });
    const file = await saved('hand-over');
    expectSoundFile(file);
    const text = run('pdftotext', '-layout', file, '-');
    for (const said of [
      'Nora',
      'Small House',
      'Python regius',
      '900 2557 0041 1038',
      '640 g',
      'Salmonella',
      'Received by',
    ])
      expect(text).toContain(said);
    expect(text).toMatch(/Sold +.* to Old Kiln Serpents/);
    expect(text).not.toContain('Osier Lane');
    expect(readWithOtherDecoder(file)).toBe(code);
    expect((await written(nora, 'animal-left')).at(-1)).toMatchObject({
      payload: { how: 'sold', to: 'Old Kiln Serpents' },
    });
  });

  test('the sheet is made anew without a network, with the source where that is wanted', async () => {
    await context.setOffline(true);
    await page.getByLabel('Paper').selectOption('letter');
    await page.getByText('Tell whom we had it from').click();
    await page.getByText(/\d pages?, ready to print/).waitFor({ timeout: 60_000 });
    const text = run('pdftotext', '-layout', await saved('letter'), '-');
    expect(text).toMatch(/From +Osier Lane Snakes/);
    await context.setOffline(false);
  });

  test('is taken back by undo, and the animal is here again', async () => {
    await page.getByRole('link', { name: 'Scan', exact: true }).click();
    const undo = button(/^Undo sold to Old Kiln Serpents/);
    await undo.click();
    await undo.waitFor({ state: 'detached' });
    await page.goto(`${app.url}/${nora}`);
    await button('Sold or given …').waitFor();
    await expect.poll(() => ledger().getByText('Left the site: sold').count()).toBe(1);
  });

  test('by death asks for the cause and tells of the vet; the record says how it left', async () => {
    await openRecord(page, app, CLOVER);
    await button('Died …').click();
    await sheet().getByText('speak to the vet about a necropsy at once').waitFor();
    await button('Write died').click();
    await part('Leaving').getByText('cause not known').waitFor();
    expect((await written(CLOVER.id, 'animal-left')).at(-1)).toMatchObject({ payload: { how: 'died' } });
  });

  test('when one is lost says first what to do about a large one', async () => {
    await openRecord(page, app, BRACKEN);
    await button('Lost …').click();
    await sheet().getByRole('alert').getByText('call whom your licence and local code name').waitFor();
    await button('Write nothing').click();
    expect(faults).toEqual([]);
  });
});
