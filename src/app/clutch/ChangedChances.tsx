import { useSignal } from '@preact/signals';
import {
  type AnimalRecord,
  type ChangedChance,
  type Id,
  type Problem,
  sayAnimal,
  type TraitSaying,
  traitsDraft,
} from '../../core/index.ts';
import { Chance } from '../genetics/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import { Sheet } from '../shell/Sheet.tsx';
import { writeOn } from '../traits/writing.ts';
import { isSure, settled } from './settled.ts';

interface ChangedChancesProps {
  readonly id: Id;
  readonly chances: readonly ChangedChance[];
}

/** What a parent may carry, before and after these young were seen. */
export function ChangedChances({ id, chances }: ChangedChancesProps) {
  const { site } = useApp();
  const parent = site.facility.value.animals.get(id);
  if (parent === undefined) return null;
  return (
    <div class="finding">
      <h3>What {sayAnimal(parent)} may carry</h3>
      <ul class="changed">
        {chances.map((one) => (
          <li key={`${one.locus}${one.allele}`}>
            <strong>{one.allele}</strong>
            <span>
              <Chance of={one.before} /> <span aria-hidden="true">→</span>
              <span class="unseen">now</span> <Chance of={one.after} />
            </span>
            <Settle parent={parent} change={one} />
          </li>
        ))}
      </ul>
      <p class="soft small">Before: as the record stands. After: with these young, taking each egg as drawn alike.</p>
    </div>
  );
}

/** Only what is certain is written, and only when it was asked about. */
function Settle({ parent, change }: { readonly parent: AnimalRecord; readonly change: ChangedChance }) {
  const { site } = useApp();
  const isOpen = useSignal(false);
  const sure = isSure(change.after);
  if (sure === null) return null;
  const said = settled(site.facility.value, parent, change);
  if (said === null)
    return (
      <a class="settle" href={`/animal/${parent.id}`}>
        Change it on the record
      </a>
    );
  return (
    <>
      <button
        type="button"
        class="link settle"
        onClick={() => {
          isOpen.value = true;
        }}
      >
        Write it to the record
      </button>
      {isOpen.value && (
        <SettleSheet
          parent={parent}
          said={said}
          onClose={() => {
            isOpen.value = false;
          }}
        />
      )}
    </>
  );
}

interface SettleSheetProps {
  readonly parent: AnimalRecord;
  readonly said: TraitSaying;
  readonly onClose: () => void;
}

function SettleSheet({ parent, said, onClose }: SettleSheetProps) {
  const app = useApp();
  const why = useSignal<Problem | null>(null);
  async function write(): Promise<void> {
    why.value = await writeOn(
      app,
      parent,
      traitsDraft(parent, said, app.clock.today.value, null),
      `traits: ${said.words.long}`,
    );
    if (why.value === null) onClose();
  }
  return (
    <Sheet title={`Traits of ${sayAnimal(parent)}`} tone="asks" onClose={onClose}>
      <dl class="settle-both">
        <div>
          <dt>Now</dt>
          <dd>{parent.traits?.code}</dd>
        </div>
        <div>
          <dt>Then</dt>
          <dd>
            <strong>{said.code}</strong> {said.words.long}
          </dd>
        </div>
      </dl>
      <p>It rests on the looks of these young and on the sire being right. The card is printed again with it.</p>
      {why.value !== null && <ProblemLine problem={why.value} />}
      <div class="answers">
        <button type="button" class="answer" onClick={onClose}>
          No, write nothing
        </button>
        <button type="button" class="answer answer-yes" onClick={() => void write()}>
          Yes, write it
        </button>
      </div>
    </Sheet>
  );
}
