/** Sums may miss a bound by this; what is taken as a plan is checked anew by core. */
const FEASIBLE = 1e-7;
/** Nothing smaller is divided by. */
const PIVOT = 1e-7;
/** What is left of a difference below this is rounding. */
const NOTHING = 1e-12;
/** Costs that differ by less count as equal: among such the largest pivot is taken. */
const TIE = 1e-9;
/** No program of this kind has needed so many steps for each row and column; one that does goes round in circles. */
const STEPS = 20;

/** How the dual simplex ended: at the best, beaten by the cutoff (or impossible), or without an end that can be trusted. */
export type Ended = 'best' | 'beaten' | 'stuck';

/** Variables with where they stand and what they may be. */
export interface Stand {
  readonly id: Int32Array;
  readonly x: Float64Array;
  readonly low: Float64Array;
  readonly high: Float64Array;
}

const OF_STAND = ['id', 'x', 'low', 'high'] as const;

/**
 * A linear program, to be maximised, at one of its bases: the variable of row i falls by `cells[i × width + j]` for each unit
 * that the variable of column j rises, and `value` rises by `gain[j]`. Every column stands at its low or its high.
 */
export class Tableau {
  readonly height: number;
  readonly width: number;
  readonly cells: Float64Array;
  readonly rows: Stand;
  readonly columns: Stand;
  readonly gain: Float64Array;
  value = 0;

  constructor(height: number, width: number, cells: Float64Array = new Float64Array(height * width)) {
    this.height = height;
    this.width = width;
    this.cells = cells;
    this.rows = emptyStand(height);
    this.columns = emptyStand(width);
    this.gain = new Float64Array(width);
    if (places.length < width) [places, ratios, line] = scratch(2 * width);
  }

  /** The same with some empty rows more. */
  copy(more = 0): Tableau {
    const cells = new Float64Array((this.height + more) * this.width);
    cells.set(this.cells);
    const twin = new Tableau(this.height + more, this.width, cells);
    twin.gain.set(this.gain);
    twin.value = this.value;
    for (const of of OF_STAND) {
      twin.rows[of].set(this.rows[of]);
      twin.columns[of].set(this.columns[of]);
    }
    return twin;
  }

  /**
   * The dual simplex with bounded variables (textbook matter), from columns that all stand where their gain wants them. At every
   * step nothing the program allows is worth more than `value`, so that it may stop as soon as that is down to the cutoff.
   */
  solve(cutoff: number): Ended {
    for (let steps = STEPS * (this.height + this.width); steps > 0; steps--) {
      if (this.value <= cutoff) return 'beaten';
      const row = this.#worstRow();
      if (row < 0) return 'best';
      const ended = this.#mend(row);
      if (ended !== null) return ended;
    }
    return 'stuck';
  }

