import { type ChildProcess, spawn } from 'node:child_process';
import { type Browser, chromium } from 'playwright-core';
import { findProgram } from './programs.ts';

/** What the program for tests leaves off by itself; a second list of features takes the place of the first, so it stands here again. */
const NO_FEATURES = [
  ...['AvoidUnnecessaryBeforeUnloadCheckSync', 'DestroyProfileOnBrowserClose', 'HttpsUpgrades', 'PaintHolding'],
  ...['HttpsFirstBalancedModeAutoEnable', 'LensOverlay', 'MediaRouter', 'ThirdPartyStoragePartitioning'],
  ...['AvoidCorsURLLoaderRestartOnRedirect', 'OptimizationHints', 'NetworkTimeServiceQuerying', 'AimEnabled'],
  ...['PreconnectToSearch'],
  // A toolbar that nobody sees, drawn by a process of its own for each window.
  ...['InitialWebUI', 'WebUIReloadButton', 'WebUIToolbar', 'WebUISplitTabsButton', 'WebUIBackForwardButton'],
  ...['WebUIHomeButton', 'WebUILocationBar', 'PreloadTopChromeWebUI'],
];

const QUIET = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--in-process-gpu',
  `--disable-features=${NO_FEATURES.join()}`,
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** A browser with a fresh profile; close it when the test is done. Fails in words when there is no Chromium. */
export async function launchChromium(extraArgs: readonly string[] = []): Promise<Browser> {
  return chromium.launch({ executablePath: chromiumPath(), args: [...QUIET, ...extraArgs] });
}

/** A browser on a profile of its own that can be killed like a phone whose battery falls out. */
export interface Mortal {
  readonly browser: Browser;
  /** Ends every process of it at once; nothing is flushed or said goodbye to. */
  kill(): Promise<void>;
}

/** Starts Chromium on a profile directory, which outlives it. */
export async function startChromium(profile: string, extraArgs: readonly string[] = []): Promise<Mortal> {
  const args = [...QUIET, '--remote-debugging-port=0', `--user-data-dir=${profile}`, ...extraArgs, 'about:blank'];
  const child = spawn(chromiumPath(), args, { detached: true, stdio: ['ignore', 'ignore', 'pipe'] });
  const address = await debuggingAddress(child);
  const browser = await chromium.connectOverCDP(address);
  return { browser, kill: () => killGroup(child) };
}

/** Where the browser is. */
export function chromiumPath(): string {
  const path = findProgram('chromium') ?? findProgram('chromium-browser');
  if (path !== undefined) return path;
  throw new Error('There is no Chromium on the path. Install it (apt-get install chromium) or run: npm run pretest');
}

function debuggingAddress(child: ChildProcess): Promise<string> {
  return new Promise((resolve, reject) => {
    let said = '';
    child.stderr?.on('data', (piece: Buffer) => {
      said += piece.toString();
      const address = /DevTools listening on (ws:\S+)/.exec(said)?.[1];
      if (address !== undefined) resolve(address);
    });
    child.once('error', reject);
    child.once('exit', () => reject(new Error(`Chromium ended before it was ready: ${said.slice(-500)}`)));
  });
}

function killGroup(child: ChildProcess): Promise<void> {
  return new Promise((resolve) => {
    child.once('exit', () => resolve());
    if (child.pid !== undefined) process.kill(-child.pid, 'SIGKILL');
  });
}
