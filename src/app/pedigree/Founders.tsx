import type { ComponentChildren } from 'preact';
import { type Completeness, type Facility, type Fraction, type Id, nameOf } from '../../core/index.ts';
import { ShareWords, sayShareLine } from './ShareWords.tsx';

interface FoundersProps {
  readonly facility: Facility;
  readonly completeness: Completeness;
}

const FEW = 8;

/** From whom the genes are expected to come: known animals without known parents, and parents that nobody knows. */
export function Founders({ facility, completeness }: FoundersProps) {
  const { founders, unknown, id } = completeness;
  if (founders.length === 1 && founders[0]?.id === id) return null;
  const known = founders.map((one) => (
    <Line key={one.id} share={one.share}>
      <a href={`/animal/${one.id}`}>{nameOf(facility, one.id as Id)}</a>
    </Line>
  ));
  const nameless = unknown.map((one) => (
    <Line key={`${one.young} ${one.role}`} share={one.share}>
      unknown {one.role} of <a href={`/animal/${one.young}`}>{nameOf(facility, one.young as Id)}</a>
    </Line>
  ));
  const all = [...known, ...nameless];
  return (
    <section class="ped-part" aria-labelledby="ped-founders">
      <h2 id="ped-founders">Founders</h2>
      <p class="soft">
        The share of its genes expected from each.
        {unknown.length > 0 && ` ${sayShareLine(completeness.unknownShare)} comes from nobody known.`}
      </p>
      <ul class="ped-lines">{all.slice(0, FEW)}</ul>
      {all.length > FEW && (
        <details>
          <summary>and {all.length - FEW} more</summary>
          <ul class="ped-lines">{all.slice(FEW)}</ul>
        </details>
      )}
    </section>
  );
}

function Line({ share, children }: { readonly share: Fraction; readonly children: ComponentChildren }) {
  return (
    <li>
      <span>{children}</span>
      <ShareWords share={share} />
    </li>
  );
}
