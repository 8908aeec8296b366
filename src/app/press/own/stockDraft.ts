import { type PaperUnit, parsePaperMm, sayPaperMm } from '../../../../print/stocks/lengths.ts';
import { checkStock, type Stock } from '../../../../print/stocks/stock.ts';
import { type Payload, type Problem, problem, type Result } from '../../../core/index.ts';

/** The lines of the form that are lengths, as the log names them. */
export const LENGTH_FIELDS = [
  'pageWidthMm',
  'pageHeightMm',
  'labelWidthMm',
  'labelHeightMm',
  'firstXMm',
  'firstYMm',
  'pitchXMm',
  'pitchYMm',
  'printerInsetMm',
] as const;
export type LengthField = (typeof LENGTH_FIELDS)[number];
export type CountField = 'columns' | 'rows';
export type StockField = 'name' | LengthField | CountField;

/** A stock of the site's own as it stands on the form, all of it as typed. */
export type StockText = Readonly<Record<StockField, string>> & {
  readonly unit: PaperUnit;
  /** One label a page, and the page is the label: rolls and single cards. */
  readonly isRoll: boolean;
};

/** How each line is called in a sentence. */
export const FIELD_WORDS: Readonly<Record<StockField, string>> = {
  name: 'name of the paper',
  pageWidthMm: 'width of the sheet',
  pageHeightMm: 'height of the sheet',
  labelWidthMm: 'width of a label',
  labelHeightMm: 'height of a label',
  columns: 'labels across',
  rows: 'labels down',
  firstXMm: 'place of the first label from the left',
  firstYMm: 'place of the first label from the top',
  pitchXMm: 'step across',
  pitchYMm: 'step down',
  printerInsetMm: 'margin that the printer leaves',
};

/** What the log takes, in mm. */
const LIMITS: Readonly<Record<LengthField, readonly [least: number, most: number]>> = {
  pageWidthMm: [5, 2000],
  pageHeightMm: [5, 2000],
  labelWidthMm: [5, 2000],
  labelHeightMm: [5, 2000],
  firstXMm: [0, 2000],
  firstYMm: [0, 2000],
  pitchXMm: [0, 2000],
  pitchYMm: [0, 2000],
  printerInsetMm: [0, 50],
};
const MOST_LABELS = 100;
const LONGEST_NAME = 80;

/** What is read of the form, line by line; a line that cannot be read has its problem instead. */
export interface ReadStock {
  readonly lengths: Readonly<Partial<Record<LengthField | CountField, number>>>;
  readonly problems: readonly Problem[];
}

/** Reads every line that counts for this kind of stock; where there is one column or row, a step is not asked for. */
export function readLines(text: StockText): ReadStock {
  const problems: Problem[] = [];
  const lengths: Partial<Record<LengthField | CountField, number>> = {};
  const take = (field: LengthField | CountField, read: Result<number>): void => {
    if (read.ok) lengths[field] = read.value;
    else problems.push({ ...read.problem, path: field });
  };
  if (text.name.trim() === '') problems.push(problem('text-missing', { what: FIELD_WORDS.name }, 'name'));
  for (const field of shownFields(text))
    take(field, field === 'columns' || field === 'rows' ? readCount(text, field) : readLength(text, field));
  return { lengths: completed(text, lengths), problems };
}

/** The lines that are asked for. */
export function shownFields({ isRoll, columns, rows }: StockText): readonly (LengthField | CountField)[] {
  if (isRoll) return ['labelWidthMm', 'labelHeightMm', 'printerInsetMm'];
  const steps: readonly LengthField[] = [
    ...(columns.trim() === '1' ? [] : ['pitchXMm' as const]),
    ...(rows.trim() === '1' ? [] : ['pitchYMm' as const]),
  ];
  return [
    ...(['pageWidthMm', 'pageHeightMm', 'labelWidthMm', 'labelHeightMm', 'columns', 'rows'] as const),
    ...(['firstXMm', 'firstYMm'] as const),
    ...steps,
    'printerInsetMm',
  ];
}

/** A stock that can be laid out, or every problem with the line at which it stands. */
export function stockFrom(
  text: StockText,
  id: string,
): { readonly stock: Stock | null; readonly problems: readonly Problem[] } {
  const { lengths, problems } = readLines(text);
  const whole = wholeStock(lengths, id, text.name.trim());
  if (whole === null) return { stock: null, problems };
  const checked = checkStock({ ...whole, id: whole.name || 'this paper' }, (mm) => sayLength(mm, text.unit));
  if (!checked.ok) return { stock: null, problems: [...problems, checked.problem] };
  return { stock: problems.length === 0 ? whole : null, problems };
}

