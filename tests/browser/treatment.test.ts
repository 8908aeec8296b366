import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { DOSE_CAUTION, type EventKind, TUBE_CAUTION } from '../../src/core/index.ts';
import { launchChromium } from '../tools/browser.ts';
import { reached } from './hub.ts';
import { scannerTypes } from './keys.ts';
import { type RunningApp, startApp } from './site.ts';
import { cardWords, openRecord, type Tame, TODAY } from './smallSite.ts';
import { ASTER, BRYONY, HAZEL, IRIS, LINDEN, layTreatmentHouse, ROWAN, SEDGE, TEASEL } from './treatmentSite.ts';

let house: Awaited<ReturnType<typeof layTreatmentHouse>>;
let app: RunningApp;
let browser: Browser;
let context: BrowserContext;
let page: Page;

beforeAll(async () => {
  house = await layTreatmentHouse();
  app = await startApp(['--data', house.data]);
  browser = await launchChromium();
  context = await browser.newContext({ viewport: { width: 390, height: 844 } });
  page = await context.newPage();
  await page.goto(`${app.url}/`);
  await page.getByText('Hold a card in the frame').waitFor();
}, 60_000);

afterAll(async () => {
  await browser?.close();
  await app?.stop();
  house?.clear();
});

const sheet = () => page.getByRole('dialog');
const part = () => page.getByRole('region', { name: 'Treatment', exact: true });
const ledger = () => page.getByRole('region', { name: 'Ledger' });
const button = (name: string | RegExp) => page.getByRole('button', { name, exact: typeof name === 'string' });
const words = async (of: { textContent(): Promise<string | null> }) =>
  ((await of.textContent()) ?? '').replace(/\s+/g, ' ').replaceAll('\u2060', '');

const written = <K extends EventKind>(kind: K, { id }: Tame, count: number) => reached(app, kind, count, id);

/** Draws a dose up and confirms it with a second touch, as slowly as a hand. */
async function confirmDose(volume: string): Promise<void> {
  await sheet()
    .getByRole('button', { name: `${volume} drawn up and checked`, exact: true })
    .click();
  await sheet().getByText('Nothing is written yet.').waitFor();
  await page.waitForTimeout(500);
  await sheet()
    .getByRole('button', { name: `Once more: ${volume} drawn up and checked` })
    .click();
}

async function openForm(animal: Tame): Promise<void> {
  await openRecord(page, app, animal);
  await part().getByRole('link', { name: 'Enter a prescription' }).click();
  await page.getByRole('heading', { name: `Prescription for ${animal.name}` }).waitFor();
}

/** Copies a vet’s paper into the form, without the unit of its strength. */
async function copyPaper(): Promise<void> {
  const lines: readonly (readonly [label: string, text: string])[] = [
    ['Dose, in mg per kg of body mass', '5'],
    ['Strength on the bottle', '10'],
    ['Route, as the vet wrote it', 'by injection'],
    ['One dose every', '48'],
    ['First day', TODAY],
    ['Number of doses', '3'],
    ['Name of the vet', 'Dr Linnet Sallowfield'],
  ];
  await page.getByLabel('Drug, as the vet wrote it').fill('as the vet wrote it');
  await page.getByText('by body mass, in mg per kg').click();
  for (const [label, text] of lines) await page.getByLabel(label, { exact: true }).fill(text);
  await page.getByText('hours', { exact: true }).click();
  await page.getByText('no, feed as planned').click();
}

