import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type KeyStroke,
  NO_STROKES,
  readPayload,
  readScaleLine,
  sayCode,
  type TypedScan,
  type TypedState,
  typedIdle,
  typedScan,
} from '../../scanner/index.ts';
import { checkSymbol, encodeBase32, isId, mintId, WEIGHT_LIMITS_G } from '../../src/core/index.ts';
import { anId } from './samples.ts';

/** Grams, or why not, or null for no line of a scale. */
function read(text: string): number | string | null {
  const line = readScaleLine(text);
  return line === null ? null : line.ok ? line.value.weightG : line.problem.code;
}

// The general forms of such lines are common practice, no source. The pound is 453.59237 g, an ounce a sixteenth of it
// (NIST SP 811, appendix B.8): 30 oz are 850.4857 g, 2 lb are 907.18474 g.
describe('a line of a scale', () => {
  it.each<[string, number]>([
    ['  850.5 g', 850.5],
    ['850.5g', 850.5],
    ['850,5 g', 850.5],
    ['0.8505kg', 850.5],
    ['0,8505 KG', 850.5],
    ['.8505 kg', 850.5],
    ['ST,GS,+000850.5g', 850.5],
    ['ST,NT,+  850.5  g', 850.5],
    ['S   850.5 g', 850.5],
    ['N +  850.5 g', 850.5],
    ['Net: 850.5 g', 850.5],
    ['wt 850.5 g', 850.5],
    ['+850.5 g', 850.5],
    ['850.5 g ST', 850.5],
    ['9 g', 9],
    ['0.85 g', 0.85],
    ['00001.2 kg', 1200],
    ['1.480 g', 1.48],
    ['1,480.5 g', 1480.5],
    ['1.480,5 g', 1480.5],
    ['1,480 kg', 1480],
    ['30 oz', 850.49],
    ['ST,+0030.0oz', 850.49],
    ['2 lb', 907.18],
    ['2.0 LBS', 907.18],
  ])('%j is %d g', (text, weightG) => {
    expect(read(text)).toBe(weightG);
  });
  it.each([
    ['US,GS,+000850.5g', 'scale-unstable'],
    ['D  850.5 g', 'scale-unstable'],
    ['850.5 g ?', 'scale-unstable'],
    ['? 850.5 g', 'scale-unstable'],
    ['850.5 g US', 'scale-unstable'],
    ['US,GS,-000850.5g', 'scale-unstable'],
    ['OL', 'scale-no-figure'],
    ['O-L', 'scale-no-figure'],
    ['------', 'scale-no-figure'],
    ['------ g', 'scale-no-figure'],
    ['Err 4', 'scale-no-figure'],
    ['OL,GS,+999999 g', 'scale-no-figure'],
    ['TR,+000120.0g', 'scale-tare'],
    ['PT 120 g', 'scale-tare'],
    ['-850.5 g', 'scale-not-positive'],
    ['ST,NT,-   1.2 kg', 'scale-not-positive'],
    ['0.0 g', 'scale-not-positive'],
    ['ST,GS,+000000.0g', 'scale-not-positive'],
    ['-0.0 g', 'scale-not-positive'],
    ['850.5', 'scale-unit'],
    ['ST,GS,+000850.5', 'scale-unit'],
    ['850', 'scale-unit'],
    ['850.5 ct', 'scale-unit'],
    ['27.3 ozt', 'scale-unit'],
    ['27.3 oz t', 'scale-unit'],
    ['12 pcs', 'scale-unit'],
    ['850 mg', 'scale-unit'],
    ['1 lb 14.0 oz', 'scale-unit'],
    ['1,480 g', 'number-ambiguous'],
    ['1,480 oz', 'number-ambiguous'],
    ['0.2 g', 'weight-impossible'],
    ['850.5 kg', 'weight-impossible'],
  ])('%j is refused: %s', (text, code) => {
    expect(read(text)).toBe(code);
  });
  it.each([
    '',
    ' ',
    'g',
    'kg 850',
    '85',
    '12345678',
    '6291041500213',
    'fed 2 rats',
    'note 850 g',
    '850 g and more',
    '850.5.5 g',
    '8,50,0 g',
    '10:30',
    '2026-03-09',
    'HTTPS://TUBS.EXAMPLE/Y3ZQTWZ4',
    'STAMP:WEIGHED',
    'constructor 850 g',
    '850 constructor',
  ])('%j is none', (text) => {
    expect(read(text)).toBeNull();
  });
});