/** What the log keeps. */
export function stockPayload({ id, ...stock }: Stock, typedIn: PaperUnit): Payload<'own-stock-set'> {
  return { stock: id, typedIn, ...stock };
}

/** A stock as the form shows it, in a unit; its name is left to the keeper where it is a copy. */
export function textOfStock(stock: Stock, unit: PaperUnit, name: string): StockText {
  const say = (mm: number): string => sayPaperMm(mm, unit);
  const isRoll =
    stock.columns * stock.rows === 1 &&
    stock.pageWidthMm === stock.labelWidthMm &&
    stock.pageHeightMm === stock.labelHeightMm;
  const lengths = Object.fromEntries(LENGTH_FIELDS.map((field) => [field, say(stock[field])])) as Record<
    LengthField,
    string
  >;
  return { ...lengths, name, unit, isRoll, columns: String(stock.columns), rows: String(stock.rows) };
}

/** The same text in another unit: what can be read is converted, what cannot stays as it is. */
export function inUnit(text: StockText, unit: PaperUnit): StockText {
  const said = LENGTH_FIELDS.map((field): [LengthField, string] => {
    const read = parsePaperMm(text[field], text.unit);
    return [field, read.ok ? sayPaperMm(read.value, unit) : text[field]];
  });
  return { ...text, ...Object.fromEntries(said), unit };
}

/** `66.7 mm`, `2 5/8` typed in inches as `2.625 in`. */
export function sayLength(mm: number, unit: PaperUnit): string {
  return `${sayPaperMm(mm, unit)} ${unit === 'mm' ? 'mm' : 'in'}`;
}

function readLength(text: StockText, field: LengthField): Result<number> {
  const typed = text[field].trim();
  if (typed === '') return { ok: false, problem: problem('text-missing', { what: FIELD_WORDS[field] }) };
  const read = parsePaperMm(typed, text.unit);
  if (!read.ok) return read;
  const [least, most] = LIMITS[field];
  if (read.value >= least && read.value <= most) return read;
  const say = (mm: number): string => sayLength(mm, text.unit);
  const words = { what: FIELD_WORDS[field], length: say(read.value), least: say(least), most: say(most) };
  return { ok: false, problem: problem('paper-length', words) };
}

function readCount(text: StockText, field: CountField): Result<number> {
  const typed = text[field].trim();
  const count = Number(typed);
  if (/^\d{1,3}$/.test(typed) && count >= 1 && count <= MOST_LABELS) return { ok: true, value: count };
  return { ok: false, problem: problem('paper-count', { text: typed, what: FIELD_WORDS[field], most: MOST_LABELS }) };
}

/** Fills in what is not asked for: a roll's page is its label, and one column steps by its own width. */
function completed(
  { isRoll, columns, rows }: StockText,
  read: Partial<Record<LengthField | CountField, number>>,
): ReadStock['lengths'] {
  const { labelWidthMm: width, labelHeightMm: height } = read;
  const across = width === undefined ? {} : { pitchXMm: width };
  const down = height === undefined ? {} : { pitchYMm: height };
  if (!isRoll) return { ...read, ...(columns.trim() === '1' ? across : {}), ...(rows.trim() === '1' ? down : {}) };
  const page = {
    ...(width === undefined ? {} : { pageWidthMm: width }),
    ...(height === undefined ? {} : { pageHeightMm: height }),
  };
  return { ...read, ...across, ...down, ...page, columns: 1, rows: 1, firstXMm: 0, firstYMm: 0 };
}

function wholeStock(lengths: ReadStock['lengths'], id: string, name: string): Stock | null {
  const fields = [...LENGTH_FIELDS, 'columns', 'rows'] as const;
  if (fields.some((field) => lengths[field] === undefined)) return null;
  const of = (field: LengthField | CountField): number => lengths[field] ?? 0;
  return {
    id,
    name: name.slice(0, LONGEST_NAME),
    pageWidthMm: of('pageWidthMm'),
    pageHeightMm: of('pageHeightMm'),
    labelWidthMm: of('labelWidthMm'),
    labelHeightMm: of('labelHeightMm'),
    columns: of('columns'),
    rows: of('rows'),
    firstXMm: of('firstXMm'),
    firstYMm: of('firstYMm'),
    pitchXMm: of('pitchXMm'),
    pitchYMm: of('pitchYMm'),
    printerInsetMm: of('printerInsetMm'),
  };
}
