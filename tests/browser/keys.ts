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

/** Real keys as a scanner sends them: 8 ms apart by the time that each carries, however busy this machine is; Enter ends them. */
export async function scannerTypes(page: Page, text: string): Promise<void> {
  const keyboard = await page.context().newCDPSession(page);
  const keys = [...text, 'Enter'];
  const startS = Date.now() / 1000 - keys.length * 0.008;
  const sent = keys.flatMap((key, at) => {
    const timestamp = startS + at * 0.008;
    const typed = key === 'Enter' ? '\r' : key;
    const [code, modifiers] = keyOf(key);
    return [
      keyboard.send('Input.dispatchKeyEvent', { type: 'keyDown', key, code, modifiers, text: typed, timestamp }),
      keyboard.send('Input.dispatchKeyEvent', { type: 'keyUp', key, code, modifiers, timestamp }),
    ];
  });
  await Promise.all(sent);
  await keyboard.detach();
}