describe('laws of a scale’s line', () => {
  const PER_UNIT = { g: 1, kg: 1000, oz: 453.59237 / 16, lb: 453.59237 };
  const someUnit = fc.constantFrom(...(Object.keys(PER_UNIT) as (keyof typeof PER_UNIT)[]));
  const someHead = fc.constantFrom('', '  ', 'ST,GS,', 'ST,NT,+', 'S ', 'N + ', '+', 'Net: ');
  it('it never throws, and what it gives is a weight that an animal has', () => {
    const some = fc.oneof(fc.string({ unit: 'grapheme' }), fc.stringMatching(/^[STUGNOL,+?.\d gkozlb-]{0,30}$/));
    fc.assert(
      fc.property(some, (text) => {
        const line = readScaleLine(text);
        if (line?.ok !== true) return;
        expect(line.value.weightG).toBeGreaterThanOrEqual(WEIGHT_LIMITS_G.least);
        expect(line.value.weightG).toBeLessThanOrEqual(WEIGHT_LIMITS_G.most);
        expect(text).toMatch(/g|kg|oz|lbs?/i);
      }),
      { numRuns: 2000 },
    );
  });
  it('it never gives a wrong unit: the weight is the figure by the unit that stands there, or it is refused', () => {
    const figure = fc.tuple(fc.nat(99_999), fc.nat(9999), fc.nat(4), fc.constantFrom('.', ','), fc.nat(3));
    fc.assert(
      fc.property(
        someHead,
        figure,
        someUnit,
        fc.boolean(),
        (head, [whole, part, decimals, mark, zeros], unit, apart) => {
          const behind = decimals === 0 ? '' : `${mark}${String(part).padStart(4, '0').slice(0, decimals)}`;
          const text = `${head}${'0'.repeat(zeros)}${whole}${behind}${apart ? ' ' : ''}${unit}`;
          const line = readScaleLine(text);
          expect(line, text).not.toBeNull();
          if (line?.ok !== true) return;
          const exact = Number(`${whole}${behind.replace(',', '.')}`) * PER_UNIT[unit];
          expect(Math.abs(line.value.weightG - exact), text).toBeLessThanOrEqual(0.005001);
        },
      ),
      { numRuns: 2000 },
    );
  });
  it('no line that is not still, below zero or beyond the scale is ever a weight', () => {
    const bad = fc.constantFrom('US,GS,+', 'US,NT,-', 'D ', '-', 'OL,', 'TR,+', 'ST,GS,-');
    fc.assert(
      fc.property(bad, fc.nat(99_999), someUnit, (head, whole, unit) => {
        expect(readScaleLine(`${head}${whole} ${unit}`)?.ok).not.toBe(true);
      }),
    );
  });
  it('no id of a card is a line of a scale, but for digits that end with a G: those are codes first', () => {
    fc.assert(
      fc.property(fc.nat(1023), fc.nat(2 ** 24 - 1), (device, counter) => {
        const minted = mintId(device, counter);
        if (minted.ok && !/^\d+G$/.test(minted.value)) expect(readScaleLine(minted.value)).toBeNull();
      }),
      { numRuns: 5000 },
    );
  });
  it('no id of eight digits is a line of a scale, nor any number of a shop', () => {
    fc.assert(
      fc.property(fc.stringMatching(/^\d{8,14}$/), (digits) => {
        expect(readScaleLine(digits)).toBeNull();
      }),
    );
  });
});

const HELD = { repeat: false, isComposing: false, ctrlKey: false, metaKey: false, altKey: false };
const SIGNS: Record<string, [string, boolean]> = {
  ' ': ['Space', false],
  ',': ['Comma', false],
  '.': ['Period', false],
  '+': ['Equal', true],
  '-': ['Minus', false],
  '?': ['Slash', true],
  ':': ['Semicolon', true],
  '/': ['Slash', false],
};

