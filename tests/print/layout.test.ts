import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  cardFrame,
  type Face,
  layCard,
  type Mark,
  OFFICE_600,
  openTypeface,
  PT_MM,
  STOCKS,
  type Stock,
  stockById,
  type TextMark,
} from '../../print/index.ts';
import { loadFonts } from '../../print/node/index.ts';
import { CARD_SLOTS, type CardContent } from '../../src/core/index.ts';
import { CROWDED, cardOf, FLAGS, type LineRow, onDay, SPARSE, USUAL } from './cards.ts';

const measure = openTypeface(await loadFonts());
const printedOn = onDay('2026-11-25');
const SMALLEST_PT = 7;
const PRIMARY: readonly Stock[] = ['a4-85x54', 'a4-70x52', 'letter-88.9x50.8', 'card-85x54', 'card-70x52'].map(stockOf);

function stockOf(id: string): Stock {
  const stock = stockById(id);
  if (!stock.ok) throw new RangeError(stock.problem.message);
  return stock.value;
}

function lay(content: CardContent, stock: Stock) {
  return layCard(content, { frame: cardFrame(stock, 25, OFFICE_600), measure, printedOn, stockId: stock.id });
}

function facesOf(content: CardContent, stock = stockOf('a4-85x54')): readonly Face[] {
  const laid = lay(content, stock);
  if (!laid.ok) throw new RangeError(laid.problem.message);
  return laid.value;
}

function codeOf(content: CardContent, stock = stockOf('a4-85x54')): string {
  const laid = lay(content, stock);
  return laid.ok ? 'printed' : laid.problem.code;
}

function texts(face: Face | undefined): readonly TextMark[] {
  return face?.marks.flatMap((mark) => (mark.kind === 'text' ? [mark] : [])) ?? [];
}

function textOf(face: Face | undefined, start: string): TextMark {
  const found = texts(face).find(({ text }) => text.startsWith(start));
  if (!found) throw new RangeError(`no text “${start}” on ${face?.lines.join(' | ')}`);
  return found;
}

function kinds(face: Face | undefined): readonly Mark['kind'][] {
  return face?.marks.map(({ kind }) => kind) ?? [];
}

describe('a sparse card', () => {
  const [face, ...more] = facesOf(cardOf(1, SPARSE));

  test('stands on one face, all of it in the long form, in reading order', () => {
    expect(more).toEqual([]);
    expect(face?.form).toBe('long');
    expect(face?.lines.slice(1, -1)).toEqual(['Nightjar', '1.0', 'Ball python', 'Due Tue 1 Dec 2026']);
    expect(face?.lines[0]).toMatch(/^[0-9A-Z]{4}-[0-9A-Z]{4}$/);
    expect(face?.lines.at(-1)).toMatch(/^printed 25 Nov 2026 · rev \w{4}$/);
  });

  test('says when it is due largest, in the bold cut, under the code', () => {
    const due = textOf(face, 'Due');
    expect(due.cut).toBe('bold');
    expect(due.sizePt).toBe(Math.max(...texts(face).map(({ sizePt }) => sizePt)));
    expect(due.yMm).toBeGreaterThan(cardFrame(stockOf('a4-85x54'), 25, OFFICE_600).code.belowMm);
  });

  test('has its id bold at 18 to 19 pt, level with the top of the code', () => {
    const id = texts(face)[0];
    expect(id?.cut).toBe('bold');
    expect(id?.sizePt).toBeGreaterThanOrEqual(18);
    const { yMm } = cardFrame(stockOf('a4-85x54'), 25, OFFICE_600).code;
    expect((id?.yMm ?? 0) - measure.capHeight * (id?.sizePt ?? 0) * PT_MM).toBeCloseTo(yMm, 6);
  });
});

describe('legibility', () => {
  // Source: ISO 9241 by way of docs/sources.md: 12 pt of this type's capitals is about 20' at half a metre.
  test('a usual card of 85 × 54 mm has id, name, feed and due at 12 pt or more', () => {
    const [face] = facesOf(cardOf(2, USUAL));
    expect(face?.form).toBe('long');
    for (const start of ['Marigold', 'Due', '1 × small rat'])
      expect(textOf(face, start).sizePt).toBeGreaterThanOrEqual(12);
    for (const text of texts(face)) expect(text.sizePt).toBeGreaterThanOrEqual(SMALLEST_PT);
  });

  test.each(PRIMARY.map((stock) => [stock.id, stock] as const))(
    '%s: no text is under 7 pt, however crowded',
    (_id, stock) => {
      for (const flags of [[], FLAGS])
        for (const face of facesOf(cardOf(3, CROWDED, flags), stock))
          for (const { sizePt } of texts(face)) expect(sizePt).toBeGreaterThanOrEqual(SMALLEST_PT);
    },
  );
});

