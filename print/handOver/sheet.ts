import { type Caution, DOSE_CAUTION, type HandOver, sayDayShort, sayGrams } from '../../src/core/index.ts';
import { firstDayOf } from '../growth/geometry.ts';
import { drawGrowth } from '../growth/marks.ts';
import { textMark } from '../layout/blocks.ts';
import type { Mark } from '../layout/marks.ts';
import { PT_MM } from '../layout/measure.ts';
import {
  type Bench,
  BODY_PT,
  type Column,
  heading,
  type PagePiece,
  pairs,
  paragraph,
  space,
  table,
} from '../pack/pieces.ts';
import { wrap } from '../pack/wrap.ts';
import { type BodyCorner, headPiece, stacked } from './head.ts';

/** A hand-over sheet as strips, in the order in which it is read: who it is, what can hurt, what it eats, what to mind. */
export function sheetPieces(
  sheet: HandOver,
  bench: Bench,
  corner: BodyCorner,
  host: string | null,
): readonly PagePiece[] {
  return [
    headPiece(sheet, bench, corner, host),
    ...sheet.cautions.filter(({ danger }) => danger).map((caution) => dangerBand(caution, bench)),
    heading('Who it is', bench),
    ...pairs(sheet.identity, bench),
    ...traitPieces(sheet, bench),
    ...feedingPieces(sheet, bench),
    ...weightPieces(sheet, bench),
    ...healthPieces(sheet, bench),
    heading('What to mind', bench),
    ...signed(
      sheet.cautions.filter(({ danger }) => !danger).map((caution) => cautionPiece(caution, bench)),
      signatures(bench),
    ),
  ];
}

const OFFERS: readonly Column[] = [
  { words: 'day', share: 18 },
  { words: 'offered', share: 34 },
  { words: 'grams', share: 14, align: 'end' },
  { words: 'outcome', share: 34 },
];
const HEALTH: readonly Column[] = [
  { words: 'day', share: 16 },
  { words: 'what', share: 16 },
  { words: 'in full', share: 68 },
];

function traitPieces({ traits, parents }: HandOver, bench: Bench): readonly PagePiece[] {
  const known: readonly (readonly [string, string])[] =
    traits === null
      ? [['Trait code', 'none on record']]
      : [
          ['Trait code', traits.code],
          ['In trade words', traits.words],
          ['For certain', traits.certain.join(', ') || 'nothing beyond the code'],
          ['Only possible', traits.possible.join(', ') || 'nothing'],
        ];
  return [heading('What it carries', bench), ...pairs([...known, ...parents], bench)];
}

function feedingPieces({ feeding, offers, sheds }: HandOver, bench: Bench): readonly PagePiece[] {
  const { eats, every, last, note } = feeding;
  const plan = pairs(
    [
      ['It eats', eats],
      ['How often', every],
      ['Last meal taken', last],
      ...(note === null ? [] : [['Its keeper says', note] as const]),
      ['Sheds', sheds],
    ],
    bench,
  );
  const rows = offers.map(({ day, prey, count, totalG, taken }) => [
    sayDayShort(day),
    `${count} × ${prey}`,
    totalG === null ? '' : sayGrams(totalG),
    taken ? 'taken' : 'refused',
  ]);
  const list = rows.length === 0 ? [paragraph('No offer is on record.', bench)] : table(OFFERS, rows, bench);
  return [heading('Feeding', bench), ...plan, space(1.5), ...list];
}

function weightPieces({ weights, growth, on }: HandOver, bench: Bench): readonly PagePiece[] {
  const head = heading('Weight', bench);
  if (weights.length === 0) return [head, paragraph('No weighing is on record.', bench)];
  const rows = pairs(weights, bench);
  if (growth.weights.length < 2) return [head, ...rows];
  const drawn = drawGrowth(
    growth,
    [firstDayOf(growth, growth.weights[0]?.day ?? on, on), on],
    bench.widthMm,
    bench.measure,
  );
  const plot = drawn.marks.map((mark) => ({ ...mark, yMm: mark.yMm + 1.5 }));
  return [head, ...rows, { heightMm: drawn.heightMm + 1.5, marks: plot }];
}

