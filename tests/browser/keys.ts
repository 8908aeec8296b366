import type { Page } from 'playwright-core';

const SIGNS: Readonly<Record<string, readonly [code: string, shift: 0 | 8]>> = {
  ':': ['Semicolon', 8],
  '/': ['Slash', 0],
  '?': ['Slash', 8],
  '.': ['Period', 0],
  ',': ['Comma', 0],
  '-': ['Minus', 0],
  '+': ['Equal', 8],
  ' ': ['Space', 0],
};

/** The place of a key on a US keyboard and the shift that it needs there, for the signs of an id, an address and a weight. */
function keyOf(key: string): readonly [code: string, shift: 0 | 8] {
  if (/^[a-z]$/i.test(key)) return [`Key${key.toUpperCase()}`, key === key.toUpperCase() ? 8 : 0];
  if (/^\d$/.test(key)) return [`Digit${key}`, 0];
  return SIGNS[key] ?? [key, 0];
}

/** Something that happens in the middle of a scan, after so many of its keys. */
interface Meanwhile {
  readonly afterKeys: number;
  readonly happens: () => Promise<unknown>;
}

/** Real keys as a scanner sends them: 8 ms apart by the time that each carries, however busy this machine is; Enter ends them. */
export async function scannerTypes(page: Page, text: string, meanwhile?: Meanwhile): Promise<void> {
  const keyboard = await page.context().newCDPSession(page);
  const keys = [...text, 'Enter'];
  const startS = Date.now() / 1000 - keys.length * 0.008;
  const send = (from: number, to?: number) =>
    Promise.all(
      keys.slice(from, to).flatMap((key, at) => {
        const timestamp = startS + (from + at) * 0.008;
        const typed = key === 'Enter' ? '\r' : key;
        const [code, modifiers] = keyOf(key);
        return [
          keyboard.send('Input.dispatchKeyEvent', { type: 'keyDown', key, code, modifiers, text: typed, timestamp }),
          keyboard.send('Input.dispatchKeyEvent', { type: 'keyUp', key, code, modifiers, timestamp }),
        ];
      }),
    );
  await send(0, meanwhile?.afterKeys);
  if (meanwhile !== undefined) {
    await meanwhile.happens();
    await send(meanwhile.afterKeys);
  }
  await keyboard.detach();
}
