import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { checkSymbol } from '../../src/core/index.ts';
import { launchChromium } from '../tools/browser.ts';
import { countedOnceSent, onTheHub } from './hub.ts';
import { scannerTypes } from './keys.ts';
import type { RunningApp } from './site.ts';
import { BRACKEN, CLOVER, FERN, laySmallSite, MOSS, type SmallSite, SORREL, type Tame } from './smallSite.ts';

let site: SmallSite;
let app: RunningApp;
let browser: Browser;
let page: Page;
let touches = 0;

beforeAll(async () => {
  site = await laySmallSite();
  app = await site.start();
  browser = await launchChromium();
  page = await browser.newPage({ viewport: { width: 390, height: 844 } });
  await page.exposeFunction('touched', () => {
    touches += 1;
  });
  await page.addInitScript("addEventListener('pointerdown', () => window.touched(), { capture: true });");
}, 60_000);

afterAll(async () => {
  await browser?.close();
  await app?.stop();
  site?.clear();
});

beforeEach(async () => {
  await page.goto(`${app.url}/`);
  await page.getByText('Hold a card in the frame').waitFor();
  touches = 0;
});

const strip = () => page.getByRole('region', { name: 'Last entries' });
const sheet = (name: string) => page.getByRole('dialog', { name: `Weight of ${name}` });
const question = () => page.locator('dialog.slide-sheet-asks');
const address = ({ id }: Tame): string => `HTTPS://TUBS.EXAMPLE/${id}`;

/** Seven digits of which the check letter is G. */
function twoFaced(): string {
  for (let number = 1; ; number += 1) {
    const body = String(number).padStart(7, '0');
    const value = [...body].reduce((sum, digit) => sum * 32 + Number(digit), 0);
    if (checkSymbol(value) === 'G') return `${body}G`;
  }
}

/** Sends a line as a keeper does: once more where a busy machine let it come in pieces, which is refused and never half read. */
async function sends(line: string, seen: Locator): Promise<void> {
  for (let left = 3; left >= 0; left -= 1) {
    await scannerTypes(page, line);
    const wait = seen.waitFor({ timeout: left === 0 ? 30_000 : 8000 });
    if (
      await wait.then(
        () => true,
        (error: unknown) => {
          if (left === 0) throw error;
          return false;
        },
      )
    )
      return;
  }
}

async function weightsOnHub(): Promise<readonly [string, number][]> {
  const rows = await onTheHub(app);
  return rows
    .filter((one) => one.kind === 'animal-weighed' && one.day === new Date().toISOString().slice(0, 10))
    .map((one) => [one.subjects[0] ?? '', (one.payload as { weightG: number }).weightG]);
}

/** An animal's weights of today on the hub, when this page has nothing left to send. */
async function weightsOf({ id }: Tame): Promise<readonly number[]> {
  await countedOnceSent(page, app);
  return (await weightsOnHub()).flatMap(([of, weightG]) => (of === id ? [weightG] : []));
}

