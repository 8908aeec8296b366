import {
  type AnimalRecord,
  type Fraction,
  type LocusTable,
  type Proof,
  type ProofWay,
  sayFraction,
} from '../../core/index.ts';
import { Chance, sayPercent } from '../genetics/index.ts';
import { SiteMates } from './SiteMates.tsx';

interface ProofPartProps {
  readonly animal: AnimalRecord;
  readonly proof: Proof;
  readonly loci: LocusTable;
}

/** The ways to settle one open thing, side by side, and how doubt shrinks with each. */
export function ProofPart({ animal, proof, loci }: ProofPartProps) {
  if (proof.ways.length === 0)
    return <p class="soft">No mate’s young would tell, or some of their eggs would die: it stays open.</p>;
  return (
    <>
      <ul class="proof-ways">
        {proof.ways.map((way) => (
          <li key={way.mate}>
            <p>
              With a mate that is <b>{way.mateWords}</b> <code>{way.mateCode}</code>: {way.sign} would settle it.
            </p>
            <p class="soft">
              {isFor(way) ? 'If it carries it' : 'If that is so'}, each young has a chance of{' '}
              <Chance of={way.perYoung} />. Less than 1 in 20 is left after {way.youngFor.in20} young without the sign,
              less than 1 in 100 after {way.youngFor.in100}.
            </p>
            <SiteMates animal={animal} locus={proof.locus} way={way} loci={loci} />
          </li>
        ))}
      </ul>
      <AfterTable proof={proof} />
    </>
  );
}

/** Where the sign speaks against it, core says in brackets what it would mean. */
function isFor({ sign }: ProofWay): boolean {
  return !sign.includes('(');
}

/** In a narrow column a long fraction only breaks the line; it stays on hover. */
function Cell({ chance }: { readonly chance: Fraction }) {
  if (chance.bottom < LONG) return <Chance of={chance} />;
  return <span title={`exactly ${sayFraction(chance)}`}>{sayPercent(chance)}</span>;
}

const LONG = 100n;

/** The chance after each young that does not show the sign. */
function AfterTable({ proof }: { readonly proof: Proof }) {
  const longest = Math.max(...proof.ways.map(({ after }) => after.length));
  return (
    <table class="proof-table">
      <caption>The chance of {proof.what} after so many young, none of which shows the sign</caption>
      <thead>
        <tr>
          <th scope="col">young</th>
          {proof.ways.map((way) => (
            <th key={way.mate} scope="col">
              with {way.mateWords}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {Array.from({ length: longest }, (_, at) => (
          <tr key={at}>
            <th scope="row">{at + 1}</th>
            {proof.ways.map((way) => {
              const chance = way.after[at];
              return <td key={way.mate}>{chance !== undefined && <Cell chance={chance} />}</td>;
            })}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
