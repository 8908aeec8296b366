import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import qrcode from 'qrcode';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { launchChromium } from '../tools/browser.ts';
import { type ScannerPage, serveScanner, writeFilm } from './page.ts';
import { onGround, symbol } from './raster.ts';
import { anId } from './samples.ts';

const FIRST = anId(6);
const SECOND = anId(1);
let served: ScannerPage;
let browser: Browser;
let folder: string;
let page: Page;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'tubwright-film-'));
  const film = join(folder, 'film.y4m');
  const show = (text: string, left: number) => onGround(640, 480, [[symbol(text), left, 100]]);
  const blank = Array.from({ length: 20 }, () => onGround(640, 480, []));
  const pass = (text: string) => Array.from({ length: 20 }, (_, i) => show(text, 60 + 10 * i));
  await writeFilm(film, [...pass(FIRST), ...blank, ...pass(`HTTPS://TUBS.EXAMPLE/${SECOND}`), ...blank]);
  served = await serveScanner();
  browser = await launchChromium([
    '--use-fake-ui-for-media-stream',
    '--use-fake-device-for-media-stream',
    `--use-file-for-fake-video-capture=${film}`,
  ]);
});

afterAll(async () => {
  await browser.close();
  await served.close();
  await rm(folder, { recursive: true });
});

beforeEach(async () => {
  page = await browser.newPage();
  await page.goto(served.url);
  await page.waitForFunction('window.scanner !== undefined');
});

/** Runs a piece of script in the page, where `scanner` and `$` are known. */
const inPage = <T>(script: string): Promise<T> =>
  page.evaluate(`(async ({ scanner }) => { const $ = (at) => document.querySelector(at); ${script} })(window)`);

describe('the live camera', () => {
  const START = `window.seen = []; window.wrong = [];
    await scanner.camera.start($('#view'), (codes) => seen.push(...codes.map((code) => code.text)), (problem) => wrong.push(problem.code));`;

  test('cards that pass are read, each once, and the camera is off after a stop', async () => {
    await inPage(START);
    await page.waitForFunction('window.seen.length >= 3', undefined, { timeout: 30_000 });
    const live = await inPage(`window.track = $('video').srcObject.getVideoTracks()[0];
      return [scanner.camera.state, track.readyState, (await scanner.camera.cameras()).length, $('#view').textContent];`);
    expect(live).toEqual(['live', 'live', 1, '']);
    await inPage('await scanner.camera.stop()');
    const seen = await inPage<string[]>('return seen');
    const pair = [FIRST, `HTTPS://TUBS.EXAMPLE/${SECOND}`];
    const start = pair.indexOf(seen[0] ?? '');
    expect(seen.slice(0, 3)).toEqual([pair[start], pair[1 - start], pair[start]]);
    expect(await inPage('return [scanner.camera.state, track.readyState, $("#view").innerHTML, wrong]')).toEqual([
      'off',
      'ended',
      '',
      [],
    ]);
  });

  test('leaving while it starts leaves no camera on', async () => {
    const left = await inPage(`const tracks = [];
      const real = navigator.mediaDevices.getUserMedia.bind(navigator.mediaDevices);
      navigator.mediaDevices.getUserMedia = async (asked) => {
        const stream = await real(asked);
        tracks.push(...stream.getTracks());
        return stream;
      };
      const { camera } = scanner;
      for (const pause of [0, 5, 50, 200]) {
        const started = camera.start($('#view'), () => 0, () => 0);
        await new Promise((resolve) => setTimeout(resolve, pause));
        await camera.stop();
        await started;
      }
      return [camera.state, tracks.length > 0, tracks.filter((track) => track.readyState === 'live').length, $('#view').innerHTML];`);
    expect(left).toEqual(['off', true, 0, '']);
  });

  test.each([
    ['NotAllowedError', 'camera-not-allowed'],
    ['NotFoundError', 'camera-missing'],
    ['NotReadableError', 'camera-busy'],
    ['TypeError', 'camera-failed'],
  ])('the browser’s %s is said as %s', async (name, code) => {
    const said =
      await inPage(`navigator.mediaDevices.getUserMedia = () => Promise.reject(new DOMException('x', '${name}'));
      ${START} return [wrong, scanner.camera.state, $('#view').innerHTML];`);
    expect(said).toEqual([[code], 'off', '']);
  });

  test('a chosen camera that is gone is replaced, and choosing changes the live one', async () => {
    const states = await inPage(`localStorage.setItem('tubwright.camera', 'gone');
      ${START} const before = scanner.camera.state;
      const [only] = await scanner.camera.cameras();
      await scanner.camera.choose(only.id);
      const after = [scanner.camera.state, localStorage.getItem('tubwright.camera') === only.id, wrong];
      await scanner.camera.stop();
      return [before, ...after];`);
    expect(states).toEqual(['live', 'live', true, []]);
  });

  test('a reader that cannot start is said, and the camera is off', async () => {
    const said = await inPage(`const wrong = [];
      const decoding = scanner.makeDecoding({ makeWorker: scanner.makeWorker, wasmUrl: '/nothing.wasm' });
      const camera = scanner.makeCamera({ decoding });
      await camera.start($('#view'), () => 0, (problem) => wrong.push(problem.code));
      return [wrong, camera.state, $('#view').innerHTML];`);
    expect(said).toEqual([['decoder-failed'], 'off', '']);
  });

  test('a page without https is told so before the browser is asked', async () => {
    const said = await inPage(`Object.defineProperty(window, 'isSecureContext', { value: false });
      ${START} return wrong;`);
    expect(said).toEqual(['camera-insecure']);
  });
});

