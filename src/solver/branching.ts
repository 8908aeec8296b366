import { AGREED, LARGEST } from './modelData.ts';
import { narrowed } from './narrowing.ts';
import { decideAt, drift, type Frame, type Part, type Solved, splitColumn, standing, withBroken } from './part.ts';

/** What a search is told, in the units of the tableau. */
export interface Terms {
  /** What the root is worth, as another solver found it. */
  readonly top: number;
  /** Nothing worth less counts. */
  readonly floor: number;
  /** A better plan is better by at least this. */
  readonly step: number;
  /** The value of the best plan known before. */
  readonly best: number;
  /** How many parts are looked at before it is given up. */
  readonly parts: number;
  /** Asked at every part. */
  readonly isOver: () => boolean;
  /** Told a better plan, where every column stands in it and nearly its value; gives the value, or null where it is no plan after all. */
  take(x: Float64Array, value: number): number | null;
  /** Told what no plan is worth more than. */
  bound(value: number): void;
}

/** How a search ended: all was looked at, the time was over, or it did not get through or cannot be trusted. */
export type Closed = 'done' | 'stopped' | 'given-up';

/** A value that has drifted by more is not to be trusted; sound ones stay a thousand times below. */
const DRIFTED = 1e-6;
/** So many of the columns whose gains are least are open in the first window of a search for a first plan. */
const FIRST_WINDOW = 60;
/** By so much each further window is wider. */
const WIDER = 1.5;
/** Beyond it nothing is left: scaled values lie below 128, and no case has so many pairs. */
const MOST_WINDOW = 1e8;
/** So many cells of tableaus are kept at most: 160 MB. */
const MOST_CELLS = 2e7;

/**
 * Branch and bound (Land and Doig 1960, from memory) over tableaus: a part whose bound does not pass the best plan is closed, any other is split
 * at a column that stands between 0 and 1.
 */
export class Branching {
  readonly #frame: Frame;
  readonly #terms: Terms;
  #best: number;
  #parts = 0;
  #isSound = true;

  constructor(frame: Frame, terms: Terms) {
    this.#frame = frame;
    this.#terms = terms;
    this.#best = terms.best;
  }

  /** The best plan: while males are split at the part with the highest bound, then in depth, where tableaus are small. */
  best(root: Part): Closed {
    const first = this.#root(root);
    const open = first === null ? [] : [first];
    for (;;) {
      const next = takeHighest(open);
      if (next === null || next.tableau.value <= this.#cutoff()) return this.#isSound ? 'done' : 'given-up';
      this.#terms.bound(next.tableau.value);
      if (this.#splitsMale(next)) open.push(...this.#halves(next, Number.NEGATIVE_INFINITY));
      else this.#deep(next, Number.NEGATIVE_INFINITY);
      if (this.#mustEnd(open)) return this.#closed();
    }
  }

  /**
   * A good plan, soon: the higher half while males are split, then those males stay as they are, and the others are looked at in ever
   * wider windows below the bound until one holds a plan.
   */
  first(root: Part): Closed {
    let part = this.#root(root);
    while (part !== null && !this.#mustEnd([]) && this.#splitsMale(part))
      part = this.#halves(part, Number.NEGATIVE_INFINITY)[0] ?? null;
    if (part === null) return this.#closed();
    const { count, malesFrom } = this.#frame;
    decideAt(part.tableau, (id) => id >= malesFrom && id < count);
    const top = part.tableau.value;
    for (let window = Math.max(firstWindow(part), 2 * this.#terms.step); ; window *= WIDER) {
      this.#deep(part, top - window);
      if (top - window <= this.#cutoff() || window > MOST_WINDOW || this.#mustEnd([])) return this.#closed();
    }
  }

  /** Two solvers that do not agree about the root are not to be trusted. */
  #root(root: Part): Solved | null {
    const solved = this.#solved(root, Number.NEGATIVE_INFINITY);
    const { top } = this.#terms;
    const slack = AGREED * (LARGEST + Math.abs(top));
    const off = solved === null ? top - this.#cutoff() : Math.abs(solved.tableau.value - top);
    if (off > slack) this.#isSound = false;
    return this.#isSound ? solved : null;
  }

  #cutoff(): number {
    return Math.max(this.#terms.floor, this.#best + this.#terms.step);
  }

  #splitsMale({ tableau }: Solved): boolean {
    return (splitColumn(this.#frame, tableau) ?? -1) >= this.#frame.malesFrom;
  }

  #deep(part: Solved, cutoff: number): void {
    if (splitColumn(this.#frame, part.tableau) === null) this.#take(part);
    for (const half of this.#halves(part, cutoff)) {
      if (this.#mustEnd([])) return;
      if (half.tableau.value > Math.max(cutoff, this.#cutoff())) this.#deep(half, cutoff);
    }
  }

  /** What of both halves is worth more than the cutoff, the higher one first; a part that is whole is taken. */
  #halves(part: Solved, cutoff: number): Solved[] {
    const column = splitColumn(this.#frame, part.tableau);
    const gap = part.tableau.value - Math.max(cutoff, this.#cutoff());
    const left = column === null || gap <= 0 ? null : narrowed(this.#frame, part, gap);
    if (left === null) return [];
    const solved = [0, 1].flatMap((to) => {
      const tableau = to === 0 ? left.tableau.copy() : left.tableau;
      decideAt(tableau, (id) => id === column, to);
      return this.#solved({ tableau, decided: left.decided }, cutoff) ?? [];
    });
    return solved.sort((a, b) => b.tableau.value - a.tableau.value);
  }

  /** Null where nothing in it is worth more than the cutoff. */
  #solved({ tableau, decided }: Part, cutoff: number): Solved | null {
    this.#parts++;
    for (let now = tableau; ; ) {
      const ended = now.solve(Math.max(cutoff, this.#cutoff()));
      if (ended === 'stuck') this.#isSound = false;
      const x = standing(this.#frame, { tableau: now, decided });
      if (drift(this.#frame, now, x) > DRIFTED) this.#isSound = false;
      if (ended !== 'best') return null;
      const wider = withBroken(this.#frame, now, x);
      if (wider === null) return { tableau: now, decided, x };
      now = wider;
    }
  }

  #take({ tableau, x }: Solved): void {
    if (tableau.value <= this.#cutoff()) return;
    const value = this.#terms.take(x, tableau.value);
    if (value === null) this.#isSound = false;
    else this.#best = Math.max(this.#best, value);
  }

  #mustEnd(open: readonly Solved[]): boolean {
    if (!this.#isSound || this.#parts > this.#terms.parts || this.#terms.isOver()) return true;
    const cells = open.reduce((sum, { tableau }) => sum + tableau.cells.length, 0);
    if (cells > MOST_CELLS) this.#isSound = false;
    return cells > MOST_CELLS;
  }

  #closed(): Closed {
    if (!this.#isSound || this.#parts > this.#terms.parts) return 'given-up';
    return this.#terms.isOver() ? 'stopped' : 'done';
  }
}

function firstWindow({ tableau: { gain } }: Solved): number {
  const losses = gain.map(Math.abs).sort();
  return losses[Math.min(losses.length - 1, FIRST_WINDOW)] || 1;
}

function takeHighest(open: Solved[]): Solved | null {
  open.sort((a, b) => a.tableau.value - b.tableau.value);
  return open.pop() ?? null;
}