function healthPieces({ health, holds, hasDoses }: HandOver, bench: Bench): readonly PagePiece[] {
  const rows = health.map(({ day, what, words }) => [sayDayShort(day), what, words]);
  return [
    heading('Health and treatment, the last twelve months', bench),
    ...(rows.length === 0 ? [paragraph('Nothing is on record.', bench)] : table(HEALTH, rows, bench)),
    ...(hasDoses ? [paragraph(DOSE_CAUTION, bench, { gapMm: 1.5 })] : []),
    ...pairs([['Holds that stand', holds.join('; ') || 'none']], bench),
  ];
}

const BAR_PT = 13;
const BAR_PAD_MM = 2.6;

/** What can hurt somebody: white on ink, over the whole width, before anything else is read. */
function dangerBand({ title, words }: Caution, { widthMm, measure }: Bench): PagePiece {
  const room = { widthMm: widthMm - 2 * BAR_PAD_MM, measure };
  const lines = [
    ...wrap(title, 'bold', { ...room, sizePt: BAR_PT }).map((line) => ({ line, sizePt: BAR_PT, cut: 'bold' as const })),
    ...wrap(words, 'regular', { ...room, sizePt: BODY_PT }).map((line) => {
      return { line, sizePt: BODY_PT, cut: 'regular' as const };
    }),
  ];
  const marks: Mark[] = [];
  const topMm = 2.5;
  let yMm = topMm + BAR_PAD_MM / 2;
  for (const { line, sizePt, cut } of lines) {
    marks.push(textMark({ wording: line, cut, xMm: BAR_PAD_MM }, sizePt, yMm + sizePt * PT_MM, 'paper'));
    yMm += sizePt * PT_MM * 1.28;
  }
  const heightMm = yMm + BAR_PAD_MM / 2 - topMm;
  const bar: Mark = { kind: 'rule', xMm: 0, yMm: topMm, widthMm, heightMm };
  return { heightMm: topMm + heightMm, marks: [bar, ...marks] };
}

const EDGE_MM = 3;

/** A caution under its own words, with an edge of ink that leads the eye down the list. */
function cautionPiece({ title, words }: Caution, bench: Bench): PagePiece {
  const text = stacked([
    paragraph(title, bench, { cut: 'bold', leftMm: EDGE_MM, gapMm: 1.8 }),
    paragraph(words, bench, { leftMm: EDGE_MM, gapMm: 0.2 }),
  ]);
  const edge: Mark = { kind: 'rule', xMm: 0, yMm: 2, widthMm: 0.9, heightMm: text.heightMm - 2 };
  return { ...text, marks: [edge, ...text.marks] };
}

/** Names never stand on a page by themselves: whoever signs has the last caution above the line. */
function signed(cautions: readonly PagePiece[], lines: PagePiece): readonly PagePiece[] {
  return [...cautions.map((piece, at) => (at === cautions.length - 1 ? { ...piece, keeps: true } : piece)), lines];
}

const SIGN_TOP_MM = 4;
const LINE_MM = 12;

/** Room for both names, hands and days. */
function signatures(bench: Bench): PagePiece {
  const half = (bench.widthMm - 8) / 2;
  const column = (leftMm: number, title: string): readonly Mark[] => {
    const words = paragraph(title, { ...bench, widthMm: half }, { cut: 'bold', gapMm: 0 });
    const under = paragraph('name, signature, day', { ...bench, widthMm: half }, { gapMm: 0 });
    return [
      ...words.marks.map((mark) => ({ ...mark, xMm: mark.xMm + leftMm, yMm: mark.yMm + SIGN_TOP_MM })),
      { kind: 'rule', xMm: leftMm, yMm: SIGN_TOP_MM + LINE_MM, widthMm: half, heightMm: 0.2 },
      ...under.marks.map((mark) => ({ ...mark, xMm: mark.xMm + leftMm, yMm: mark.yMm + SIGN_TOP_MM + 0.6 + LINE_MM })),
    ];
  };
  return {
    heightMm: SIGN_TOP_MM + LINE_MM + 4.5,
    marks: [...column(0, 'Handed over by'), ...column(half + 8, 'Received by')],
  };
}
