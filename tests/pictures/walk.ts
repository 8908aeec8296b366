import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import type { RunningApp } from '../browser/runningApp.ts';
import { type Due, firstIn, lastClutch, type Pair, pairOfHets, youngWithParents } from './demo.ts';
import type { Shoot } from './shoot.ts';

type Walk = readonly [Due, Due, Due, Due];

const OPENING_MS = 120_000;
const PHONE = { viewport: { width: 390, height: 844 }, deviceScaleFactor: 2, isMobile: true, hasTouch: true } as const;
const DESK = { viewport: { width: 1280, height: 800 } } as const;
/** Until the mark of the last stamp has gone from the camera's picture. */
const STILL_MS = 2500;

/** A keeper's first day on the phone, picture by picture, in the order of docs/first-day.md. */
export async function takeOnThePhone(browser: Browser, app: RunningApp, walk: Walk, shoot: Shoot): Promise<void> {
  const page = await openAs(browser, PHONE);
  await takeRecord(page, app, walk[0], shoot);
  await takeRound(page, shoot);
  await takeStamps(page, walk, shoot);
  await takePrint(page, shoot);
  await takeBreeding(page, pairOfHets(), shoot);
  await takeOffline(page, walk[0], shoot);
  await takeNight(page, shoot);
  await page.context().close();
}

/** The camera reads the card in its frame, and the record opens; a feed is logged and taken back. */
async function takeRecord(page: Page, app: RunningApp, due: Due, shoot: Shoot): Promise<void> {
  await page.goto(`${app.url}/`);
  await page.waitForURL(`**/animal/${due.id}`, { timeout: OPENING_MS });
  await heading(page, due.name);
  await page.evaluate('navigator.serviceWorker.ready.then(() => true)');
  await shoot.screen(page, 'record');
  await page.getByLabel('Because: due').click();
  await page.getByLabel('Because: feed').click();
  await page.evaluate(() => scrollTo(0, 150));
  await shoot.screen(page, 'because');
  await page.getByRole('button', { name: /^Feed as planned/ }).click();
  await page
    .getByRole('button', { name: /^Undo fed as planned/ })
    .first()
    .waitFor();
  await page.getByLabel('Because: due').click();
  await page.getByLabel('Because: feed').click();
  await page.evaluate(() => scrollTo(0, 0));
  await shoot.screen(page, 'logged');
  await page.getByRole('region', { name: 'Last entries' }).getByRole('button', { name: /^Undo/ }).click();
  await page.getByText('taken back').first().waitFor();
}

/** Who is to be fed with the thaw list, the room, and an animal that is held. */
async function takeRound(page: Page, shoot: Shoot): Promise<void> {
  await go(page, '/rounds');
  await heading(page, 'Feeding round');
  await page.locator('.rounds-thaw').evaluate((thaw) => scrollTo(0, thaw.getBoundingClientRect().top + scrollY - 8));
  await shoot.screen(page, 'thaw');
  await page.locator('.rounds-walk').evaluate((walk) => scrollTo(0, walk.getBoundingClientRect().top + scrollY - 8));
  await shoot.screen(page, 'rounds');
  await go(page, '/racks');
  await page.locator('.room').waitFor();
  await shoot.screen(page, 'racks');
  const held = firstIn('hold');
  await go(page, `/animal/${held.id}`);
  await heading(page, held.name);
  await shoot.screen(page, 'hold');
}

/** The stamp: three cards in a row, then the last one again. */
async function takeStamps(page: Page, [, second, third, fourth]: Walk, shoot: Shoot): Promise<void> {
  await go(page, '/');
  await page.getByRole('button', { name: 'Take a stamp' }).click();
  await page.waitForTimeout(STILL_MS);
  await shoot.screen(page, 'stamps');
  await page.getByRole('dialog').getByRole('button', { name: 'fed as planned' }).click();
  for (const { id, name } of [second, third, fourth]) {
    await typeId(page, id);
    await page.getByRole('link', { name }).first().waitFor();
  }
  await page.getByText('waits to be sent').waitFor({ state: 'hidden' });
  await page.waitForTimeout(STILL_MS);
  await shoot.screen(page, 'scan');
  await typeId(page, fourth.id);
  await page.getByRole('button', { name: 'No, write nothing' }).waitFor();
  await shoot.screen(page, 'again');
  await page.getByRole('button', { name: 'No, write nothing' }).click();
  await page.getByRole('button', { name: 'Put down' }).click();
}

