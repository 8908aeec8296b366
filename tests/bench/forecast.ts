import { fileURLToPath } from 'node:url';
import {
  type Day,
  dueList,
  type Facility,
  nextFeedDue,
  orderList,
  plannedMeal,
  preyForecast,
  RESERVE_SHARE,
} from '../../src/core/index.ts';
import { launchChromium } from '../tools/browser.ts';
import { serveEntry } from '../tools/serve.ts';
import type { ForecastFound } from './forecastPage.ts';
import { ANIMALS, largeSite, ON } from './largeSite.ts';
import { leastMs, sayCount, sayMs, sayRatio } from './timing.ts';

const WEEKS = 26;
const GOAL_MS = 1000;
const ROUNDS = 5;

/** The forecast of prey for a large site, in Node and in a worker of Chromium, against asking each animal once when it eats and what. */
export async function benchForecast(): Promise<string[]> {
  const facility = largeSite(ON);
  const asked = leastMs(ROUNDS, () => askEach(facility, ON));
  const spent = leastMs(ROUNDS, () => preyForecast(facility, ON, WEEKS));
  const question = { weeks: WEEKS, leadDays: 14, reserveShare: RESERVE_SHARE };
  const order = leastMs(ROUNDS, () => orderList(facility, question, ON));
  const { classes, uncounted } = preyForecast(facility, ON, WEEKS);
  const items = classes.flatMap((one) => one.weeks).reduce((sum, week) => sum + week.most, 0);
  const worker = await inChromium();
  if (worker.items !== items) throw new Error(`Node and Chromium differ: ${items} and ${worker.items} items.`);
  const most = Math.max(...classes.map((one) => one.animals));
  return [
    `forecast of ${sayCount(ANIMALS - uncounted.length)} animals over ${WEEKS} weeks, ${classes.length} classes of prey, the largest of ${sayCount(most)} animals: ${sayMs(spent)} in Node, ${sayMs(worker.ms)} in a worker of Chromium (goal ${sayMs(GOAL_MS)})`,
    `from the page’s question to the worker’s answer, with all records copied there: ${sayMs(worker.wholeMs)}`,
    `against asking each animal when it eats and what (${sayMs(asked)}): ${sayRatio(spent, asked)}`,
    `order list for ${WEEKS} weeks and a wait of 14 days: ${sayMs(order)}`,
    `against the day’s list of the same animals (${sayMs(leastMs(ROUNDS, () => dueList(facility, ON)))}), for scale`,
  ];
}

async function inChromium(): Promise<ForecastFound> {
  // Beside this file lies the page, as TypeScript or as what became of it.
  const entry = fileURLToPath(new URL(`./forecastPage${import.meta.url.slice(-3)}`, import.meta.url));
  const served = await serveEntry(entry);
  const browser = await launchChromium();
  try {
    const page = await browser.newPage();
    await page.goto(served.url);
    await page.waitForFunction(() => 'forecastInWorker' in globalThis);
    return await page.evaluate(
      (weeks) =>
        (globalThis as unknown as { forecastInWorker(weeks: number): Promise<ForecastFound> }).forecastInWorker(weeks),
      WEEKS,
    );
  } finally {
    await browser.close();
    await served.close();
  }
}

function askEach(facility: Facility, on: Day): number {
  let known = 0;
  for (const animal of facility.animals.values())
    if (nextFeedDue(animal, on).ok && plannedMeal(animal, on).ok) known += 1;
  return known;
}
