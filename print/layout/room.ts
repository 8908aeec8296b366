import type { CardLine } from '../../src/core/index.ts';
import { bandRoom, tabRoom } from './flags.ts';
import type { Frame } from './frame.ts';
import { type Measure, PT_MM } from './measure.ts';
import { BROKEN, sizeIn, TIGHTEST } from './settings.ts';
import type { Worded, WordedCard, Wording } from './words.ts';

const MOST_ROWS = 4;
/** Up to so many rows of the longest words are better than one row of shorter ones that do not fit either. */
const FEW_ROWS = 2;
const BESIDE_SEX = 0.75 * PT_MM;

/**
 * What a card can say on labels of this size: wordings too wide even in the smallest type are set aside, and a line
 * left with none is broken into rows. A line that cannot be broken either stays as it is, and will not fit.
 */
export function roomed(card: WordedCard, frame: Frame, measure: Measure): WordedCard {
  const sex = card.lines.find((line) => line.of.slot === 'sex')?.wordings[0];
  const besideSex = sex ? (sex.widthAtOnePt + BESIDE_SEX) * TIGHTEST.speciesPt : 0;
  const beside = frame.code.besideMm - frame.left;
  const lines = card.lines.flatMap((line) => {
    const { slot } = line.of;
    const narrow = slot === 'species' ? beside - besideSex : beside;
    const first = slot === 'name' || slot === 'species' ? within(line, narrow, sizeIn(TIGHTEST, slot)) : null;
    return first ?? within(line, frame.right - frame.left, sizeIn(TIGHTEST, slot)) ?? broken(line, frame, measure);
  });
  const flags = card.flags.map((flag) => {
    const band =
      flag.of.kind === 'hold' || flag.of.kind === 'vet' ? within(flag, bandRoom(frame), TIGHTEST.holdPt) : null;
    return band ?? within(flag, tabRoom(frame), TIGHTEST.flagPt) ?? flag;
  });
  return { lines, flags };
}

function within<T>(worded: Worded<T>, widthMm: number, sizePt: number): Worded<T> | null {
  const wordings = worded.wordings.filter(({ widthAtOnePt }) => widthAtOnePt * sizePt <= widthMm);
  return wordings.length > 0 ? { ...worded, wordings } : null;
}

/** The line in rows: its longest wording if two rows hold it, else the one that needs the fewest. */
function broken(line: Worded<CardLine>, frame: Frame, measure: Measure): readonly Worded<CardLine>[] {
  const most = (frame.right - frame.left) / sizeIn(BROKEN, line.of.slot);
  let best: readonly Wording[] | null = null;
  for (const wording of line.wordings) {
    const rows = rowsOf(wording, line, most, measure);
    if (rows.length <= MOST_ROWS && (best === null || (best.length > FEW_ROWS && rows.length < best.length)))
      best = rows;
  }
  if (best === null || best.some(({ widthAtOnePt }) => widthAtOnePt > most)) return [line];
  return best.map((row, at) => ({ ...line, wordings: [row], follows: at > 0 }));
}

/** A wording cut into rows of at most that width at 1 pt, after its commas if that will do, else at its spaces. */
export function rowsOf(
  { text, form }: Wording,
  { cut }: Pick<Worded<unknown>, 'cut'>,
  most: number,
  measure: Measure,
): readonly Wording[] {
  const width = (part: string) => measure.read(part, cut).widthAtOnePt;
  const parts = text.split(/(?<=[,;·]) /).flatMap((part) => (width(part) <= most ? [part] : part.split(/ (?!%)/)));
  const rows: Wording[] = [];
  for (const part of parts) {
    const last = rows.at(-1);
    const joined = last ? `${last.text} ${part}` : part;
    if (last && width(joined) <= most) rows[rows.length - 1] = { form, text: joined, widthAtOnePt: width(joined) };
    else rows.push({ form, text: part, widthAtOnePt: width(part) });
  }
  return rows;
}
