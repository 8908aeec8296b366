import { spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { filmCard } from '../browser/paper.ts';
import { whenReady } from '../browser/runningApp.ts';
import { launchChromium } from '../tools/browser.ts';
import { MAIN, printed, walkOfToday } from './demo.ts';
import { takePrinted } from './printed.ts';
import { pageOf, type Shoot, shooting } from './shoot.ts';
import { takeOnADesk, takeOnThePhone } from './walk.ts';

/** `npm run pictures`: the pictures of docs/first-day.md and docs/printing.md, from the running demo and from the paper it prints. */
const INTO = 'docs/pictures';
/** The whole card in the frame of a phone held upright, and a still picture, which stays small. */
const WHOLE = { widthPx: 520, noise: 0 };

async function main(): Promise<void> {
  mkdirSync(INTO, { recursive: true });
  const folder = mkdtempSync(join(tmpdir(), 'tubwright-pictures-'));
  try {
    const walk = walkOfToday();
    const shoot = shooting(folder, INTO);
    takePaper(folder, walk[0].id, shoot);
    takePrinted(folder, walk[0].id, shoot);
    await takeScreens(folder, walk, shoot);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** The first sheet of the week's cards, and one card as it is cut out. */
function takePaper(folder: string, id: string, shoot: Shoot): void {
  const week = printed(folder, 'week', ['--stock', 'a4-85x54', '--only', 'stale']);
  shoot.paper(pageOf(week.pdf, 80, folder), 'cards');
  const one = printed(folder, 'one', ['--stock', 'card-85x54', '--only', id]);
  shoot.paper(pageOf(one.pdf, 160, folder), 'card');
}

async function takeScreens(folder: string, walk: ReturnType<typeof walkOfToday>, shoot: Shoot): Promise<void> {
  const sheet = printed(folder, 'film', ['--stock', 'a4-85x54', '--only', walk[0].id]);
  const video = filmCard(sheet.pdf, sheet.manifest.pieces[0]?.boxMm ?? [], folder, WHOLE);
  const app = await whenReady(spawn(process.execPath, [MAIN, 'start', '--demo', '--port', '0']));
  const browser = await launchChromium([
    '--use-fake-ui-for-media-stream',
    '--use-fake-device-for-media-stream',
    `--use-file-for-fake-video-capture=${video}`,
    '--font-render-hinting=none',
  ]);
  try {
    await takeOnADesk(browser, app, walk, shoot);
    await takeOnThePhone(browser, app, walk, shoot);
  } finally {
    await browser.close();
    await app.stop();
  }
}

await main();
