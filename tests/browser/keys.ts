import type { Page } from 'playwright-core';

/** The place of a key on a US keyboard, for the signs of an id and an address. */
function codeOf(key: string): string {
  if (/^[A-Z]$/.test(key)) return `Key${key}`;
  if (/^\d$/.test(key)) return `Digit${key}`;
  return { ':': 'Semicolon', '/': 'Slash', '.': 'Period', '-': 'Minus' }[key] ?? key;
}

/** Real keys as a scanner sends them: 8 ms apart by the time that each carries, however busy this machine is; Enter ends them. */
export async function scannerTypes(page: Page, text: string): Promise<void> {
  const keyboard = await page.context().newCDPSession(page);
  const keys = [...text, 'Enter'];
  const startS = Date.now() / 1000 - keys.length * 0.008;
  const sent = keys.flatMap((key, at) => {
    const timestamp = startS + at * 0.008;
    const typed = key === 'Enter' ? '\r' : key;
    return [
      keyboard.send('Input.dispatchKeyEvent', { type: 'keyDown', key, code: codeOf(key), text: typed, timestamp }),
      keyboard.send('Input.dispatchKeyEvent', { type: 'keyUp', key, code: codeOf(key), timestamp }),
    ];
  });
  await Promise.all(sent);
  await keyboard.detach();
}
