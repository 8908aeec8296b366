import type { AnimalRecord } from '../../core/index.ts';

export type Sex = AnimalRecord['sex'];

interface ShapeProps {
  readonly x: number;
  readonly y: number;
  readonly sex: Sex;
  readonly isDead: boolean;
  readonly isAgain: boolean;
}

/**
 * A square is a male, a circle a female, a diamond an animal of unknown sex; a stroke through it means dead, a double
 * line between parents that they are related (Bennett et al. 1995, J Genet Couns 4:267, and 2008, 17:424, the
 * standardized human pedigree nomenclature; from memory). A double outline for one drawn before is our own.
 */
export function Shape({ x, y, sex, isDead, isAgain }: ShapeProps) {
  return (
    <g class={`sex-shape sex-shape-${sex}`} transform={`translate(${x} ${y})`}>
      <Outline sex={sex} r={isAgain ? 10 : 8} />
      {isAgain && <Outline sex={sex} r={5.5} />}
      {isDead && <path class="sex-dead" d="M-12 12L12 -12" />}
    </g>
  );
}

function Outline({ sex, r }: { readonly sex: Sex; readonly r: number }) {
  switch (sex) {
    case 'male':
      return <rect x={-r} y={-r} width={2 * r} height={2 * r} />;
    case 'female':
      return <circle r={r + 0.5} />;
    case 'unsexed':
      return <path d={`M0 ${-r * 1.3}L${r * 1.3} 0L0 ${r * 1.3}L${-r * 1.3} 0Z`} />;
    default:
      return sex satisfies never;
  }
}

/** The shape alone, for a line of text that also says the word. */
export function SexShape({ sex }: { readonly sex: Sex }) {
  return (
    <svg class="sex-mark" viewBox="-13 -13 26 26" width="22" height="22" aria-hidden="true">
      <Shape x={0} y={0} sex={sex} isDead={false} isAgain={false} />
    </svg>
  );
}
