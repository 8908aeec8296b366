import type { ComponentChildren } from 'preact';
import { useMemo, useState } from 'preact/hooks';
import { nameOf } from '../../core/index.ts';
import { useAsked } from '../genetics/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import { AncestorList } from './AncestorList.tsx';
import { Drawing } from './Drawing.tsx';
import { Figures } from './Figures.tsx';
import { Founders } from './Founders.tsx';
import { Generations } from './Generations.tsx';
import { Key } from './Key.tsx';
import { layOut, type Tree, type Way } from './layout.ts';
import { Peek } from './Peek.tsx';
import { Ring } from './Ring.tsx';
import { isNothing } from './ShareWords.tsx';
import { inbredCandidates, type PedigreeStanding } from './standing.ts';
import { useForm } from './useForm.ts';
import { placeOf } from './walk.ts';

interface PedigreeBodyProps {
  readonly standing: PedigreeStanding;
  readonly generations: number;
  step(generations: number): void;
  /** What stands below the figures. */
  readonly children: ComponentChildren;
}

/** The drawing, and beside it what follows from it. */
export function PedigreeBody({ standing, generations, step, children }: PedigreeBodyProps) {
  const { site } = useApp();
  const facility = site.facility.value;
  const { animal, pedigree, completeness, depth, problem, ring } = standing;
  const form = useForm();
  const tree = useMemo(() => layOut(pedigree, { of: animal.id, generations, form }), [pedigree, generations, form]);
  const { at, open, moves, go, peek } = useWalk(tree);
  const of = [animal.id, ...inbredCandidates(tree, pedigree).filter((id) => id !== animal.id)];
  const asked = useAsked(
    problem === null ? { ask: 'lineage', animals: pedigree, of } : null,
    JSON.stringify([of, pedigree]),
  );
  const inbreeding = asked?.at === 'done' ? asked.value.inbreeding : new Map();
  const related = new Set([...inbreeding].filter(([, share]) => !isNothing(share)).map(([id]) => id));
  const spot = tree.spots.find(({ way }) => way === open);
  return (
    <div class="ped-body">
      <div class="ped-first">
        {problem !== null && (
          <>
            <ProblemLine problem={problem} />
            <Ring facility={facility} ring={ring} />
          </>
        )}
        {asked?.at === 'failed' && <ProblemLine problem={asked.problem} />}
        {completeness !== null && depth !== null && (
          <Figures inbreeding={inbreeding.get(animal.id) ?? null} completeness={completeness} depth={depth} />
        )}
      </div>
      <div class="ped-drawing">
        <Generations shown={generations} step={step} />
        <Key />
        <Drawing
          facility={facility}
          tree={tree}
          form={form}
          name={nameOf(facility, animal.id)}
          at={at}
          open={open}
          moves={moves}
          related={related}
          go={go}
          peek={peek}
        />
        <AncestorList facility={facility} tree={tree} />
      </div>
      {spot !== undefined && (
        <Peek
          spot={spot}
          toFirst={() => spot.id !== null && go(placeOf(tree, spot.id) ?? '')}
          close={() => go(spot.way)}
        />
      )}
      {completeness !== null && (
        <div class="ped-beside">
          {children}
          <Founders facility={facility} completeness={completeness} />
        </div>
      )}
    </div>
  );
}

/** Where the keys are and whose peek is open; a way that is no longer drawn falls back to the animal itself. */
function useWalk(tree: Tree) {
  const [wantedAt, setAt] = useState<Way>('');
  const [wantedOpen, setOpen] = useState<Way | null>(null);
  const [moves, setMoves] = useState(0);
  const isDrawn = (way: Way | null): boolean => tree.spots.some((spot) => spot.way === way && spot.id !== null);
  return {
    at: isDrawn(wantedAt) ? wantedAt : '',
    open: isDrawn(wantedOpen) ? wantedOpen : null,
    moves,
    go: (way: Way): void => {
      setAt(way);
      setOpen(null);
      setMoves((made) => made + 1);
    },
    peek: (way: Way): void => {
      setAt(way);
      setOpen(way);
    },
  };
}