  #worstRow(): number {
    const { x, low, high } = this.rows;
    let [worst, found] = [FEASIBLE, -1];
    for (let i = 0; i < this.height; i++) {
      const at = x[i] ?? 0;
      const off = Math.max((low[i] ?? 0) - at, at - (high[i] ?? 0));
      if (off <= worst) continue;
      worst = off;
      found = i;
    }
    return found;
  }

  /**
   * Brings a row back to the bound it breaks; says so where nothing can. Columns whose whole range does not suffice go across
   * it, in the order of what that costs, and the first that does suffice takes the row's place (the long-step rule).
   */
  #mend(row: number): Ended | null {
    const { x, low, high } = this.rows;
    const isUnder = (x[row] ?? 0) < (low[row] ?? 0);
    const to = (isUnder ? low[row] : high[row]) ?? 0;
    let left = Math.abs(to - (x[row] ?? 0));
    for (let count = this.#helpers(row, isUnder); count > 0; count--) {
      const chosen = this.#cheapest(row, count);
      const column = places[chosen] ?? 0;
      const [least, most] = [this.columns.low[column] ?? 0, this.columns.high[column] ?? 0];
      left -= Math.abs(this.cells[row * this.width + column] ?? 0) * (most - least);
      if (left <= FEASIBLE) {
        this.pivot(row, column, to);
        return null;
      }
      this.move(column, this.columns.x[column] === least ? most : least);
      places[chosen] = places[count - 1] ?? 0;
      ratios[chosen] = ratios[count - 1] ?? 0;
    }
    return left > FEASIBLE + this.#ignored(row) ? 'beaten' : 'stuck';
  }

  /** The columns that can bring a row back, with what each costs for a unit of the row. */
  #helpers(row: number, isUnder: boolean): number {
    const { width, cells, gain } = this;
    const { x, low, high } = this.columns;
    let count = 0;
    for (let j = 0, at = row * width; j < width; j++, at++) {
      const cell = cells[at] ?? 0;
      if ((cell < PIVOT && cell > -PIVOT) || low[j] === high[j]) continue;
      const mustRise = isUnder ? cell < 0 : cell > 0;
      if (mustRise !== (x[j] === low[j])) continue;
      places[count] = j;
      ratios[count] = Math.abs((gain[j] ?? 0) / cell);
      count++;
    }
    return count;
  }

  /** How far the columns could move a row that are not divided by. */
  #ignored(row: number): number {
    const { low, high } = this.columns;
    let sum = 0;
    for (let j = 0, at = row * this.width; j < this.width; j++, at++) {
      const size = Math.abs(this.cells[at] ?? 0);
      if (size > NOTHING && size < PIVOT) sum += size * ((high[j] ?? 0) - (low[j] ?? 0));
    }
    return sum;
  }

  #cheapest(row: number, count: number): number {
    const at = row * this.width;
    let least = 0;
    for (let k = 1; k < count; k++) if ((ratios[k] ?? 0) < (ratios[least] ?? 0)) least = k;
    const limit = (ratios[least] ?? 0) + TIE;
    let largest = Math.abs(this.cells[at + (places[least] ?? 0)] ?? 0);
    for (let k = 0; k < count; k++) {
      if ((ratios[k] ?? 0) > limit) continue;
      const size = Math.abs(this.cells[at + (places[k] ?? 0)] ?? 0);
      if (size <= largest) continue;
      largest = size;
      least = k;
    }
    return least;
  }

  /** Moves a column across its range. */
  move(column: number, to: number): void {
    const { x } = this.rows;
    const by = to - (this.columns.x[column] ?? 0);
    for (let i = 0, at = column; i < this.height; i++, at += this.width)
      x[i] = (x[i] ?? 0) - (this.cells[at] ?? 0) * by;
    this.value += (this.gain[column] ?? 0) * by;
    this.columns.x[column] = to;
  }

  /** A row's variable goes to `to` and becomes a column, and a column's becomes the row. */
  pivot(row: number, column: number, to: number): void {
    const { width, cells, gain } = this;
    const at = row * width;
    const pivot = cells[at + column] ?? 0;
    const step = ((this.rows.x[row] ?? 0) - to) / pivot;
    for (let j = 0; j < width; j++) {
      const cell = j === column ? 0 : (cells[at + j] ?? 0) / pivot;
      line[j] = cell < NOTHING && cell > -NOTHING ? 0 : cell;
    }
    this.#eliminate(row, column, pivot, step);
    const price = gain[column] ?? 0;
    for (let j = 0; j < width; j++) {
      cells[at + j] = line[j] ?? 0;
      gain[j] = (gain[j] ?? 0) - price * (line[j] ?? 0);
    }
    cells[at + column] = 1 / pivot;
    gain[column] = -price / pivot;
    this.value += price * step;
    exchange(this.rows, row, this.columns, column);
    this.rows.x[row] = (this.rows.x[row] ?? 0) + step;
    this.columns.x[column] = to;
  }

  /** Takes a column out of all other rows; nearly all of the time goes here. */
  #eliminate(row: number, column: number, pivot: number, step: number): void {
    const { height, width, cells } = this;
    const { x } = this.rows;
    const by = line;
    for (let i = 0, from = 0; i < height; i++, from += width) {
      const factor = cells[from + column] ?? 0;
      if (i === row || factor === 0) continue;
      if (factor < NOTHING && factor > -NOTHING) {
        cells[from + column] = 0;
        continue;
      }
      x[i] = (x[i] ?? 0) - factor * step;
      for (let j = 0; j < width; j++) cells[from + j] = (cells[from + j] ?? 0) - factor * (by[j] ?? 0);
      cells[from + column] = -factor / pivot;
    }
  }
}

function emptyStand(count: number): Stand {
  return {
    id: new Int32Array(count),
    x: new Float64Array(count),
    low: new Float64Array(count),
    high: new Float64Array(count),
  };
}

function exchange(rows: Stand, row: number, columns: Stand, column: number): void {
  for (const of of OF_STAND) {
    const before = rows[of][row] ?? 0;
    rows[of][row] = columns[of][column] ?? 0;
    columns[of][column] = before;
  }
}

/** Room for one step, the same for all tableaus, since they take turns. */
let [places, ratios, line] = scratch(512);

function scratch(width: number): [Int32Array, Float64Array, Float64Array] {
  return [new Int32Array(width), new Float64Array(width), new Float64Array(width)];
}
