import { type QrSymbol, QUIET_MODULES, qrSymbol } from './symbol.ts';

/** Two rows of modules in a line of text: above and below light, only below dark, and so on. Light is drawn, for dark terminals. */
const BLOCKS = ['█', '▀', '▄', ' '] as const;

/** A QR symbol as text for a terminal with light letters on a dark ground, its quiet zone included. */
export function qrBlocks(payload: string): string {
  const symbol = qrSymbol(payload);
  const reach = symbol.size + QUIET_MODULES;
  const lines: string[] = [];
  for (let row = -QUIET_MODULES; row < reach; row += 2) {
    const cells = Array.from({ length: reach + QUIET_MODULES }, (_, at) => blockAt(symbol, row, at - QUIET_MODULES));
    lines.push(cells.join(''));
  }
  return lines.join('\n');
}

function blockAt(symbol: QrSymbol, row: number, column: number): string {
  const [above, below] = [isDark(symbol, row, column), isDark(symbol, row + 1, column)];
  return BLOCKS[(above ? 2 : 0) + (below ? 1 : 0)] ?? ' ';
}

function isDark({ size, modules }: QrSymbol, row: number, column: number): boolean {
  const inside = row >= 0 && row < size && column >= 0 && column < size;
  return inside && modules[row * size + column] === 1;
}
