import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import decodeApart from 'qr/decode.js';
import { beforeAll, describe, expect, test } from 'vitest';
import { type Decoder, openDecoder } from '../../scanner/decode/index.ts';
import { type FoundCode, readPayload } from '../../scanner/index.ts';
import { blurred, chance, covered, glaring, moved, noisy, shaded, smudged } from './damage.ts';
import { aslant, onGround, type Raster, smaller, symbol, turned } from './raster.ts';
import { anId } from './samples.ts';

const ID = anId(6);
const ADDRESS = `HTTPS://TUBS.EXAMPLE/${ID}`;
const card = symbol(ID);
const scene = (piece: Raster) => onGround(640, 480, [[piece, 120, 60]]);

let decoder: Decoder;
beforeAll(async () => {
  const file = createRequire(import.meta.url).resolve('zxing-wasm/reader/zxing_reader.wasm');
  decoder = await openDecoder({ binary: new Uint8Array(readFileSync(file)).buffer });
});

describe('a card in a still picture', () => {
  test.each<[string, () => Raster]>([
    ['flat', () => scene(card)],
    ['turned by 30°', () => scene(turned(card, 30))],
    ['turned by 137°', () => scene(turned(card, 137))],
    ['upside down', () => scene(turned(card, 180))],
    ['seen aslant', () => scene(aslant(card, 0.6))],
    ['seen very aslant', () => scene(aslant(card, 0.4))],
    ['half a module out of focus', () => scene(blurred(card, 3))],
    ['moved by a module and a third', () => scene(moved(card, 8))],
    ['grainy', () => noisy(scene(card), 40, 1)],
    ['in deep shadow', () => noisy(scene(shaded(card, 0.1)), 6, 2)],
    ['marked by a pen', () => scene(covered(card, [0.4, 0.45, 0.9, 0.52], 60))],
    ['smudged', () => scene(smudged(card, 5, 5, 3))],
    ['with glare', () => scene(glaring(card, 0.6, 0.5, 0.3))],
    ['two pixels a module', () => scene(smaller(card, 3))],
    ['turned, shadowed and blurred', () => scene(blurred(shaded(turned(card, 20), 0.4), 2))],
  ])('%s is read', async (_, picture) => {
    const { codes } = await decoder.still(picture());
    expect(codes.map(({ text }) => text)).toEqual([ID]);
  });

  test.each<[FoundCode['rung'], string, () => Raster]>([
    ['plain', 'a sound card', () => scene(card)],
    ['half-size', 'blur and grain', () => noisy(scene(blurred(card, 4)), 20, 1)],
    ['half-contrast', 'print faded to 15 gray levels', () => noisy(scene(symbol(ID, { ink: 185, paper: 200 })), 4, 3)],
    ['local-contrast', 'print faded to 8 gray levels', () => noisy(scene(symbol(ID, { ink: 192, paper: 200 })), 4, 3)],
    ['enlarged', 'modules of 1.3 pixels', () => scene(smaller(card, 4.6))],
  ])('the rung %s reads what those before it cannot: %s', async (rung, _, picture) => {
    const { codes } = await decoder.still(picture());
    expect(codes.map((code) => [code.text, code.rung])).toEqual([[ID, rung]]);
  });

  test.each<[string, () => Raster, boolean]>([
    ['half of it covered', () => scene(covered(card, [0.5, 0, 1, 1], 110)), false],
    ['a finder mark covered', () => scene(covered(card, [0, 0, 0.4, 0.4], 110)), false],
    ['its middle covered', () => scene(covered(card, [0.4, 0.4, 0.7, 0.7], 110)), true],
    ['its lower corner cut off', () => scene(covered(card, [0.6, 0.6, 1, 1], 110)), true],
    ['smudged all over', () => scene(smudged(card, 60, 10, 5)), false],
    ['less than a pixel a module', () => scene(smaller(card, 8)), false],
    ['no card at all', () => scene(onGround(50, 50, [])), false],
    ['nothing but grain', () => noisy(scene(onGround(50, 50, [])), 80, 1), false],
  ])('%s gives no text, and says whether a broken code is there', async (_, picture, broken) => {
    expect(await decoder.still(picture())).toEqual({ codes: [], broken });
  });

  // Found by trying: with all formats of the family, grain on this card comes out as a Micro QR code saying 938388 too.
  test('only QR codes of model 2 are read, not their small relatives that grain can look like', async () => {
    const shady = noisy(blurred(shaded(turned(symbol(anId(83), { module: 5 }), 581), 0.3), 3), 10, 83);
    const { codes } = await decoder.still(onGround(320, 320, [[shady, 20, 20]]), 255);
    expect(codes.map(({ text }) => text)).toEqual([anId(83)]);
  });

  test('forty damaged cards give their own text or none', async () => {
    const draw = chance(11);
    const read: (string | undefined)[] = [];
    for (let i = 0; i < 40; i += 1) {
      const piece = turned(symbol(anId(i), { module: 5 }), draw() * 360);
      const pen = covered(piece, [0.45, 0.35 + draw() * 0.3, 0.52, 0.75], 100);
      const worn = [pen, smudged(piece, 6, 9, i), shaded(piece, 0.1)][i % 3] ?? piece;
      const { codes } = await decoder.still(noisy(onGround(320, 320, [[worn, 20, 20]]), 3 + draw() * 12, i));
      read.push(codes[0]?.text);
    }
    expect(read.filter((text, i) => text !== undefined && text !== anId(i))).toEqual([]);
    expect(read.filter((text) => text !== undefined).length).toBeGreaterThan(20);
  });

  test('a broken card beside a sound one does not hide it', async () => {
    const broken = covered(symbol(anId(1), { module: 8 }), [0.4, 0.4, 0.7, 0.7], 110);
    const { codes } = await decoder.still(
      onGround(640, 480, [
        [broken, 20, 20],
        [symbol(ID, { module: 4 }), 400, 300],
      ]),
    );
    expect(codes.map(({ text }) => text)).toEqual([ID]);
  });

  test('another decoder reads the same from the same picture', async () => {
    const { data, width, height } = scene(symbol(ADDRESS, { level: 'M' }));
    const rgba = new Uint8Array(4 * width * height).map((_, i) => (i % 4 === 3 ? 255 : (data[i >> 2] ?? 0)));
    expect(decodeApart({ data: rgba, width, height })).toBe(ADDRESS);
    expect((await decoder.still({ data: rgba, width, height })).codes[0]?.text).toBe(ADDRESS);
    expect((await decoder.still({ data, width, height })).codes[0]?.text).toBe(ADDRESS);
  });

  test('control characters come through as they are, to be refused by name', async () => {
    const { codes } = await decoder.still(scene(symbol(`${ID}\u0007`)));
    expect(codes[0]?.text).toBe(`${ID}\u0007`);
    expect(readPayload(codes[0]?.text ?? '')).toMatchObject({ ok: false, problem: { code: 'hostile-code' } });
  });

  test.each([0, 3, 639, 640 * 480 * 4 + 1])(
    'a picture of %i bytes that should be 640 x 480 is refused',
    async (bytes) => {
      await expect(decoder.still({ data: new Uint8Array(bytes), width: 640, height: 480 })).rejects.toThrow(RangeError);
    },
  );
});

