import { useState } from 'preact/hooks';
import { type PlaceRecord, saySize } from '../../core/index.ts';
import { SizeForm } from './SizeForm.tsx';

interface TubSizesProps {
  readonly inside: readonly PlaceRecord[];
  readonly name: string;
}

/** The sizes of the tubs of a rack, and one size for all of them, since a rack’s tubs are mostly alike. */
export function TubSizes({ inside, name }: TubSizesProps) {
  const [open, setOpen] = useState(false);
  const sizes = new Map<string, number>();
  for (const { sizeMm } of inside) {
    const words = sizeMm === null ? 'not measured' : saySize(sizeMm);
    sizes.set(words, (sizes.get(words) ?? 0) + 1);
  }
  const many = `${inside.length} ${inside.length === 1 ? 'place' : 'places'}`;
  return (
    <>
      <ul class="tub-sizes">
        {[...sizes].map(([words, count]) => (
          <li key={words}>
            <strong>{count}</strong> {words}
          </li>
        ))}
      </ul>
      {open ? (
        <SizeForm
          places={inside}
          label={`Inside of each of the ${many}`}
          name={name}
          saves={`Give all ${many} this size`}
          onSaved={() => setOpen(false)}
        />
      ) : (
        <button type="button" class="secondary" onClick={() => setOpen(true)}>
          One size for all of them
        </button>
      )}
    </>
  );
}
