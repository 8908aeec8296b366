import { type Id, parseId } from '../../core/index.ts';

/** How many generations are shown at first, and at most: 255 lines above one animal are more than anybody reads. */
export const GENERATIONS = { usual: 3, most: 8 } as const;

type Query = Readonly<Record<string, string>>;

/** The generations that an address asks for; the usual ones for anything else. */
export function readGenerations(query: Query): number {
  const asked = Number(query['generations'] ?? GENERATIONS.usual);
  const isSound = Number.isInteger(asked) && asked >= 1 && asked <= GENERATIONS.most;
  return isSound ? asked : GENERATIONS.usual;
}

/** The animal that an address compares with. */
export function readOther(query: Query): Id | null {
  const read = parseId(query['with'] ?? '');
  return read.ok ? read.value.id : null;
}

interface Shown {
  readonly generations?: number;
  readonly other?: Id | null;
}

/** The address of a pedigree as it is looked at, so that it outlives the walk to the Scan screen. */
export function addressOf(id: Id, { generations = GENERATIONS.usual, other = null }: Shown = {}): string {
  const said = [
    ...(generations === GENERATIONS.usual ? [] : [`generations=${generations}`]),
    ...(other === null ? [] : [`with=${other}`]),
  ];
  return `/pedigree/${id}${said.length === 0 ? '' : `?${said.join('&')}`}`;
}
