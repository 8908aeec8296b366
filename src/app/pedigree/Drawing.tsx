import { useEffect, useRef } from 'preact/hooks';
import type { Facility } from '../../core/index.ts';
import { Lines } from './Lines.tsx';
import type { Form, Spot, Tree, Way } from './layout.ts';
import { heightOf, widthOf } from './measures.ts';
import { nodeWords } from './nodeWords.ts';
import { TreeNode, UnknownEnd } from './TreeNode.tsx';
import { stepFrom, stepOfKey } from './walk.ts';

interface DrawingProps {
  readonly facility: Facility;
  readonly tree: Tree;
  readonly form: Form;
  readonly name: string;
  /** The spot that the keys are on. */
  readonly at: Way;
  /** Counts the steps, so that the keys follow each. */
  readonly moves: number;
  /** The spot whose peek is open. */
  readonly open: Way | null;
  readonly related: ReadonlySet<string>;
  go(way: Way): void;
  peek(way: Way): void;
}

/** The drawing: lines and shapes below, and on them a button for each animal. The arrows walk it, Enter peeks. */
export function Drawing({ facility, tree, form, name, at, moves, open, related, go, peek }: DrawingProps) {
  const paper = useRef<HTMLFieldSetElement>(null);
  useEffect(() => {
    if (moves > 0) paper.current?.querySelector<HTMLButtonElement>(`[data-way="${at}"]`)?.focus();
  }, [moves]);
  useEffect(() => {
    if (open === null) return;
    paper.current?.querySelector(`[data-way="${open}"]`)?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  }, [open]);
  // A tall drawing opens on the animal itself and not on its farthest ancestors.
  useEffect(() => {
    const box = paper.current?.parentElement;
    const here = box?.querySelector<HTMLElement>('[data-way=""]');
    if (box && here) box.scrollTop = here.offsetTop - (box.clientHeight - here.clientHeight) / 2;
  }, [tree]);
  const seen = tree.spots.find((spot) => spot.way === (open ?? at))?.id ?? null;
  return (
    <div class={`tree tree-${form}`}>
      <fieldset
        class="tree-paper"
        ref={paper}
        style={{ height: `${heightOf(tree, form)}px`, ...(form === 'beside' && { width: `${widthOf(tree, form)}px` }) }}
        onKeyDown={(event) => {
          const step = stepOfKey(event.key);
          if (step === null) return;
          event.preventDefault();
          go(stepFrom(tree, at, step));
        }}
      >
        <legend class="unseen">
          Ancestors of {name}: arrow right to the parents, left to the young, up and down within a generation
        </legend>
        <Lines tree={tree} form={form} related={related} look={(spot) => shapeOf(facility, spot)} />
        {tree.spots.map((spot) => {
          const words = nodeWords(facility, spot.id);
          if (words === null) return <UnknownEnd key={spot.way} spot={spot} form={form} />;
          return (
            <TreeNode
              key={spot.way}
              spot={spot}
              words={words}
              form={form}
              isAt={spot.way === at}
              isOpen={spot.way === open}
              isSame={spot.mark !== null && spot.id === seen}
              peek={peek}
            />
          );
        })}
      </fieldset>
    </div>
  );
}

function shapeOf(facility: Facility, spot: Spot) {
  const words = nodeWords(facility, spot.id);
  return words && { sex: words.animal.sex, isDead: words.gone === 'died' };
}