describe('where a code lies', () => {
  const module = 6;
  const faded = (ink: number) => noisy(scene(symbol(ID, { ink, paper: 200 })), 4, 3);
  test.each<[FoundCode['rung'], () => Raster, number]>([
    ['plain', () => scene(card), 1],
    ['half-size', () => noisy(scene(blurred(card, 4)), 20, 1), 1],
    ['half-contrast', () => faded(185), 1],
    ['local-contrast', () => faded(192), 1],
    ['enlarged', () => scene(smaller(card, 4.6)), 4.6],
  ])('the corners of the rung %s are those of the symbol, to a module', async (rung, picture, factor) => {
    const { codes } = await decoder.still(picture());
    const far = codes[0]?.corners.map(([x, y], i) => {
      const right = i === 1 || i === 2 ? card.width - 4 * module : 4 * module;
      const lower = i > 1 ? card.width - 4 * module : 4 * module;
      return Math.hypot(x - 120 - right / factor, y - 60 - lower / factor) * factor;
    });
    expect(codes[0]?.rung).toBe(rung);
    expect(far?.length).toBe(4);
    expect(Math.max(...(far ?? []))).toBeLessThan(module);
  });

  test('the corners turn with the symbol, so that the first is always its own top left', async () => {
    const { codes } = await decoder.still(scene(turned(card, 180)));
    const [[x, y], , [farX, farY]] = codes[0]?.corners ?? [
      [0, 0],
      [0, 0],
      [0, 0],
    ];
    expect(x).toBeGreaterThan(farX);
    expect(y).toBeGreaterThan(farY);
  });

  test('a small code in the middle of a large picture is read enlarged and put in its place', async () => {
    const large = onGround(1920, 1080, [[smaller(card, 4.6), 900, 500]]);
    const { codes } = await decoder.still(large);
    expect(codes).toMatchObject([{ text: ID, rung: 'enlarged' }]);
    expect(Math.hypot((codes[0]?.corners[0][0] ?? 0) - 905.2, (codes[0]?.corners[0][1] ?? 0) - 505.2)).toBeLessThan(3);
  });
});