describe('a scale that types', () => {
  test('weighs three animals in a row, card and scale by turns, with no touch', async () => {
    await sends('STAMP:WEIGHED', page.getByText('Stamp: weighed'));
    const walk: readonly (readonly [Tame, string, string])[] = [
      [MOSS, '  905.5 g', '905.5 g'],
      [BRACKEN, 'ST,GS,+000910.0g', '910 g'],
      [CLOVER, '0.908kg', '908 g'],
    ];
    for (const [animal, line, said] of walk) {
      await sends(address(animal), sheet(animal.name));
      await sends(line, strip().getByText(`weighed ${said}`));
      await sheet(animal.name).waitFor({ state: 'detached' });
    }
    expect(touches).toBe(0);
    const lines = (await strip().getByRole('listitem').allTextContents()).map((line) => line.replace('Undo', ''));
    expect(lines.filter((line) => line.startsWith('✓'))).toEqual([
      '✓Clover weighed 908 g',
      '✓Bracken weighed 910 g',
      '✓Moss weighed 905.5 g',
    ]);
    await expect.poll(weightsOnHub, { timeout: 10_000 }).toEqual([
      [MOSS.id, 905.5],
      [BRACKEN.id, 910],
      [CLOVER.id, 908],
    ]);
  });

  test('is refused in words while it is not still, below zero, too much or without its unit, and may send again', async () => {
    await scannerTypes(page, 'STAMP:WEIGHED');
    await sends(address(SORREL), sheet('Sorrel'));
    for (const [line, words] of [
      ['US,GS,+000911.0g', 'while it was not still'],
      ['-3.5 g', 'which is no weight of an animal'],
      ['OL', 'too much, too little, or a fault'],
      ['911.0', 'without a unit that is taken here'],
    ] as const) {
      await sends(line, sheet('Sorrel').getByText(words));
      expect(await page.getByLabel('Weight as the scale shows it').inputValue()).toBe('');
    }
    await sends('ST,GS,+000911.0g', strip().getByText('weighed 911 g'));
  });

  test('never guesses whose weight it is, and hears the same line only once', async () => {
    await sends('ST,GS,+000500.0g', strip().getByText('nobody waits for a weight'));
    await scannerTypes(page, 'STAMP:WEIGHED');
    await sends('ST,GS,+000500.0g', strip().getByText('Nobody knows whose weight 500 g is.'));
    await sends(address(FERN), sheet('Fern'));
    await sends('903.0 g', strip().getByText('weighed 903 g'));
    const entries = await strip().getByRole('listitem').count();
    await scannerTypes(page, '903.0 g');
    await page.waitForTimeout(400);
    expect(await strip().getByRole('listitem').count()).toBe(entries);
    expect(await question().count()).toBe(0);
  });

  test('asks about a weight that the food cannot explain, and waits with the next card until it is answered', async () => {
    await scannerTypes(page, 'STAMP:WEIGHED');
    await sends(address(SORREL), sheet('Sorrel'));
    await sends('1.912 kg', question().getByText('1,912 g is 2.1 times the last weight'));
    // Its blank would press the button that has the focus, and answer for the keeper.
    for (const line of ['   912.0 g', '912.0 g']) await scannerTypes(page, line);
    await page.waitForTimeout(300);
    expect(await question().count()).toBe(1);
    await question().getByRole('button', { name: 'No, write nothing' }).focus();
    await page.keyboard.press('Space');
    await question().waitFor({ state: 'detached' });
    expect(await weightsOf(SORREL)).toEqual([911]);
  });

  test('takes the box off, weighed once by the scale itself, with both in sight', async () => {
    await page.goto(`${app.url}/animal/${BRACKEN.id}`);
    await page.getByRole('button', { name: 'Weighed', exact: true }).click();
    await sheet('Bracken').getByRole('button', { name: 'Weighed in a box?' }).click();
    await sends('ST,NT,+000120.0g', sheet('Bracken').getByText('The box of 120 g is taken off.'));
    await page.getByLabel('Weight as the scale shows it').fill('1035');
    await sheet('Bracken').getByText('Writes 915 g (1,035 g less the box of 120 g).').waitFor();
    await sends('  100.0 g', sheet('Bracken').getByText('nothing is left for the animal'));
    await scannerTypes(page, '  1031.5 g');
    // Weighed minutes ago already, so it is asked about, with both figures in the answer.
    await question()
      .getByRole('button', { name: 'Yes, write weighed 911.5 g (1,031.5 g less the box of 120 g)' })
      .click();
    await page.getByRole('region', { name: 'Ledger' }).getByText('Weighed 912 g').waitFor();
    await page.reload();
    await page.getByRole('button', { name: 'Weighed', exact: true }).click();
    await sheet('Bracken').getByText('The box of 120 g is taken off.').waitFor();
    await sheet('Bracken').getByRole('button', { name: 'No box' }).click();
    await sheet('Bracken').getByRole('button', { name: 'Weighed in a box?' }).waitFor();
  });

  test('a card that comes in while a weight is waited for is no weight', async () => {
    await scannerTypes(page, 'STAMP:WEIGHED');
    await sends(address(CLOVER), sheet('Clover'));
    await scannerTypes(page, MOSS.id);
    await page.waitForTimeout(300);
    expect(await sheet('Clover').count()).toBe(1);
    await page.getByLabel('Weight as the scale shows it').fill(MOSS.id);
    await page.getByRole('button', { name: 'Write weight' }).click();
    await sheet('Clover').getByText('is an id and no weight').waitFor();
    // Digits and a G whose check letter happens to fit: an id that nobody here knows, and a weight in grams.
    await sends(twoFaced(), sheet('Clover').getByText('can be a weight or an id'));
    expect(await weightsOf(CLOVER)).toEqual([908]);
  });
});