/** A key of a US keyboard, as the table under test does not know it. */
function key(sign: string, timeStamp: number): KeyStroke {
  const letter = sign.length === 1 && /[a-z]/i.test(sign);
  const [code, shiftKey] = letter
    ? [`Key${sign.toUpperCase()}`, sign !== sign.toLowerCase()]
    : (SIGNS[sign] ?? [/\d/.test(sign) ? `Digit${sign}` : sign, false]);
  return { key: sign, code, shiftKey, timeStamp, ...HELD };
}

const keys = (text: string, gapMs: number, fromMs = 0, last: readonly string[] = ['Enter']): KeyStroke[] =>
  [...text, ...last].map((sign, i) => key(sign, fromMs + i * gapMs));

interface Outcome {
  readonly said: readonly (string | undefined)[];
  readonly scans: readonly TypedScan[];
  readonly swallowed: number;
  readonly state: TypedState;
}

function type(strokes: readonly KeyStroke[], weighing = true, from: TypedState = NO_STROKES): Outcome {
  let state = from;
  let swallowed = 0;
  const scans: TypedScan[] = [];
  const take = (step: ReturnType<typeof typedScan>): void => {
    state = step.state;
    if (step.swallow) swallowed += 1;
    if (step.result) scans.push(step.result);
  };
  for (const [at, one] of strokes.entries()) {
    take(typedScan(state, one, { weighing }));
    const next = strokes[at + 1]?.timeStamp ?? one.timeStamp;
    // The idle rule is asked as the page asks it: some time after a key that nothing follows.
    if (next - one.timeStamp > 260) take(typedIdle(state, one.timeStamp + 260, { weighing }));
  }
  return { said: scans.map(sayScan), scans, swallowed, state };
}

function sayScan({ scale, code }: TypedScan): string | undefined {
  if (code.ok) return sayCode(code.value);
  if (scale === undefined) return code.problem.code;
  return scale.ok ? `${scale.value.weightG} g` : scale.problem.code;
}