describe('a prescription', () => {
  test('that is blank has a problem at each line, and nothing is written', async () => {
    await openForm(IRIS);
    await button('Write the prescription').click();
    await page.getByText('Nothing was written. What is missing stands at its line.').waitFor();
    for (const missing of ['The drug is missing.', 'The route is missing.', 'The name of the vet is missing.'])
      expect(await page.getByText(missing).count()).toBe(1);
    for (const choice of ['By body mass or as a volume', 'Hours or days', 'Food'])
      expect(await page.getByText(`${choice}: nothing is chosen yet.`).count()).toBe(1);
    expect(await page.getByLabel('Drug, as the vet wrote it').evaluate((one) => one === document.activeElement)).toBe(
      true,
    );
    expect(await page.getByRole('radio', { checked: true }).count()).toBe(0);
  });

  test('without the unit of its strength says so there, and is said back whole before it is written', async () => {
    await openForm(IRIS);
    await copyPaper();
    await button('Write the prescription').click();
    const unit = page.getByRole('group', { name: 'Unit of the strength' });
    await unit.getByText('“10” has no unit that is known here.').waitFor();
    expect(await page.locator('.problem-line').count()).toBe(1);
    await unit.getByText('mg per mL', { exact: true }).click();
    const said = page.getByRole('region', { name: 'Said back' });
    await said.getByText('0.53 mL').first().waitFor();
    const sentence = await words(said);
    for (const piece of [
      'Iris gets as the vet wrote it, 5 mg per kg, at 10 mg per mL, by injection, every 48 hours (2 days), 3 doses',
      'food goes on as planned; written by Dr Linnet Sallowfield.',
      'For 1,060 g, weighed on',
      'exactly on the mark',
      DOSE_CAUTION,
    ])
      expect(sentence).toContain(piece);
    await written('prescription-written', IRIS, 0);
    await button('Write the prescription').click();
    await page.waitForURL(`**/animal/${IRIS.id}`);
    expect(await written('prescription-written', IRIS, 1)).toMatchObject([
      {
        payload: {
          amount: { by: 'mass', dose: { mgPerKg: 5 }, strength: { mgPerMl: 10 } },
          ...{ everyHours: 48, count: 3, withholdFood: false, startsOn: TODAY },
        },
      },
    ]);
    await part().getByText('First dose due today').waitFor();
    expect(await words(part())).toContain(DOSE_CAUTION);
    expect(await cardWords(page)).toContain('Under treatment, not for sale');
  });

  test('for an animal that was weighed too long ago says so, and comes to a volume once it is weighed', async () => {
    await openForm(HAZEL);
    await copyPaper();
    await page.getByText('mg per mL', { exact: true }).click();
    const said = page.getByRole('region', { name: 'Said back' });
    await said.getByText('The weight is 10 days old; for a young animal a dose needs one of at most 7 days.').waitFor();
    await said.getByRole('button', { name: 'Weigh' }).click();
    await page.getByLabel('Weight as the scale shows it').fill('904');
    await button('Write weight').click();
    await said.getByText('0.452 mL').waitFor();
    expect(await words(said)).toMatch(/0\.452 mL → rounded to 0\.45 mL 0\.44 % less than exact/);
    expect(await page.getByLabel('Dose, in mg per kg of body mass').inputValue()).toBe('5');
    // A card that is scanned meanwhile opens its record, and takes nothing away that was typed.
    await scannerTypes(page, IRIS.display);
    await page.waitForURL(`**/animal/${IRIS.id}`);
    await page.goBack();
    await page.getByText('What was typed here before was kept.').waitFor();
    expect(await page.getByLabel('Route, as the vet wrote it').inputValue()).toBe('by injection');
    await page.getByRole('link', { name: 'Write nothing' }).click();
    await page.waitForURL(`**/animal/${HAZEL.id}`);
    await written('prescription-written', HAZEL, 0);
  });
});

