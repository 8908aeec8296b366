/** Unshifted and shifted sign of each key of the US keyboard that is not a letter, by physical code (UI Events, `code`). */
const SIGNS: Readonly<Record<string, readonly [string, string]>> = {
  Digit1: ['1', '!'],
  Digit2: ['2', '@'],
  Digit3: ['3', '#'],
  Digit4: ['4', '$'],
  Digit5: ['5', '%'],
  Digit6: ['6', '^'],
  Digit7: ['7', '&'],
  Digit8: ['8', '*'],
  Digit9: ['9', '('],
  Digit0: ['0', ')'],
  Minus: ['-', '_'],
  Equal: ['=', '+'],
  BracketLeft: ['[', '{'],
  BracketRight: [']', '}'],
  Backslash: ['\\', '|'],
  Semicolon: [';', ':'],
  Quote: ["'", '"'],
  Backquote: ['`', '~'],
  Comma: [',', '<'],
  Period: ['.', '>'],
  Slash: ['/', '?'],
  Space: [' ', ' '],
  NumpadDivide: ['/', '/'],
  NumpadMultiply: ['*', '*'],
  NumpadSubtract: ['-', '-'],
  NumpadAdd: ['+', '+'],
  NumpadDecimal: ['.', '.'],
};

/** What the key at this place of a US keyboard types, letters in upper case; null for a key that types nothing. */
export function onUsKeyboard(code: string, shift: 'plain' | 'shifted'): string | null {
  if (/^Key[A-Z]$/.test(code)) return code.slice(3);
  if (/^Numpad\d$/.test(code)) return code.slice(6);
  const signs = Object.hasOwn(SIGNS, code) ? SIGNS[code] : undefined;
  return signs === undefined ? null : signs[shift === 'plain' ? 0 : 1];
}