describe('a photo', () => {
  /** Reads a photo of a card on which a gray rectangle (in shares of its side) lies; gives the texts or the problem. */
  async function photo(cover: readonly number[], decoding = 'scanner.decoding'): Promise<unknown> {
    const address = await qrcode.toDataURL(FIRST, { scale: 6, errorCorrectionLevel: 'Q' });
    return inPage(`const image = new Image(); image.src = '${address}'; await image.decode();
      const canvas = document.createElement('canvas'); canvas.width = canvas.height = image.width;
      const pen = canvas.getContext('2d'); pen.drawImage(image, 0, 0); pen.fillStyle = '#666';
      pen.fillRect(...${JSON.stringify(cover)}.map((share) => share * image.width));
      const blob = await new Promise((done) => canvas.toBlob(done, 'image/jpeg', 0.8));
      const read = await scanner.readPhoto(new File([blob], 'card.jpg'), ${decoding});
      return read.ok ? read.value.map((code) => [code.text, code.rung]) : [read.problem.code, read.problem.message];`);
  }
  const BROKEN = `scanner.makeDecoding({ makeWorker: scanner.makeWorker, wasmUrl: '/nothing.wasm' })`;

  test('of a card is read', async () => {
    expect(await photo([0, 0, 0, 0])).toEqual([[FIRST, 'plain']]);
  });

  test('of a smudged card or half a card says what is wrong', async () => {
    const NO_CODE = 'There is no whole code in this picture: ';
    expect(await photo([0.4, 0.4, 0.3, 0.3])).toEqual([
      'no-code-in-picture',
      `${NO_CODE}a code is there, but it is cut off, smudged or blurred.`,
    ]);
    expect(await photo([0.5, 0, 0.5, 1])).toEqual([
      'no-code-in-picture',
      `${NO_CODE}no code was found, or only a part of one.`,
    ]);
  });

  test('is read by html5-qrcode when the worker cannot start', async () => {
    expect(await photo([0, 0, 0, 0], BROKEN)).toEqual([[FIRST, 'library']]);
    expect(await photo([0.5, 0, 0.5, 1], BROKEN)).toMatchObject(['no-code-in-picture', {}]);
  });

  test('that is no picture is named', async () => {
    const said = await inPage(
      `return (await scanner.readPhoto(new File(['hello'], 'notes.txt'), scanner.decoding)).problem.message`,
    );
    expect(said).toBe('“notes.txt” is not a picture that this browser can open.');
  });
});

/** The place of a key on a US keyboard, for the signs of an id and an address. */
function codeOf(key: string): string {
  if (/^[A-Z]$/.test(key)) return `Key${key}`;
  if (/^\d$/.test(key)) return `Digit${key}`;
  return { ':': 'Semicolon', '/': 'Slash', '.': 'Period' }[key] ?? key;
}

describe('a scanner that types', () => {
  beforeEach(async () => {
    await inPage(`window.scans = []; window.sent = 0; window.inputs = [];
      $('#form').addEventListener('submit', (event) => { event.preventDefault(); sent += 1; });
      $('#name').addEventListener('input', (event) => inputs.push(event.target.value));
      window.stop = scanner.listenForTypedScans(window, { host: 'TUBS.EXAMPLE', onScan: (scan) => scans.push(scan.text) });`);
  });

  /** Keys as a scanner sends them: 10 ms apart by the time that each event carries, however busy this machine is. */
  async function burst(text: string, last: readonly string[] = ['Enter']): Promise<void> {
    const keyboard = await page.context().newCDPSession(page);
    const keys = [...text, ...last];
    const startS = Date.now() / 1000 - keys.length / 100;
    const sent = keys.flatMap((key, i) => {
      const timestamp = startS + i / 100;
      const typed = key === 'Enter' ? '\r' : key;
      return [
        keyboard.send('Input.dispatchKeyEvent', { type: 'keyDown', key, code: codeOf(key), text: typed, timestamp }),
        keyboard.send('Input.dispatchKeyEvent', { type: 'keyUp', key, code: codeOf(key), timestamp }),
      ];
    });
    await Promise.all(sent);
    await keyboard.detach();
  }

  test('leaves the field, the caret and the page as they were', async () => {
    await page.focus('#name');
    await page.keyboard.press('Home');
    await burst(FIRST);
    await page.waitForFunction('window.scans.length > 0');
    expect(
      await inPage(
        'return [scans, $("#name").value, $("#name").selectionStart, inputs.at(-1), document.activeElement.id]',
      ),
    ).toEqual([[FIRST], 'abc', 0, 'abc', 'name']);
  });

  test('does not send a form with its Enter, but a person’s Enter does', async () => {
    await page.focus('#note');
    await burst(FIRST);
    expect(await inPage('return [scans.length, sent, $("#note").value]')).toEqual([1, 0, '']);
    for (const key of [...'hi', 'Enter']) {
      await page.waitForTimeout(120);
      await page.keyboard.press(key);
    }
    expect(await inPage('return [scans.length, sent, $("#note").value]')).toEqual([1, 1, 'hi']);
  });

  test('needs no suffix and no focus, and is not heard after it was stopped', async () => {
    await burst(`HTTPS://TUBS.EXAMPLE/${SECOND}`, []);
    await page.waitForFunction('window.scans.length === 1');
    await inPage('stop()');
    await burst(FIRST);
    await page.waitForTimeout(300);
    expect(await inPage('return scans')).toEqual([`HTTPS://TUBS.EXAMPLE/${SECOND}`]);
  });
});