describe('a scale that types', () => {
  it.each<[string, KeyStroke[], string[], number]>([
    ['a long line', keys('ST,GS,+000850.5g', 10), ['850.5 g'], 1],
    ['a line with blanks before it', keys('  850.5 g', 10), ['850.5 g'], 1],
    ['a line with a comma and Tab', keys('   850,5 g', 10, 0, ['Tab']), ['850.5 g'], 1],
    ['a short line', keys('85 g', 10), ['85 g'], 1],
    ['the shortest line', keys('9g', 10), ['9 g'], 1],
    ['two keys at its end', keys('ST,GS,+000850.5g', 10, 0, ['Enter', 'Enter']), ['850.5 g'], 2],
    ['a short line and two keys', keys('850.5g', 10, 0, ['Enter', 'Enter']), ['850.5 g'], 2],
    ['one that is not still', keys('US,GS,+000850.5g', 10), ['scale-unstable'], 1],
    ['a short overload', keys('OL', 10), ['scale-no-figure'], 1],
    ['no unit', keys('850.5', 10), ['scale-unit'], 1],
    ['a person', keys('850.5g', 120), [], 0],
    ['a fast person', keys('85g', 60), [], 0],
    ['a person who types more', keys('   850.5 g', 110), [], 0],
    ['an id', keys(anId(6), 10), [`id ${anId(6)}`], 1],
  ])('%s', (_, strokes, said, swallowed) => {
    expect(type(strokes)).toMatchObject({ said, swallowed });
  });
  it('is let alone where nobody weighs and its line is short, and known where the line is long', () => {
    expect(type(keys('85 g', 10), false)).toMatchObject({ said: [], swallowed: 0 });
    expect(type(keys('ST,GS,+000850.5g', 10), false)).toMatchObject({ said: ['850.5 g'], swallowed: 1 });
  });
  it('ends a line without Enter by its pause', () => {
    const { state } = type(keys('ST,GS,+000850.5g', 10, 0, []));
    expect(typedIdle(state, 150 + 110).result).toBeUndefined();
    expect(typedIdle(state, 150 + 260).result?.scale).toMatchObject({ value: { weightG: 850.5 } });
  });
  it('two lines after each other are two weights', () => {
    expect(type([...keys('850.5 g', 10), ...keys('912.0 g', 10, 3000)]).said).toEqual(['850.5 g', '912 g']);
  });
  it.each<[string, KeyStroke[]]>([
    ['a digit of a person just before it', [key('9', 0), ...keys('850.5 g', 10, 120)]],
    ['a digit of a person half a second before it', [key('9', 0), ...keys('850.5 g', 10, 500)]],
    ['a stutter in it', [...keys('ST,GS,+0008', 10, 0, []), ...keys('50.5g', 10, 220)]],
    ['a long stutter in it', [...keys('   85', 10, 0, []), ...keys('0.5 g', 10, 400)]],
    ['a very long stutter in it', [...keys('   85', 10, 0, []), ...keys('0.5 g', 10, 900)]],
  ])('%s: no part of a line is ever a weight', (_, strokes) => {
    const { said, scans } = type(strokes);
    expect(scans.some(({ scale }) => scale?.ok === true)).toBe(false);
    expect(said).toContain('scale-broken');
  });
  it('a digit that was typed long before is no part of it', () => {
    expect(type([key('9', 0), ...keys('850.5 g', 10, 1500)]).said).toEqual(['850.5 g']);
  });
  it('on keyboards of other layouts the places of the keys are read', () => {
    // German and French, as far as needed here (from memory of those keyboards).
    const german: Record<string, string> = { '+': '`', '-': 'ß', z: 'y', '?': '_' };
    const french: Record<string, string> = { '8': '_', '5': '(', '0': 'à', '.': ':', ',': ';', '+': '+' };
    const on = (layout: Record<string, string>, text: string): readonly (string | undefined)[] =>
      type(keys(text, 10).map((one) => ({ ...one, key: layout[one.key] ?? one.key }))).said;
    expect(on(german, 'ST,GS,+000030.0oz')).toEqual(['850.49 g']);
    expect(on(french, 'ST,GS,+000850.5g')).toEqual(['850.5 g']);
    expect(on(german, '-850.5 g')).toEqual(['scale-not-positive']);
    expect(on(german, '850.5 g ?')).toEqual(['scale-unstable']);
  });
});

describe('a scale and an id', () => {
  /** Seven digits of which the check letter is G: a sound id that reads as a weight too. */
  function twoFaced(): string {
    for (let number = 1; number < 10_000; number += 1) {
      const body = String(number).padStart(7, '0');
      const value = [...body].reduce((sum, digit) => sum * 32 + Number(digit), 0);
      if (checkSymbol(value) === 'G' && encodeBase32(value).padStart(7, '0') === body) return `${body}G`;
    }
    throw new RangeError('no such id');
  }
  it('where a text is both, the code comes first and the weight is told beside it', () => {
    const both = twoFaced();
    expect(isId(both)).toBe(true);
    const [scan] = type(keys(both, 10)).scans;
    expect(scan?.code).toMatchObject({ ok: true, value: { id: both } });
    expect(scan?.scale).toMatchObject({ ok: true });
  });
  it('no id is ever taken for a weight, at any pace, while somebody weighs', () => {
    fc.assert(
      fc.property(fc.nat(2 ** 24 - 1), fc.integer({ min: 1, max: 39 }), (counter, gapMs) => {
        const id = anId(counter);
        const [scan] = type(keys(id, gapMs)).scans;
        expect(scan?.code).toMatchObject({ ok: true, value: { id } });
      }),
    );
  });
  it('no line with a unit is ever taken for a code of ours, but for the digits that end with a G', () => {
    fc.assert(
      fc.property(fc.nat(99_999), fc.nat(9), fc.constantFrom('g', 'kg', 'oz', 'lb'), (whole, part, unit) => {
        expect(readPayload(`${whole}.${part} ${unit}`).ok).toBe(false);
      }),
    );
  });
});