describe('many cards in one picture', () => {
  const ids = Array.from({ length: 12 }, (_, i) => anId(100 + i));
  const wall = (module: number) =>
    onGround(
      1000,
      760,
      ids.map((id, i) => [symbol(id, { module }), 10 + (i % 4) * 245, 10 + Math.floor(i / 4) * 245] as const),
    );

  test('all are read when asked for, each once', async () => {
    const { codes } = await decoder.still(noisy(wall(7), 10, 4), 255);
    expect(codes.map(({ text }) => text).sort()).toEqual([...ids].sort());
  });

  test('one is read when one is asked for', async () => {
    expect((await decoder.still(wall(7))).codes).toHaveLength(1);
  });

  test('large and small together are all read', async () => {
    const pieces = [
      [symbol(anId(1), { module: 8 }), 20, 20],
      [smaller(symbol(anId(2)), 4), 500, 40],
      [smaller(symbol(anId(3)), 4), 500, 200],
    ] as const;
    const { codes } = await decoder.still(onGround(640, 480, pieces), 255);
    expect(codes.map(({ text }) => text).sort()).toEqual([1, 2, 3].map(anId).sort());
  });

  test('two cards with the same code are two codes', async () => {
    const { codes } = await decoder.still(
      onGround(640, 480, [
        [card, 20, 20],
        [card, 350, 200],
      ]),
      255,
    );
    expect(codes.map(({ text }) => text)).toEqual([ID, ID]);
  });
});

describe('live video', () => {
  test('a hard card is read within a few frames, though the first look misses it', async () => {
    const hard = noisy(scene(symbol(ID, { ink: 185, paper: 200 })), 4, 3);
    const looks = [];
    for (let number = 0; number < 10; number += 1)
      looks.push((await decoder.frame(hard, number)).map(({ text }) => text).join());
    expect(looks[0]).toBe('');
    expect(looks.filter((text) => text !== '')).toContain(ID);
    expect(new Set(looks)).toEqual(new Set(['', ID]));
  });

  test('every other frame looks plainly', async () => {
    for (const number of [0, 2, 4, 6, 8, 1000]) {
      expect((await decoder.frame(scene(card), number))[0]?.rung).toBe('plain');
    }
  });
});