describe('a dose', () => {
  test('on time is confirmed twice and written once, and one more is asked about as too early', async () => {
    await openRecord(page, app, ROWAN);
    await part()
      .getByText(/^Next dose (due )?today 12:00/)
      .waitFor();
    await button('Give dose').click();
    await sheet().getByRole('img', { name: '0.62 mL on the 1 mL syringe' }).waitFor();
    expect(await words(sheet())).toContain(DOSE_CAUTION);
    await confirmDose('0.62 mL');
    await ledger().getByText('Dose given: 0.62 mL').nth(1).waitFor();
    expect((await written('dose-given', ROWAN, 2)).at(-1)).toMatchObject({ payload: { ml: 0.62, lot: 'B 7' } });
    await part().getByText('2 of 3 given, 1 left').waitFor();
    await part()
      .getByText(/^Next dose .*, in 2 days$/)
      .waitFor();

    await button('Give dose').click();
    await confirmDose('0.62 mL');
    await sheet().getByText('It is too early for the next dose.').waitFor();
    await button('No, write nothing').click();
    await written('dose-given', ROWAN, 2);
  });

  test('is not given by one touch, nor by a finger that bounced, but by one that holds', async () => {
    await openRecord(page, app, IRIS);
    await button('Give dose').click();
    const confirm = sheet().getByRole('button', { name: '0.53 mL drawn up and checked', exact: true });
    await confirm.dblclick();
    await sheet().getByText('Nothing is written yet.').waitFor();
    await button('Give nothing').click();
    await written('dose-given', IRIS, 0);
    await button('Give dose').click();
    await confirm.hover();
    await page.mouse.down();
    await page.waitForTimeout(1300);
    await page.mouse.up();
    await ledger().getByText('Dose given: 0.53 mL').waitFor();
    await written('dose-given', IRIS, 1);
  });

  test('of another volume than the one on the syringe cannot be written', async () => {
    await openRecord(page, app, LINDEN);
    await button('Give dose').click();
    // There is nothing to type a volume into, and what was drawn up does not change under the syringe.
    expect(await sheet().getByRole('spinbutton').count()).toBe(0);
    await sheet().getByText('Lot, note, second person, another time or day').click();
    for (const label of await sheet().locator('label').allTextContents()) expect(label).not.toMatch(/volume|mL/);
    await button('Give nothing').click();

    await openForm(HAZEL);
    await copyPaper();
    await page.getByText('mg per mL', { exact: true }).click();
    await button('Write the prescription').click();
    await page.waitForURL(`**/animal/${HAZEL.id}`);
    await button('Give dose').click();
    await sheet().getByRole('img', { name: '0.45 mL on the 1 mL syringe' }).waitFor();
    const other = await context.newPage();
    await openRecord(other, app, HAZEL);
    await other.getByRole('button', { name: 'Weighed', exact: true }).click();
    await other.getByLabel('Weight as the scale shows it').fill('940');
    await other.getByRole('button', { name: 'Write weight' }).click();
    await answerYes(other);
    await other.getByRole('region', { name: 'Ledger' }).getByText('Weighed 940 g').waitFor();
    await other.close();
    await confirmDose('0.45 mL');
    await sheet().getByText('The volume is 0.47 mL now, and 0.45 mL was confirmed.').waitFor();
    await button('Give nothing').click();
    await written('dose-given', HAZEL, 0);
  });

  test('that comes to ten times the earlier ones is stopped with its words', async () => {
    await openRecord(page, app, ASTER);
    await part().getByText('0.53 mL is 10.6 times what was given before on this prescription (0.05 mL).').waitFor();
    expect(await words(part())).toContain(
      'Stop. Look at weight, dose and strength again; call the vet before giving it.',
    );
    expect(await button('Give dose').count()).toBe(0);
  });

  test('asks for a second person by name where the site’s rules say so', async () => {
    await page.goto(`${app.url}/books`);
    const rules = page.getByRole('region', { name: 'Rules' });
    await rules.getByText('A second person checks each dose').click();
    await rules.getByLabel('Large constrictors').fill('3');
    await rules.getByText('two people from 3 m, three from 4.2 m').waitFor();
    await button('Save the rules').click();
    await rules.getByText('Saved.').waitFor();

    await openRecord(page, app, SEDGE);
    await part().getByText('3 doses were missed. Never give two at once to catch up').waitFor();
    await button('Give dose').click();
    await sheet().getByText('3 doses were missed. Never give two at once to catch up').waitFor();
    await confirmDose('0.71 mL');
    await sheet().getByText('This site asks for a second person at each dose.').waitFor();
    await written('dose-given', SEDGE, 1);
    await sheet().getByLabel('Second person').fill('Tilda');
    await page.waitForTimeout(500);
    await sheet()
      .getByRole('button', { name: /drawn up and checked/ })
      .click();
    await ledger().getByText('Dose given: 0.71 mL, with Tilda').waitFor();
    expect((await written('dose-given', SEDGE, 2)).at(-1)).toMatchObject({ payload: { second: 'Tilda' } });
    expect(await reached(app, 'site-rules-set', 1)).toMatchObject([
      { payload: { secondAtDoses: true, twoPeopleFromM: 3 } },
    ]);
  });
});