async function takePrint(page: Page, shoot: Shoot): Promise<void> {
  await go(page, '/print');
  await heading(page, 'Print cards');
  await shoot.screen(page, 'print');
  await go(page, '/books');
  await page.locator('.device-lines').waitFor();
  await page
    .locator('#chapter-backup')
    .evaluate((title) => scrollTo(0, title.getBoundingClientRect().top + scrollY - 16));
  await shoot.screen(page, 'books');
}

/** What an animal carries, its pedigree, and what a pairing can give; the pictures of docs/breeding.md. */
async function takeBreeding(page: Page, pair: Pair, shoot: Shoot): Promise<void> {
  await go(page, `/animal/${pair.dam}`);
  await page.getByRole('button', { name: 'Change traits' }).first().click();
  await page.getByRole('button', { name: 'Write traits' }).waitFor();
  await shoot.screen(page, 'traits');
  await page.keyboard.press('Escape');
  await go(page, `/pairing?sire=${pair.sire}&dam=${pair.dam}&eggs=6`);
  const looks = page.getByRole('table', { name: /^Looks of the young/ });
  await looks.waitFor();
  await looks.getByText('at least one').first().waitFor();
  await looks.evaluate((table) => scrollTo(0, table.getBoundingClientRect().top + scrollY - 120));
  await page.waitForTimeout(STILL_MS);
  await shoot.screen(page, 'pairing');
}

async function takeOffline(page: Page, due: Due, shoot: Shoot): Promise<void> {
  await page.context().setOffline(true);
  await go(page, `/animal/${due.id}`);
  await heading(page, due.name);
  await page.getByRole('button', { name: /^Feed as planned/ }).click();
  await page.getByText('1 entry waits to be sent').waitFor();
  await shoot.screen(page, 'offline');
  await page.context().setOffline(false);
}

async function takeNight(page: Page, shoot: Shoot): Promise<void> {
  await go(page, '/more');
  await page.getByText('Night, red on black').click();
  await go(page, '/rounds');
  await heading(page, 'Feeding round');
  await page.getByText('waits to be sent').waitFor({ state: 'hidden' });
  await shoot.screen(page, 'night');
}

/** The round and a record on a desk, before anybody is fed. */
export async function takeOnADesk(browser: Browser, app: RunningApp, walk: Walk, shoot: Shoot): Promise<void> {
  const page = await openAs(browser, DESK);
  await page.goto(`${app.url}/${walk[2].id}`);
  await page.locator('.ledger-line').first().waitFor({ timeout: OPENING_MS });
  await shoot.screen(page, 'desk-record');
  await go(page, '/rounds');
  await heading(page, 'Feeding round');
  await shoot.screen(page, 'desk-rounds');
  await go(page, `/pedigree/${youngWithParents()}`);
  await page.getByRole('heading', { name: /^Pedigree of/ }).waitFor();
  await page
    .getByText(/grandparents known|generations? known|Known to/)
    .first()
    .waitFor();
  await shoot.screen(page, 'pedigree');
  await go(page, '/season');
  await page.getByRole('heading', { name: 'Females by month' }).waitFor();
  await page.waitForTimeout(STILL_MS);
  await shoot.screen(page, 'season');
  await go(page, `/clutch/${lastClutch()}`);
  await page.getByRole('heading', { name: 'What the young say' }).waitFor();
  await page.waitForTimeout(STILL_MS);
  await shoot.screen(page, 'clutch');
  await page.context().close();
}

/** A device on which a keeper of the demo has written their name. */
async function openAs(browser: Browser, options: BrowserContextOptions): Promise<Page> {
  const context = await browser.newContext({ ...options, reducedMotion: 'reduce' });
  await context.addInitScript(() => localStorage.setItem('keeper', 'Tilda Marrowby'));
  return context.newPage();
}

function heading(page: Page, name: string): Promise<void> {
  return page.getByRole('heading', { name }).first().waitFor();
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
