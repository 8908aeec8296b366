import { type Frame, type Part, WHOLE } from './part.ts';
import { type Stand, Tableau } from './tableau.ts';

/** A row that can break its bound by no more than this keeps it. */
const KEPT = 1e-9;

/**
 * The same part without all that cannot change any more in a plan worth more than the tableau's value less `gap`: columns
 * whose gain says so, and rows that no column left can break. Null where no whole plan is left.
 *
 * Reduced-cost fixing (textbook matter). Why it holds: a column that leaves its bound by d costs |gain| × d, so that d ≤ gap ÷ |gain|, and where only whole
 * steps are possible (columns, slacks of rows in whole numbers) d is at most that rounded down.
 */
export function narrowed(frame: Frame, { tableau, decided }: Part, gap: number): Part | null {
  const { width, height, cells, rows } = tableau;
  const known = decided.slice();
  makeRoom(width, height);
  const open = openColumns(frame, tableau, gap, known);
  let kept = 0;
  for (let i = 0; i < height; i++) {
    const [from, into] = [i * width, kept * open];
    for (let k = 0; k < open; k++) room[into + k] = cells[from + (keptColumns[k] ?? 0)] ?? 0;
    const id = rows.id[i] ?? 0;
    const x = rows.x[i] ?? 0;
    if (id >= frame.count ? canBreak(rows, i, into, open) : isMoved(into, open)) {
      keptRows[kept] = i;
      kept++;
    } else if (id < frame.count) {
      if (Math.abs(x - Math.round(x)) > WHOLE) return null;
      known[id] = Math.round(x);
    }
  }
  return { tableau: cutOut(tableau, kept, open), decided: known };
}

/** Notes which columns stay open and how far each may still rise and fall; the others are decided where they stand. */
function openColumns(
  { count, isWhole }: Frame,
  { columns, gain, width }: Tableau,
  gap: number,
  known: Int8Array,
): number {
  const { id, x, low, high } = columns;
  let open = 0;
  for (let j = 0; j < width; j++) {
    const variable = id[j] ?? 0;
    const at = x[j] ?? 0;
    const most = gap / Math.abs(gain[j] ?? 0);
    const isStepped = variable < count || isWhole[variable - count] === true;
    const range = Math.min(isStepped ? Math.floor(most + WHOLE) : most, (high[j] ?? 0) - (low[j] ?? 0));
    if (range === 0) {
      if (variable < count) known[variable] = Math.round(at);
      continue;
    }
    const isLow = at === low[j];
    keptColumns[open] = j;
    rises[open] = isLow ? range : 0;
    falls[open] = isLow ? 0 : range;
    open++;
  }
  return open;
}

/** Whether the open columns can bring a row beyond its bounds. */
function canBreak({ x, low, high }: Stand, row: number, into: number, open: number): boolean {
  let least = x[row] ?? 0;
  let most = least;
  for (let k = 0; k < open; k++) {
    const cell = room[into + k] ?? 0;
    if (cell === 0) continue;
    const [down, up] = [cell * (rises[k] ?? 0), cell * (falls[k] ?? 0)];
    least += Math.min(-down, up);
    most += Math.max(-down, up);
  }
  return least < (low[row] ?? 0) - KEPT || most > (high[row] ?? 0) + KEPT;
}

function isMoved(into: number, open: number): boolean {
  for (let k = 0; k < open; k++) if (room[into + k] !== 0) return true;
  return false;
}

/** The kept rows and columns. */
function cutOut(tableau: Tableau, height: number, width: number): Tableau {
  const cut = new Tableau(height, width, room.slice(0, height * width));
  cut.value = tableau.value;
  takeFrom(tableau.columns, keptColumns, cut.columns);
  takeFrom(tableau.rows, keptRows, cut.rows);
  for (let k = 0; k < width; k++) {
    cut.gain[k] = tableau.gain[keptColumns[k] ?? 0] ?? 0;
    const at = cut.columns.x[k] ?? 0;
    cut.columns.low[k] = at - (falls[k] ?? 0);
    cut.columns.high[k] = at + (rises[k] ?? 0);
  }
  return cut;
}

function takeFrom(all: Stand, places: Int32Array, into: Stand): void {
  for (let k = 0; k < into.id.length; k++) {
    const at = places[k] ?? 0;
    into.id[k] = all.id[at] ?? 0;
    into.x[k] = all.x[at] ?? 0;
    into.low[k] = all.low[at] ?? 0;
    into.high[k] = all.high[at] ?? 0;
  }
}

/** Room for one narrowing, the same for all. */
let room = new Float64Array(0);
let [keptColumns, keptRows] = [new Int32Array(0), new Int32Array(0)];
let [rises, falls] = [new Float64Array(0), new Float64Array(0)];

function makeRoom(width: number, height: number): void {
  if (room.length < height * width) room = new Float64Array(height * width);
  if (keptRows.length < height) keptRows = new Int32Array(height);
  if (keptColumns.length >= width) return;
  keptColumns = new Int32Array(width);
  [rises, falls] = [new Float64Array(width), new Float64Array(width)];
}