describe('a treatment', () => {
  test('with no food shows on Due and in the round until the vet stops it, by name', async () => {
    await openRecord(page, app, BRYONY);
    expect(await cardWords(page)).toContain(
      'no food under treatment (as the vet wrote it), as Dr Linnet Sallowfield wrote',
    );
    await page.getByText('Nothing to feed now.').waitFor();
    await page.goto(`${app.url}/rounds`);
    await button(/^Held/).click();
    await page.getByText('no food under treatment').waitFor();
    await openRecord(page, app, BRYONY);
    await button('Stopped by the vet').click();
    await button('Write stopped').click();
    await sheet().getByText('A vet’s word needs the vet’s name.').waitFor();
    await sheet().getByLabel('Name of the vet').fill('Dr Linnet Sallowfield');
    await button('Write stopped').click();
    await sheet().getByText('Nothing says why the vet stopped it.').waitFor();
    await sheet().getByLabel('Why the vet stopped it').fill('eats again');
    await button('Write stopped').click();
    await ledger().getByText('Prescription stopped by Dr Linnet Sallowfield — eats again').waitFor();
    await button(/^Feed as planned/).waitFor();
    expect(await cardWords(page)).not.toContain('treatment');
    await part().getByText('Earlier prescriptions, 1').click();
    expect(await words(part())).toContain('Stopped by Dr Linnet Sallowfield on');
  });

  test('whose course is done says so, and when the vet wants to see the animal again', async () => {
    await openRecord(page, app, TEASEL);
    await part().getByText('Course done, 1 dose given').waitFor();
    expect(await words(part())).toMatch(/Recheck by the vet .* in 9 days/);
    expect(await cardWords(page)).not.toContain('Under treatment');
  });

  test('into the stomach has a sheet for the tube that never guesses the length of the animal', async () => {
    await openRecord(page, app, LINDEN);
    expect(await words(part())).toContain(TUBE_CAUTION);
    await button('Tube feeding').click();
    expect(await words(sheet())).toContain(TUBE_CAUTION);
    await sheet().getByText('The most at once for this animal by the cap: 26.2 mL').waitFor();
    expect(await sheet().getByText('from the snout').count()).toBe(0);
    await sheet().getByText('Yes, it needs water after it').click();
    await sheet().getByText('2–3 mL').waitFor();
    await sheet().getByLabel('Snout to vent').fill('95');
    await sheet().getByText('“95” has no unit that is known here.').waitFor();
    await sheet().getByLabel('Snout to vent').fill('95 cm');
    await sheet().getByText('24.7 cm to 47.5 cm from the snout: for orientation only.').waitFor();
    await button('Write this length on the record').click();
    expect(await written('animal-measured', LINDEN, 1)).toMatchObject([
      { payload: { lengthMm: 950, of: 'snout-vent' } },
    ]);
    // Where a fluid goes in, the published range stands beside what the vet wrote, with its mark, and proposes nothing.
    await sheet().getByText('No, a liquid').click();
    await sheet()
      .getByText('Fluids, to compare with: 13.1–39.3 mL a day for 1,310 g (10–30 mL per kg and day, S: LafeberVet).')
      .waitFor();
    expect(await words(sheet())).toContain('As written: 12 mL a day. A range to compare with, not an order');
    await button('Close').click();
  });
});

describe('the treatments of the day', () => {
  test('stand in walking order with what is left, overdue and done, and the rechecks to come', async () => {
    await page.goto(`${app.url}/more`);
    await page.getByRole('link', { name: /^Treatments/ }).click();
    await page.getByRole('heading', { name: 'Treatments today' }).waitFor();
    const lines = page.getByRole('region', { name: 'In walking order' }).getByRole('listitem');
    const names = (await lines.allTextContents()).map(
      (line) => /(Iris|Hazel|Rowan|Aster|Linden|Sedge)/.exec(line)?.[0],
    );
    expect(names).toEqual(['Iris', 'Hazel', 'Rowan', 'Aster', 'Linden', 'Sedge']);
    expect(await words(page.getByLabel('Doses today'))).toMatch(/left ?3.*overdue ?0.*done ?3/);
    expect(await words(page.getByRole('region', { name: /^Course ends and rechecks/ }))).toMatch(
      /Rowan.*in 5 days.*Teasel.*in 9 days/,
    );
    expect(await words(page.locator('main'))).toContain(DOSE_CAUTION);
    expect(await page.getByRole('button', { name: 'Give dose: Aster' }).count()).toBe(0);
  });

  test('open the dose of the card that is scanned there, and say so of one that gets none', async () => {
    await page.goto(`${app.url}/treatments`);
    await page.getByRole('heading', { name: 'Treatments today' }).waitFor();
    await scannerTypes(page, BRYONY.display);
    await page.getByText('Bryony has no prescription under way.').first().waitFor();
    await scannerTypes(page, LINDEN.display);
    await sheet().getByRole('heading', { name: 'Dose for Linden' }).waitFor();
    expect(await words(sheet())).toContain(TUBE_CAUTION);
    await sheet().getByLabel('Second person').fill('Tilda');
    await confirmDose('12 mL');
    await written('dose-given', LINDEN, 1);
    await page.waitForURL(`${app.url}/treatments`);
    await page.getByRole('link', { name: /Linden.*1 of 3 given, 2 left, 1 dose today/ }).waitFor();
    expect(await page.getByRole('button', { name: 'Give dose: Linden' }).count()).toBe(0);
    await scannerTypes(page, HAZEL.display);
    await sheet().getByRole('heading', { name: 'Dose for Hazel' }).waitFor();
    await button('Give nothing').click();
  });
});

/** Says yes where a weighing is asked about. */
async function answerYes(on: Page): Promise<void> {
  const yes = on.getByRole('button', { name: /^Yes, write/ });
  const settled = on.getByRole('region', { name: 'Ledger' }).getByText('Weighed 940 g');
  await yes.or(settled).first().waitFor();
  if (await yes.isVisible()) await yes.click();
}
