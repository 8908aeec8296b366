import type { Parentage } from '../../core/index.ts';

/** One animal of a ring, and as what the next one stands above it. */
export interface RingLink {
  readonly id: string;
  readonly above: 'sire' | 'dam';
}

/** The first ring of parents among these animals, each below its sire or dam and the last below the first; empty if there is none. */
export function ringIn(pedigree: readonly Parentage[]): readonly RingLink[] {
  const byId = new Map(pedigree.map((one) => [one.id, one]));
  const done = new Set<string>();
  for (const { id } of pedigree) {
    const ring = ringFrom(id, byId, done);
    if (ring.length > 0) return ring;
  }
  return [];
}

interface Open {
  readonly one: Parentage;
  readonly left: ('sire' | 'dam')[];
  at: 'sire' | 'dam';
}

/** Walks up without recursion: a ring may be longer than a stack is deep. */
function ringFrom(start: string, byId: ReadonlyMap<string, Parentage>, done: Set<string>): readonly RingLink[] {
  const way: Open[] = [];
  const places = new Map<string, number>();
  const enter = (id: string): void => {
    const one = byId.get(id);
    if (one === undefined || done.has(id)) return;
    places.set(id, way.length);
    way.push({ one, left: ['dam', 'sire'], at: 'sire' });
  };
  enter(start);
  for (let top = way.at(-1); top !== undefined; top = way.at(-1)) {
    const role = top.left.pop();
    if (role === undefined) {
      done.add(top.one.id);
      places.delete(top.one.id);
      way.pop();
      continue;
    }
    top.at = role;
    const parent = top.one[role];
    if (parent === null) continue;
    const met = places.get(parent);
    if (met !== undefined) return way.slice(met).map(({ one, at }) => ({ id: one.id, above: at }));
    enter(parent);
  }
  return [];
}