describe('forms', () => {
  const long = 'A name that is far too long to stand beside any code on any card of this size';

  test('the longest form that fits is taken', () => {
    const [face] = facesOf(cardOf(4, [['name', 1, true, long, 'Of middling length', 'Short']]));
    expect([face?.lines[1], face?.form]).toEqual(['Of middling length', 'medium']);
  });

  test('a line too wide for the label in any form is broken after its commas, whole and in order', () => {
    const words = 'Normal, het Diffused, het Anerythristic, 60 % het Lavender, 25 % het Motley, het Hypomelanistic';
    const [face, ...more] = facesOf(cardOf(5, [...SPARSE, ['traitWords', 4, false, words]]));
    expect(more).toEqual([]);
    const rows = face?.lines.filter((line) => words.includes(line)) ?? [];
    expect([rows.join(' '), rows.length, rows[0]?.endsWith(',')]).toEqual([words, 2, true]);
  });

  test('one line that must be short leaves the others long', () => {
    const [face] = facesOf(
      cardOf(5, [...USUAL, ['pairings', 3, false, `${long}, ${long}`, `${long}, twice`, 'Locks 11 Nov']]),
    );
    expect(face?.lines).toContain('Locks 11 Nov');
    for (const words of ['Marigold of the Lower Shelf', 'Ball python (Python regius)', 'Due Tue 1 Dec 2026'])
      expect(face?.lines).toContain(words);
  });

  test('a card too full for one face moves its highest ranks to a second, which names the animal again', () => {
    const more = Array.from(
      { length: 6 },
      (_none, at): LineRow => ['pairings', 4, false, `Pairing ${at + 1} with K2M4-77QA, last lock on 11 Nov 2026`],
    );
    const [front, back] = facesOf(cardOf(6, [...USUAL, ...more]));
    expect([front?.back, back?.back]).toEqual([false, true]);
    expect(back?.lines.some((line) => line.startsWith('Pairing 6'))).toBe(true);
    expect(back?.lines[0]).toBe(front?.lines[0]);
    expect(back?.lines).toContain('Marigold of the Lower Shelf');
    expect(back?.lines.at(-1)).toMatch(/^second face · printed/);
    for (const [slot, rank, , text = ''] of USUAL)
      if (rank === 1)
        expect([slot, front?.lines.some((line) => line.startsWith(text.slice(0, 4)))]).toEqual([slot, true]);
  });

  test('a line of rank 1 that fits nowhere leaves the card out, with the reason', () => {
    const word = 'Unbreakable'.repeat(7);
    const laid = lay(cardOf(7, [['name', 1, true, word]]), stockOf('a4-70x52'));
    expect(laid.ok ? null : [laid.problem.code, laid.problem.message]).toEqual([
      'piece-unfit',
      expect.stringContaining('(name) does not fit on a4-70x52'),
    ]);
  });

  test('a label too low for the code holds no card', () => {
    expect(codeOf(cardOf(8, SPARSE), stockOf('letter-66.67x25.4'))).toBe('piece-unfit');
  });
});

describe('flags', () => {
  test('each is a notched tab with its word in paper on ink', () => {
    const [face] = facesOf(
      cardOf(9, SPARSE, [
        ['two-people', 'Two people'],
        ['venomous', 'VENOMOUS'],
      ]),
    );
    expect(kinds(face).filter((kind) => kind === 'notch')).toHaveLength(2);
    for (const word of ['Two people', 'VENOMOUS']) {
      const text = textOf(face, word);
      expect([text.tone, text.cut]).toEqual(['paper', 'bold']);
      const tab = face?.marks.find(
        (mark) => mark.kind === 'notch' && mark.xMm < text.xMm && mark.xMm + mark.widthMm > text.xMm + text.widthMm,
      );
      expect(tab).toBeDefined();
    }
  });

  test('a hold is a hatched band across the card, over what is due, with its words in the clear', () => {
    const [face] = facesOf(cardOf(10, SPARSE, [['hold', 'HOLD until the vet’s word']]));
    const hold = textOf(face, 'HOLD');
    const fields = face?.marks.flatMap((mark) => (mark.kind === 'hatch' ? [mark] : [])) ?? [];
    expect(fields).toHaveLength(2);
    for (const field of fields)
      expect(field.xMm + field.widthMm <= hold.xMm || field.xMm >= hold.xMm + hold.widthMm).toBe(true);
    expect(hold.yMm).toBeLessThan(textOf(face, 'Due').yMm);
    expect(hold.sizePt).toBeGreaterThanOrEqual(11);
  });

  test('why and until when an animal is held is not shortened where the label can hold it', () => {
    const [face] = facesOf(cardOf(11, USUAL, [['hold', 'Hold until 13 Dec 2026: cooled', 'Hold', 'H']]));
    expect(textOf(face, 'Hold').text).toBe('Hold until 13 Dec 2026: cooled');
  });

  test('a vet’s word outranks a hold: it has the band, and the hold a tab', () => {
    const [face] = facesOf(
      cardOf(11, SPARSE, [
        ['hold', 'Hold'],
        ['vet', 'Vet’s word needed'],
      ]),
    );
    expect([textOf(face, 'Hold').tone, textOf(face, 'Vet').tone]).toEqual(['paper', 'ink']);
  });

  test('a flag never goes to the second face', () => {
    for (const face of facesOf(cardOf(11, CROWDED, FLAGS)))
      expect(kinds(face).filter((kind) => kind === 'notch').length).toBe(face.back ? 0 : 3);
  });
});

