import './traits.css';
import { useSignal } from '@preact/signals';
import {
  type AnimalRecord,
  geneticSex,
  lociFor,
  type Problem,
  sayAnimal,
  sayId,
  type TraitSaying,
  traitsDraft,
  traitsOf,
} from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { type App, useApp } from '../model/app.ts';
import { Sheet } from '../shell/Sheet.tsx';
import { LociToPick, lociPage } from './LociToPick.tsx';
import { textOf } from './picks.ts';
import { SaidBack } from './SaidBack.tsx';
import { TraitText } from './TraitText.tsx';
import { useTraits } from './useTraits.ts';
import { Welfare } from './Welfare.tsx';
import { writeOn } from './writing.ts';

interface TraitSheetProps {
  readonly animal: AnimalRecord;
  readonly onClose: () => void;
}

/** Sets an animal's traits, typed or picked; closing it keeps nothing. */
export function TraitSheet({ animal, onClose }: TraitSheetProps) {
  const app = useApp();
  const facility = app.site.facility.value;
  const start = standing(app, animal);
  const reading = useTraits(facility, animal.species, geneticSex(animal.sex), start.text);
  const printAs = useSignal(start.printAs);
  // What was told is told of one text; another text is asked anew.
  const told = useSignal<{ readonly of: string; readonly what: Problem | string } | null>(null);
  const tell = (what: Problem | string): void => {
    told.value = { of: reading.text.value, what };
  };
  const { typed, loci } = reading;
  async function write(event: Event): Promise<void> {
    event.preventDefault();
    if (typed.kind === 'empty') tell('Nothing is typed or picked yet. Nothing was written.');
    if (typed.kind !== 'said') return;
    const result = await writeTraits(app, animal, typed.said, printAs.value);
    if (result === null) onClose();
    else tell(result);
  }
  return (
    <Sheet title={`Traits of ${sayAnimal(animal)}`} onClose={onClose}>
      <p class="slide-sheet-id">{sayId(animal.id)}</p>
      <form class="trait-sheet" onSubmit={(event) => void write(event)}>
        <div class="trait-typing">
          <TraitText label="Traits, in trade words or as trait code" text={reading.text} typed={typed} />
          {typed.kind === 'said' && <SaidBack said={typed.said} printAs={printAs} />}
          {reading.refused.value !== null && <ProblemLine problem={reading.refused.value} />}
        </div>
        {loci.rows.length === 0 ? <NoLoci species={animal.species} /> : <LociToPick reading={reading} />}
        {reading.setAside.map((fault) => (
          <p key={fault.message} class="look-at">
            A row of the site was set aside. {fault.message}
          </p>
        ))}
        <div class="trait-write">
          {typed.kind === 'said' && <Welfare words={typed.said.welfare} loci={loci} />}
          {told.value?.of === reading.text.value && <Told what={told.value.what} />}
          <button type="submit" class="primary" disabled={typed.kind === 'fault'}>
            Write traits
          </button>
          <button type="button" class="trait-leave" onClick={onClose}>
            Write nothing
          </button>
        </div>
      </form>
    </Sheet>
  );
}

function Told({ what }: { readonly what: Problem | string }) {
  if (typeof what !== 'string') return <ProblemLine problem={what} />;
  return (
    <p class="trait-told" role="status">
      {what}
    </p>
  );
}

function NoLoci({ species }: { readonly species: string }) {
  return (
    <p class="empty">
      No loci of <i>{species}</i> are known here. First <a href={lociPage(species)}>add the site’s own row</a>; then its
      trade names can be typed and picked.
    </p>
  );
}

/** What the record says now, as text to go on from; a code that no table reads stands as it was written. */
function standing({ site }: App, animal: AnimalRecord): { readonly text: string; readonly printAs: string | null } {
  const facility = site.facility.value;
  const { loci } = lociFor(facility, animal.species);
  const said = traitsOf(facility, animal);
  if (!said.ok) return { text: animal.traits?.code ?? '', printAs: null };
  if (said.value === null) return { text: '', printAs: null };
  const { traits, offers } = said.value;
  const chosen = offers.find((one) => one.words.long === animal.traits?.words);
  return { text: textOf(traits, loci, geneticSex(animal.sex)), printAs: chosen?.name ?? null };
}

/** Writes the traits; says in words why nothing was written, or null. */
async function writeTraits(
  app: App,
  animal: AnimalRecord,
  said: TraitSaying,
  printAs: string | null,
): Promise<Problem | string | null> {
  const offer = said.offers.find((one) => one.name === printAs) ?? null;
  const before = standing(app, animal);
  const was = traitsOf(app.site.facility.value, animal);
  const isSame = was.ok && was.value?.code === said.code && before.printAs === (offer?.name ?? null);
  if (isSame) return 'These traits stand on the record already. Nothing was written.';
  const draft = traitsDraft(animal, said, app.clock.today.value, offer);
  return writeOn(app, animal, draft, `traits: ${(offer ?? said).words.long}`);
}
