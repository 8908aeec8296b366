import { darkRectangles, type ModuleRect } from './rectangles.ts';
import { encodeQr, type QrSymbol } from './symbol.ts';

/** A symbol as rectangles: what all codes of its kind have, and the rest, which may lie over it but has all that is not in it. */
export interface SymbolParts {
  readonly base: readonly ModuleRect[];
  readonly rectangles: readonly ModuleRect[];
}

/** Payloads that differ only in their last eight signs, the id, share most of their modules: finders, address, filling. */
const ID = /(^|\/)[0-9A-Z]{8}$/;
const ID_LENGTH = 8;
const ALPHABET = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';
/** A module that is dark with so many ids that have nothing in common is dark with all: one in sixteen million is not. */
const SAMPLES = 24;

interface Base {
  readonly dark: Uint8Array;
  readonly rectangles: readonly ModuleRect[];
}

const bases = new Map<string, Base>();
/** A site prints one or two kinds; whatever prints many more starts over. */
const MOST_BASES = 16;

/**
 * The rectangles of a symbol, those first that every code of its kind has. Each dark run that is not all in the base is
 * drawn whole, so that no seam lies within a row. A symbol that the base does not fit, or that holds no id, has none.
 */
export function symbolParts(symbol: QrSymbol): SymbolParts {
  const rectangles = darkRectangles(symbol);
  const base = ID.test(symbol.payload) ? baseOf(symbol) : null;
  if (base === null || !covers(symbol.modules, base.dark)) return { base: [], rectangles };
  return { base: base.rectangles, rectangles: rectangles.filter((one) => !lies(one, base.dark, symbol.size)) };
}

function baseOf({ payload, version, level, size }: QrSymbol): Base {
  const start = payload.slice(0, -ID_LENGTH);
  const kind = `${version} ${level} ${start}`;
  const known = bases.get(kind);
  if (known !== undefined) return known;
  const dark = new Uint8Array(size * size).fill(1);
  for (let sample = 0; sample < SAMPLES; sample++) {
    const { modules } = encodeQr(`${start}${sampleId(sample)}`, level, version);
    for (const [at, module] of modules.entries()) if (module !== 1) dark[at] = 0;
  }
  const made = { dark, rectangles: darkRectangles({ size, modules: dark }) };
  if (bases.size >= MOST_BASES) bases.clear();
  bases.set(kind, made);
  return made;
}

/** Eight signs by a multiplicative generator: the same everywhere, and unlike each other. */
function sampleId(sample: number): string {
  let state = (sample + 1) * 0x9e3779b1;
  let id = '';
  for (let at = 0; at < ID_LENGTH; at++) {
    state = (Math.imul(state, 0x19660d) + 0x3c6ef35f) >>> 0;
    id += ALPHABET[state >>> 27] ?? '';
  }
  return id;
}

function covers(modules: Uint8Array, dark: Uint8Array): boolean {
  for (let at = 0; at < dark.length; at++) if (dark[at] === 1 && modules[at] !== 1) return false;
  return true;
}

function lies([x, y, width, height]: ModuleRect, dark: Uint8Array, size: number): boolean {
  for (let row = y; row < y + height; row++)
    for (let column = x; column < x + width; column++) if (dark[row * size + column] !== 1) return false;
  return true;
}