describe('PRINT-SPELL: signs', () => {
  test('a sign that the type lacks stands as its number', () => {
    const [face] = facesOf(cardOf(12, [['name', 1, true, 'Sun 日 and 月🐍']]));
    expect(face?.lines[1]).toBe('Sun U+65E5 and U+6708 U+1F40D');
  });

  test('a name of many such signs leaves the card out and names them', () => {
    const laid = lay(cardOf(12, [['name', 1, true, 'ニシキヘビのたまごは']]), stockOf('a4-85x54'));
    expect(laid.ok ? null : [laid.problem.code, laid.problem.message.slice(0, 45)]).toEqual([
      'glyph-missing',
      'The type has no sign for ニ (U+30CB) シ (U+30B7',
    ]);
  });

  test('a shorter form without that sign is taken instead', () => {
    const [face] = facesOf(cardOf(13, [['name', 1, true, 'Sun 日', 'Sun']]));
    expect([face?.lines[1], face?.form]).toEqual(['Sun', 'medium']);
  });

  test.each([
    ['Ångström Żubrówka Éclair Ñandú Çiğ', 'Ångström Żubrówka Éclair Ñandú Çiğ'],
    ['A\u030angstro\u0308m', 'Ångström'],
    ['  two\u00a0 words\n', 'two words'],
  ])('“%s” is printed as “%s”', (name, printed) => {
    expect(facesOf(cardOf(14, [['name', 1, true, name]]))[0]?.lines[1]).toBe(printed);
  });
});

describe('laws', () => {
  const word = fc.string({
    unit: fc.constantFrom(...'abcdefghijklmnopqrstuvwxyzÅÉŻñ0123456789-/+·'),
    minLength: 1,
    maxLength: 14,
  });
  const words = (most: number) => fc.array(word, { minLength: 1, maxLength: most }).map((all) => all.join(' '));
  const row = fc
    .record({
      slot: fc.constantFrom(...CARD_SLOTS),
      rank: fc.integer({ min: 1, max: 4 }),
      strong: fc.boolean(),
      long: words(8),
      medium: words(4),
      short: word,
    })
    .map(({ slot, rank, strong, long, medium, short }): LineRow => [slot, rank, strong, long, medium, short]);
  const anyCard = fc
    .record({ rows: fc.array(row, { maxLength: 14 }), flags: fc.subarray([...FLAGS]) })
    .map(({ rows, flags }) => cardOf(15, rows, flags));
  const anyStock = fc.constantFrom(...STOCKS);

  test('a card is refused, or every line of it stands on a face in one of its forms', () => {
    void fc.assert(
      fc.property(anyCard, anyStock, (card, stock) => {
        const laid = lay(card, stock);
        if (!laid.ok) return;
        const printed = laid.value.flatMap(({ lines }) => lines).join(' ');
        for (const { long, medium, short } of [...card.lines, ...card.flags])
          expect([long, medium, short].some((text) => printed.includes(text))).toBe(true);
      }),
      { numRuns: 400 },
    );
  });

  test('every mark stands inside the label, no text on another, and none in the code’s quiet zone', () => {
    let seen = 0;
    void fc.assert(
      fc.property(anyCard, anyStock, (card, stock) => {
        const laid = lay(card, stock);
        if (!laid.ok) return;
        const { code, left, right, top, bottom } = cardFrame(stock, 25, OFFICE_600);
        for (const face of laid.value) {
          const boxes = texts(face).map(inkOf);
          seen += boxes.length;
          for (const [at, box] of boxes.entries()) {
            expect(
              box.left >= left - 0.01 &&
                box.right <= right + 0.01 &&
                box.top >= top - 0.01 &&
                box.bottom <= bottom + 0.5,
            ).toBe(true);
            expect(box.right <= code.besideMm + 0.01 || box.top >= code.belowMm - 0.5).toBe(true);
            for (const other of boxes.slice(at + 1))
              expect(
                box.right <= other.left ||
                  other.right <= box.left ||
                  box.bottom <= other.top ||
                  other.bottom <= box.top,
              ).toBe(true);
          }
        }
      }),
      { numRuns: 400 },
    );
    expect(seen).toBeGreaterThan(500);
  });
});

/** From the top of the small letters' ascenders to the baseline: what may never touch. */
function inkOf({ xMm, yMm, widthMm, sizePt }: TextMark) {
  return { left: xMm, right: xMm + widthMm, top: yMm - measure.capHeight * sizePt * PT_MM, bottom: yMm };
}
