import { inflated } from '../platform.ts';

/** A page of a PDF of ours: its size in points, what is drawn on it as it stands in the file, and how wide its signs are. */
export interface PdfPage {
  readonly widthPt: number;
  readonly heightPt: number;
  readonly content: Uint8Array;
  /** By the font's name (`F1`): advances by code, in thousandths of the size. */
  readonly advances: ReadonlyMap<string, readonly number[]>;
  /** By the font's name: what each code means, as the file itself tells a reader that copies or searches. */
  readonly signs: ReadonlyMap<string, readonly string[]>;
}

/** A PDF of ours, opened to be read page by page. */
export interface OwnPdf {
  readonly pages: number;
  /** Counts from 1. Rejects with an Error that says what is missing. */
  page(number: number): Promise<PdfPage>;
}

const LATIN = 0xff;

/**
 * Opens a PDF as print writes it (ISO 32000-1, 7.5: a table of objects at its end, one content stream a page, plain or
 * Flate). Not for files of others. Throws an Error that says what is missing.
 */
export function openOwnPdf(bytes: Uint8Array): OwnPdf {
  const at = objectPlaces(bytes);
  const dictionary = (number: number): string => {
    const from = at[number];
    if (from === undefined) throw new Error(`the file has no object ${number}`);
    return textTo(bytes, from, ['stream', 'endobj']);
  };
  const root = dictionary(reference(trailerOf(bytes), 'Root'));
  const list = dictionary(reference(root, 'Pages'));
  const kids = [...inBrackets(list, 'Kids').matchAll(/(\d+) 0 R/g)].map(([, number]) => Number(number));
  const advances = advancesOf(list, dictionary);
  let signs: PdfPage['signs'] | undefined;
  return {
    pages: kids.length,
    async page(number) {
      const kid = kids[number - 1];
      if (kid === undefined) throw new Error(`the file has no page ${number}`);
      const page = dictionary(kid);
      const box = inBrackets(page.includes('/MediaBox') ? page : list, 'MediaBox');
      const [, , widthPt = 0, heightPt = 0] = box.trim().split(/\s+/).map(Number);
      const object = reference(page, 'Contents');
      const stream = (number: number) => streamOf(bytes, at[number] ?? 0, dictionary(number));
      signs ??= await signsOf(list, dictionary, stream);
      return { widthPt, heightPt, advances, signs, content: await stream(object) };
    },
  };
}

function objectPlaces(bytes: Uint8Array): readonly number[] {
  const end = latin(bytes, Math.max(0, bytes.length - 64), bytes.length);
  const start = Number(/startxref\s+(\d+)/.exec(end)?.[1] ?? Number.NaN);
  if (!Number.isInteger(start) || start >= bytes.length) throw new Error('the file has no table of its objects');
  const rows = textTo(bytes, start, ['trailer']).split('\n').slice(2);
  return rows.map((row) => Number(row.slice(0, 10)));
}

function trailerOf(bytes: Uint8Array): string {
  const end = latin(bytes, Math.max(0, bytes.length - 1024), bytes.length);
  return end.slice(end.lastIndexOf('trailer'));
}

function reference(dictionary: string, key: string): number {
  const found = new RegExp(`/${key} (\\d+) 0 R`).exec(dictionary);
  if (!found) throw new Error(`an object has no ${key}`);
  return Number(found[1]);
}

function inBrackets(dictionary: string, key: string): string {
  const found = new RegExp(`/${key} \\[([^\\]]*)\\]`).exec(dictionary);
  if (!found) throw new Error(`an object has no ${key}`);
  return found[1] ?? '';
}

type Dictionary = (number: number) => string;

/** The list of pages names the fonts for all of them. */
function fontsIn(list: string, dictionary: Dictionary): readonly (readonly [name: string, font: string])[] {
  const fonts = /\/Font (<<[^>]*>>|\d+ 0 R)/.exec(dictionary(reference(list, 'Resources')))?.[1] ?? '';
  const named = [...fonts.matchAll(/\/(F\d) (\d+) 0 R/g)];
  return named.map(([, name = '', number]) => [name, dictionary(Number(number))]);
}

function advancesOf(list: string, dictionary: Dictionary): PdfPage['advances'] {
  return new Map(
    fontsIn(list, dictionary).map(([name, font]) => {
      const inside = /\/DescendantFonts \[(\d+) 0 R\]/.exec(font)?.[1];
      const widths = /\/W \[0 \[([^\]]*)\]/.exec(inside === undefined ? '' : dictionary(Number(inside)))?.[1] ?? '';
      return [name, widths.trim().split(/\s+/).map(Number)] as const;
    }),
  );
}

/** The tables from codes to Unicode (ISO 32000-1, 9.10.3), whose ranges each list the signs of their codes. */
async function signsOf(
  list: string,
  dictionary: Dictionary,
  stream: (number: number) => Promise<Uint8Array>,
): Promise<PdfPage['signs']> {
  const signs = new Map<string, readonly string[]>();
  for (const [name, font] of fontsIn(list, dictionary)) {
    const table = await stream(reference(font, 'ToUnicode'));
    const ranges = latin(table, 0, table.length).matchAll(/<([\da-f]{4})> <[\da-f]{4}> \[([^\]]*)\]/gi);
    const own: string[] = [];
    for (const [, first = '', all = ''] of ranges)
      for (const [at, [, units = '']] of [...all.matchAll(/<([\da-f ]*)>/gi)].entries())
        own[Number.parseInt(first, 16) + at] = utf16(units);
    signs.set(name, own);
  }
  return signs;
}

function utf16(units: string): string {
  return String.fromCharCode(...(units.match(/[\da-f]{4}/gi) ?? []).map((unit) => Number.parseInt(unit, 16)));
}

async function streamOf(bytes: Uint8Array, from: number, dictionary: string): Promise<Uint8Array> {
  const length = Number(/\/Length (\d+)/.exec(dictionary)?.[1] ?? Number.NaN);
  const start = from + dictionary.length + 'stream\n'.length;
  const body = bytes.subarray(start, start + length);
  if (!(length >= 0) || body.length < length) throw new Error('a page of the file is cut off');
  return dictionary.includes('/FlateDecode') ? inflated(body) : body;
}

/** The text from a place up to the first of these words, one sign a byte. */
function textTo(bytes: Uint8Array, from: number, words: readonly string[]): string {
  const STEP = 512;
  let text = '';
  for (let at = from; at < bytes.length; at += STEP) {
    text += latin(bytes, at, Math.min(bytes.length, at + STEP));
    const ends = words.map((word) => text.indexOf(word)).filter((end) => end >= 0);
    if (ends.length > 0) return text.slice(0, Math.min(...ends));
  }
  throw new Error('the file is cut off');
}

function latin(bytes: Uint8Array, from: number, to: number): string {
  let text = '';
  for (let at = from; at < to; at++) text += String.fromCharCode((bytes[at] ?? 0) & LATIN);
  return text;
}
