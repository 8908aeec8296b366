import './proving.css';
import { useState } from 'preact/hooks';
import {
  type AnimalRecord,
  geneticSex,
  type LocusTable,
  lociFor,
  provingOf,
  type Traits,
  traitsOf,
} from '../../core/index.ts';
import { Chance } from '../genetics/index.ts';
import { useApp } from '../model/app.ts';
import { hasOpen } from './mates.ts';
import { ProofPart } from './ProofPart.tsx';

/** What is not known of an animal’s traits, and which young would settle it. Nothing here says that anybody should breed. */
export function Proving({ animal }: { readonly animal: AnimalRecord }) {
  const { site } = useApp();
  const facility = site.facility.value;
  const said = traitsOf(facility, animal);
  // A code that cannot be read is told on the card.
  if (!said.ok || said.value === null) return null;
  const { traits } = said.value;
  if (!hasOpen(traits))
    return <p class="proving-none soft">Nothing is open in its traits: what is written is taken as known.</p>;
  return <OpenTraits animal={animal} traits={traits} loci={lociFor(facility, animal.species).loci} />;
}

interface OpenTraitsProps {
  readonly animal: AnimalRecord;
  readonly traits: Traits;
  readonly loci: LocusTable;
}

/** Closed at first, and only worked out when it is opened. */
function OpenTraits({ animal, traits, loci }: OpenTraitsProps) {
  const [isOpen, setOpen] = useState(false);
  return (
    <details class="proving" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        <h2>What would prove it</h2>
      </summary>
      {isOpen && <Proofs animal={animal} traits={traits} loci={loci} />}
    </details>
  );
}

function Proofs({ animal, traits, loci }: OpenTraitsProps) {
  const proofs = provingOf(traits, loci, geneticSex(animal.sex));
  if (proofs.length === 0)
    return (
      <p class="soft">
        Something is open, but nobody can put a chance to it
        {animal.sex === 'unsexed' ? ' while its sex is not known' : ''}.
      </p>
    );
  return (
    <div class="proofs">
      <p class="soft">
        This is what breeding would tell, not a word for it: welfare, kinship and age stand apart, and the site decides.
      </p>
      {proofs.map((proof) => (
        <section key={`${proof.locus} ${proof.what}`} aria-label={proof.what}>
          <h3>
            {proof.what}{' '}
            <small>
              open: <Chance of={proof.prior} />
            </small>
          </h3>
          <ProofPart animal={animal} proof={proof} loci={loci} />
        </section>
      ))}
    </div>
  );
}
