import {
  type Day,
  type LabelContent,
  type LabelLine,
  ok,
  type Result,
  refuse,
  sayDayShort,
} from '../../src/core/index.ts';
import { qrPayload } from '../qr/payload.ts';
import type { PrinterProfile } from '../qr/profiles.ts';
import { labelSymbols, type QrSymbol } from '../qr/symbol.ts';
import type { Stock } from '../stocks/stock.ts';
import { barRooms } from './barRoom.ts';
import { type Face, finish } from './card.ts';
import type { CodeRoom } from './frame.ts';
import type { SetFace } from './front.ts';
import { type LabelFrame, labelFrames } from './labelFrame.ts';
import type { Measure } from './measure.ts';
import { setSign } from './sign.ts';
import { setTag } from './tag.ts';
import { setTreatment } from './treatment.ts';
import { FORMS, type Form, type Worded, word } from './words.ts';

/** What a label is set with. */
export interface LabelSetting {
  readonly stock: Stock;
  readonly printer: PrinterProfile;
  readonly measure: Measure;
  readonly printedOn: Day;
  readonly host?: string | undefined;
}

/** A label's face with the code that stands on it. */
export interface LaidLabel {
  readonly face: Face;
  readonly code: CodeRoom;
  readonly symbol: QrSymbol;
  /** True where a bar code belongs on it and had no room. */
  readonly lacksBar?: boolean;
}

/**
 * Sets a label: with the longest words and the largest code that the stock’s size offers, and then in the largest type. A code
 * with the site’s address that is too large for a small label gives way to the bare id, which the app reads as well; a bar
 * code that has no room in any way is left off, and `lacksBar` says so.
 * Errors: `glyph-missing`, `piece-unfit`. No word is cut or dropped.
 */
export function layLabel(label: LabelContent, setting: LabelSetting): Result<LaidLabel> {
  if (isSheet(label)) {
    const faces = layLabelFaces(label, setting);
    if (!faces.ok) return faces;
    const [only, ...others] = faces.value;
    return only !== undefined && others.length === 0 ? ok(only) : unfit(label, setting);
  }
  const lines: Worded<LabelLine>[] = [];
  for (const line of label.lines) {
    const worded = word(line, line.strong ? 'bold' : 'regular', setting.measure);
    if (!worded.ok) return worded;
    if (worded.value.wordings.length > 0) lines.push(worded.value);
  }
  const print = word(smallPrint(label, setting.printedOn), 'regular', setting.measure);
  if (!print.ok) return print;
  const set = setAny(label, lines, setting, print.value);
  if (set !== null) return ok(set);
  return unfit(label, setting);
}

/**
 * Sets a label on as many faces as it needs: the papers of a treatment may have more than one, everything else has its one.
 * Errors: as {@link layLabel}.
 */
export function layLabelFaces(label: LabelContent, setting: LabelSetting): Result<readonly LaidLabel[]> {
  if (!isSheet(label)) {
    const laid = layLabel(label, setting);
    return laid.ok ? ok([laid.value]) : laid;
  }
  const lines: Worded<LabelLine>[] = [];
  for (const line of label.lines) {
    const worded = word(line, line.strong ? 'bold' : 'regular', setting.measure);
    if (!worded.ok) return worded;
    if (worded.value.wordings.length > 0) lines.push(worded.value);
  }
  const print = facePrint(label, setting);
  if (!print.ok) return print;
  for (const symbol of payloadsOf(label, setting.host).flatMap(labelSymbols)) {
    const frames = labelFrames(label.kind, setting.stock, symbol.size, setting.printer);
    const set = setTreatment({ lines, measure: setting.measure, frames, print: print.value });
    if (set !== null)
      return ok(set.map(({ face, frame }, at) => ({ face: finish(face, at > 0), code: frame.code, symbol })));
  }
  return unfit(label, setting);
}

function isSheet({ kind }: LabelContent): boolean {
  return kind === 'treatment' || kind === 'tube';
}

function unfit(label: LabelContent, { stock }: LabelSetting): Result<never> {
  return refuse('piece-unfit', { what: label.called, stock: stock.id });
}

/** The small print with the number of the face, where there is more than one. */
function facePrint(label: LabelContent, { printedOn, measure }: LabelSetting) {
  const { long, medium, short } = smallPrint(label, printedOn);
  const plain = word({ long, medium, short }, 'regular', measure);
  if (!plain.ok) return plain;
  return ok((face: number, faces: number): Worded<unknown> => {
    if (faces === 1) return plain.value;
    const of = `face ${face} of ${faces}`;
    const forms = { long: `${of} · ${long}`, medium: `${of} · ${medium}`, short: `${of} · ${short}` };
    const worded = word(forms, 'regular', measure);
    return worded.ok ? worded.value : plain.value;
  });
}

/** With its bar code in whatever way there is one, else without it. */
function setAny(
  label: LabelContent,
  lines: readonly Worded<LabelLine>[],
  setting: LabelSetting,
  print: Worded<unknown>,
): LaidLabel | null {
  const symbols = payloadsOf(label, setting.host).flatMap(labelSymbols);
  for (const bar of label.bar === undefined ? [null] : [label.bar, null])
    for (const symbol of symbols) {
      const frames = labelFrames(label.kind, setting.stock, symbol.size, setting.printer);
      for (const [limit, frame] of tries(frames)) {
        const rooms = bar === null ? [{ frame, marks: [] }] : barRooms(bar, frame, setting);
        for (const room of rooms) {
          const face = setOn(label, lines, room.frame, { print, measure: setting.measure, limit });
          if (face === null) continue;
          const whole = finish({ ...face, marks: [...face.marks, ...room.marks] }, false);
          return { face: whole, code: frame.code, symbol, lacksBar: bar === null && label.bar !== undefined };
        }
      }
    }
  return null;
}

/** Shorter words and a smaller code cost the same; of two tries that cost as much, the larger code comes first. */
function tries(frames: readonly LabelFrame[]): readonly (readonly [Form, LabelFrame])[] {
  const all = frames.flatMap((frame, smaller) =>
    FORMS.map((form, shorter) => ({ form, frame, cost: smaller + shorter })),
  );
  return all.toSorted((a, b) => a.cost - b.cost).map(({ form, frame }) => [form, frame]);
}

interface Setter {
  readonly print: Worded<unknown>;
  readonly measure: Measure;
  readonly limit: Form;
}

function setOn(
  { kind }: LabelContent,
  lines: readonly Worded<LabelLine>[],
  frame: LabelFrame,
  { print, measure, limit }: Setter,
): SetFace | null {
  return kind === 'clutch' || kind === 'pairing' || kind === 'lot'
    ? setTag(lines, { frame, measure, print }, limit)
    : setSign(kind, lines, frame, measure, limit);
}

function payloadsOf({ code }: LabelContent, host: string | undefined): readonly string[] {
  return code.says === 'text' ? [code.text] : [...new Set([qrPayload(code.id, host), code.id])];
}

/** Tags and papers of a treatment have it: what else is printed here does not go out of date. */
function smallPrint(label: LabelContent, printedOn: Day) {
  const revision = label.revision.slice(0, 4);
  const medium = `${sayDayShort(printedOn)} · rev ${revision}`;
  return { long: `printed ${medium}`, medium, short: `${printedOn} · ${revision}` };
}
