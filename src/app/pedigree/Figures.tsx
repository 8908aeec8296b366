import { type Completeness, type GenerationKnown, sayFraction, toNumber } from '../../core/index.ts';
import type { Share } from '../genetics/index.ts';
import { ShareWords, sayShareLine } from './ShareWords.tsx';
import { sayGeneration } from './walk.ts';

interface FiguresProps {
  /** Null while it is worked out. */
  readonly inbreeding: Share | null;
  readonly completeness: Completeness;
  readonly depth: number;
}

/** The inbreeding coefficient, and how much of the pedigree it stands on. */
export function Figures({ inbreeding, completeness, depth }: FiguresProps) {
  const gap = completeness.generations.find((one) => one.known < one.of);
  return (
    <section class="ped-part" aria-labelledby="ped-inbreeding">
      <h2 id="ped-inbreeding">Inbreeding</h2>
      {gap?.generation === 1 ? (
        <p class="ped-figure">
          <b>not known</b>
        </p>
      ) : (
        <p class="ped-figure" aria-live="polite">
          {gap !== undefined && <span>at least</span>} {inbreeding === null ? '…' : <ShareWords share={inbreeding} />}
        </p>
      )}
      <p class="soft">
        {gap === undefined ? `All ancestors of ${completeness.generations.length} generations are known.` : sayGap(gap)}
      </p>
      {depth === 0 ? (
        <a class="secondary" href={`/animal/${completeness.id}/parents`}>
          Set parents
        </a>
      ) : (
        <Known completeness={completeness} depth={depth} />
      )}
    </section>
  );
}

function sayGap(gap: GenerationKnown): string {
  const known = `${gap.known} of ${gap.of} ${sayGeneration(gap.generation)} known`;
  return gap.generation === 1
    ? `${known}. With an unknown parent nothing can be said.`
    : `${known}. Whoever is not known is taken as unrelated, so it may be more.`;
}

function Known({ completeness, depth }: { readonly completeness: Completeness; readonly depth: number }) {
  return (
    <details class="ped-known">
      <summary>
        Known to {depth} {depth === 1 ? 'generation' : 'generations'}
      </summary>
      <table>
        <tbody>
          {completeness.generations.map((one) => (
            <tr key={one.generation}>
              <th scope="row">{sayGeneration(one.generation)}</th>
              <td>
                {`${one.known}`} of {`${one.of}`}
              </td>
            </tr>
          ))}
          <tr>
            <th scope="row">complete generations</th>
            <td>{sayGenerations(completeness)}</td>
          </tr>
          <tr>
            <th scope="row">completeness index</th>
            <td>{sayShareLine(completeness.index)}</td>
          </tr>
        </tbody>
      </table>
      <p class="because">
        Inbreeding: the chance that both copies of a gene come from one ancestor’s copy (Wright 1922). Complete
        generations: each known ancestor counts half as much as one a generation nearer (Maignel, Boichard &amp; Verrier
        1996, from memory). Index: both parents’ sides over the generations shown (MacCluer et al. 1983, from memory).
      </p>
    </details>
  );
}

function sayGenerations({ equivalent }: Completeness): string {
  const rounded = Number(toNumber(equivalent).toFixed(2));
  return equivalent.bottom === 1n ? `${equivalent.top}` : `${sayFraction(equivalent)} · ${rounded}`;
}
