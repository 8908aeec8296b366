import type { Browser, Page } from 'playwright-core';
import type { RunningApp } from '../browser/runningApp.ts';
import { type Due, firstIn } from './demo.ts';
import type { Shoot } from './shoot.ts';

type Walk = readonly [Due, Due, Due, Due];

const OPENING_MS = 120_000;
const PHONE = { viewport: { width: 390, height: 844 }, deviceScaleFactor: 2, isMobile: true, hasTouch: true } as const;
const DESK = { viewport: { width: 1280, height: 800 }, reducedMotion: 'reduce' } as const;

/** A keeper's first day on the phone, picture by picture, in the order of docs/first-day.md. */
export async function takeOnThePhone(browser: Browser, app: RunningApp, walk: Walk, shoot: Shoot): Promise<void> {
  const context = await browser.newContext({ ...PHONE, reducedMotion: 'reduce' });
  const page = await context.newPage();
  const [first, second, third, fourth] = walk;

  // The camera reads the card in its frame, and the record opens.
  await page.goto(`${app.url}/`);
  await page.waitForURL(`**/animal/${first.id}`, { timeout: OPENING_MS });
  await page.getByRole('heading', { name: first.name }).first().waitFor();
  await page.evaluate('navigator.serviceWorker.ready.then(() => true)');
  await shoot.screen(page, 'record');

  await page.getByLabel('Because: due').click();
  await page.getByLabel('Because: feed').click();
  await shoot.screen(page, 'because');
  await page.getByRole('button', { name: /^Feed as planned/ }).click();
  await page.getByRole('button', { name: /^Undo fed as planned/ }).waitFor();
  await page.getByLabel('Because: due').click();
  await page.getByLabel('Because: feed').click();
  await shoot.screen(page, 'logged');
  await page
    .getByRole('button', { name: /^Undo fed as planned/ })
    .first()
    .click();
  await page.getByText('taken back').first().waitFor();

  // The stamp: three cards in a row, then the first one again.
  await go(page, '/');
  await page.getByRole('button', { name: 'Take a stamp' }).click();
  await shoot.screen(page, 'stamps');
  await page.getByRole('dialog').getByRole('button', { name: 'fed as planned' }).click();
  for (const { id, name } of [second, third, fourth]) {
    await typeId(page, id);
    await page.getByRole('link', { name }).first().waitFor();
  }
  await page.waitForTimeout(2500);
  await shoot.screen(page, 'scan');
  await typeId(page, fourth.id);
  await page.getByRole('button', { name: 'No, write nothing' }).waitFor();
  await shoot.screen(page, 'again');
  await page.getByRole('button', { name: 'No, write nothing' }).click();
  await page.getByRole('button', { name: 'Put down' }).click();

  await go(page, '/rounds');
  await page.getByRole('heading', { name: 'Feeding round' }).waitFor();
  await shoot.screen(page, 'rounds');
  await go(page, `/animal/${firstIn('hold').id}`);
  await page
    .getByRole('heading', { name: firstIn('hold').name })
    .first()
    .waitFor();
  await shoot.screen(page, 'hold');
  await go(page, '/racks');
  await page.locator('.room').waitFor();
  await shoot.screen(page, 'racks');
  await go(page, '/print');
  await page.getByRole('heading', { name: 'Print cards' }).waitFor();
  await shoot.screen(page, 'print');
  await go(page, '/books');
  await page.locator('.device-lines').waitFor();
  await page.locator('#chapter-backup').scrollIntoViewIfNeeded();
  await page
    .locator('#chapter-backup')
    .evaluate((title) => scrollTo(0, title.getBoundingClientRect().top + scrollY - 80));
  await shoot.screen(page, 'books');

  await context.setOffline(true);
  await go(page, `/animal/${first.id}`);
  await page.getByRole('button', { name: /^Feed as planned/ }).click();
  await page.getByText('1 entry waits to be sent').waitFor();
  await shoot.screen(page, 'offline');
  await context.setOffline(false);

  await go(page, '/more');
  await page.getByText('Night, red on black').click();
  await go(page, '/rounds');
  await page.getByRole('heading', { name: 'Feeding round' }).waitFor();
  await shoot.screen(page, 'night');
  await context.close();
}

/** The same record and round on a desk. */
export async function takeOnADesk(browser: Browser, app: RunningApp, walk: Walk, shoot: Shoot): Promise<void> {
  const page = await browser.newPage(DESK);
  await page.goto(`${app.url}/${walk[2].id}`);
  await page.getByRole('heading', { name: walk[2].name }).first().waitFor({ timeout: OPENING_MS });
  await page.locator('.ledger-line').first().waitFor();
  await shoot.screen(page, 'desk-record');
  await go(page, '/rounds');
  await page.getByRole('heading', { name: 'Feeding round' }).waitFor();
  await shoot.screen(page, 'desk-rounds');
  await page.close();
}

/** Goes there as a link does. */
async function go(page: Page, path: string): Promise<void> {
  await page.evaluate((to) => {
    history.pushState(null, '', to);
    dispatchEvent(new PopStateEvent('popstate'));
  }, path);
}

async function typeId(page: Page, id: string): Promise<void> {
  await page.getByRole('textbox', { name: 'Id on the card' }).fill(id);
  await page.getByRole('button', { name: 'Open' }).click();
}
